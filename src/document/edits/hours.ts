/** A reading as a document under way holds it: either number may be missing still. */
export type DraftReading = readonly [hour: number | undefined, value: number | undefined]

/** The hours of a plain table of readings, in the order in which they are read out. */
export const quarterHours = [12, 3, 6, 9] as const

/** Where the first reading at an hour stands in a list; -1 where there is none. */
export const indexOfHour = (readings: readonly DraftReading[], hour: number): number =>
  readings.findIndex(([at]) => at === hour)

/** Readings beside the plain table: other hours, and hours read a second time. */
export const furtherReadings = (readings: readonly DraftReading[]): number[] => {
  const plain = new Set(quarterHours.map((hour) => indexOfHour(readings, hour)))
  return readings.flatMap((_, i) => (plain.has(i) ? [] : [i]))
}

/** A list with one more hour to be read, in the order of the clock from 12 on. */
export function withHour(readings: readonly DraftReading[], hour: number): DraftReading[] {
  const turn = (at: number | undefined) => (at === undefined ? Infinity : at % 12)
  const later = readings.findIndex(([at]) => turn(at) > turn(hour))
  const at = later < 0 ? readings.length : later
  return [...readings.slice(0, at), [hour, undefined], ...readings.slice(at)]
}

/**
 * Closure of a full turn, top + bottom - (left + right), of numbers in any one unit; undefined while
 * one of the four is missing.
 */
export function closureOf(readings: readonly DraftReading[]): number | undefined {
  const [top, three, bottom, nine] = quarterHours.map(
    (hour) => readings[indexOfHour(readings, hour)]?.[1],
  )
  if (typeof top !== 'number' || typeof bottom !== 'number') return undefined
  if (typeof three !== 'number' || typeof nine !== 'number') return undefined
  // nine decimals of any fine unit are far below what a dial shows
  return Number((top + bottom - (three + nine)).toFixed(9)) || 0
}
