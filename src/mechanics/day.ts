/** A day of the calendar as ISO 8601 writes it, such as "2026-11-30"; days compare as their texts do. */
export type Day = string

/** A date as far as it was written down, "2026-11-30", "2026-11" or "2026", and the first day that it may mean. */
export interface Dated {
  readonly said: string
  readonly day: Day
}

/** The date that a text begins with, a time behind it or not; undefined where it begins with none. */
export function datedIn(text: string | undefined): Dated | undefined {
  const said = /^\d{4}(-\d{2}(-\d{2})?)?(?![-\d])/.exec(text?.trim() ?? '')?.[0]
  if (said === undefined) return undefined
  const day = `${said}-01-01`.slice(0, 10)
  // a day that the month does not have would be carried over into the next
  return isoDay(Date.parse(`${day}T00:00:00Z`)) === day ? { said, day } : undefined
}

/** The same day so many months later; the last of the month where that has no such day. */
export function monthsLater(day: Day, months: number): Day {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  const last = new Date(Date.UTC(year, month - 1 + months + 1, 0)).getUTCDate()
  return isoDay(Date.UTC(year, month - 1 + months, Math.min(date, last))) ?? day
}

const isoDay = (milliseconds: number): Day | undefined =>
  Number.isNaN(milliseconds) ? undefined : new Date(milliseconds).toISOString().slice(0, 10)

/** The day of a time as clocks on the wall here have it. */
export const isoToday = (now: Date): Day =>
  [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-')
