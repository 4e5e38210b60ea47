/**
 * Plain calendar dates: text `YYYY-MM-DD`, no clock and no time zone.
 * ISO 8601 calendar dates of the Gregorian calendar, years 1900 to 2199.
 */
export type PlainDate = string & { readonly __brand?: 'PlainDate' }

const msPerDay = 86_400_000
/** Mean month of engine time: 365.25 / 12 days. */
export const daysPerMonth = 30.4375

/** The date if the text is a date that exists, else null (`2026-02-30` is null). */
export function parseDate(text: string): PlainDate | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  if (!match) return null
  const year = Number(match[1])
  if (year < 1900 || year > 2199) return null
  return dateOfDay(dayOf(text)) === text ? text : null
}

/** Whole days since 1970-01-01. */
export const dayOf = (date: PlainDate): number =>
  Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / msPerDay

/** The date of a day number; a fraction counts to the day it falls in. */
export const dateOfDay = (day: number): PlainDate => {
  const time = new Date(Math.floor(day) * msPerDay)
  return Number.isNaN(time.getTime()) ? '' : time.toISOString().slice(0, 10)
}

/** Days from one date to another; negative when the second is earlier. */
export const daysBetween = (from: PlainDate, to: PlainDate): number => dayOf(to) - dayOf(from)

export const addDays = (date: PlainDate, days: number): PlainDate => dateOfDay(dayOf(date) + days)
