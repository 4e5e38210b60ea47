/** Small builders for HTML and SVG text. All that comes from data goes through `escapeHtml`. */

const signs: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Text made safe for element content and for quoted attributes. Most texts hold none of the signs. */
export const escapeHtml = (text: string): string =>
  /[&<>"']/.test(text) ? text.replace(/[&<>"']/g, (sign) => signs[sign] ?? sign) : text

/**
 * The same markup as one string in memory. Put together from many parts it is kept as a tree of them, which every
 * sweep of the heap walks again; a search makes it whole.
 */
export function inOnePiece(markup: string): string {
  anywhere.test(markup)
  return markup
}

const anywhere = /^/

/** A number as SVG wants it: at most two decimals, no `-0`, no exponent. */
export const num = (value: number): string => {
  const rounded = Math.round(value * 100) / 100
  return Object.is(rounded, -0) ? '0' : String(rounded)
}

/** Values of attributes; null and false leave the attribute out, true writes it bare. */
export type Attributes = Readonly<Record<string, string | number | boolean | null>>

function attributesText(attributes: Attributes): string {
  let text = ''
  for (const name in attributes) {
    const value = attributes[name]
    if (value === null || value === undefined || value === false) continue
    text +=
      value === true ? ` ${name}` : ` ${name}="${typeof value === 'number' ? num(value) : escapeHtml(value)}"`
  }
  return text
}

/** `<name attributes>content</name>`; the content is markup already. */
export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  let markup = `<${name}${attributesText(attributes)}>`
  for (const part of content) markup += part
  return `${markup}</${name}>`
}

/** An SVG element without content. */
export const shape = (name: string, attributes: Attributes): string =>
  `<${name}${attributesText(attributes)}/>`
