/** Texts of values: what a key of the pad makes of them, and how they are shown. */

/** A fraction has its place after the whole inches; a second one takes the place of the first. */
export function pressed(text: string, key: string): string {
  if (key.includes('/')) {
    const whole = /^\d+(?!\/)/.exec(text)?.[0] ?? ''
    return whole === '' ? key : `${whole} ${key}`
  }
  // Nothing follows a fraction, and a number has one sign.
  if (text.includes('/')) return text
  if (/^[.,]/.test(key) && /[.,]/.test(text)) return text
  return text + key
}

/** Without its last sign; a fraction goes whole. */
export const erased = (text: string): string =>
  /\d\/\d$/.test(text) ? text.replace(/ ?\d+\/\d+$/, '') : text.slice(0, -1)

/** With the unit, unless one was typed. */
export const withUnit = (text: string, unit: string): string =>
  /[a-z°"]\s*$/i.test(text) || unit === '' ? text : unit === '°' ? `${text}°` : `${text} ${unit}`
