/**
 * Characters that nobody sees and that steer what shows a text: the control characters of Unicode (C0, DEL, C1), and the
 * embeddings, overrides and isolates that turn its direction. A case file can hold any of them, as an escape in its
 * block (`"\u202e"`) or a reference in its body (`&#27;`). Tabs and line ends are text. Direction marks and joiners
 * (U+200C to U+200F) are spelling in Arabic, Hebrew, Persian and the scripts of India, and turn nothing but themselves.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const steering = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g

/** A terminal also goes back to the start of its line at a carriage return, and few show a mark or a Unicode line end. */
const unseen =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g

/** A text to be published: without what would steer its reader's program. */
export const withoutControls = (text: string): string => text.replace(steering, '')

/**
 * A text for a terminal: what would steer it, or is not seen on it, is written out as `\u001b`. Tabs and line feeds
 * stay. JSON stays JSON and means the same.
 */
export const controlsShown = (text: string): string =>
  text.replace(unseen, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`)
