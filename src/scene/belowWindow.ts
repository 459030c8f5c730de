import { counted, listed } from '../language/names'

/** Feet of one machine in the table of all feet, as laid out from the top of the page (px). */
export interface LaidFeet {
  readonly name: string
  readonly feet: number
  readonly bottom: number
}

/**
 * What of the table of feet is not seen in the first window, so that nobody takes the part in sight for the whole:
 * long trains in the type of a tablet need more than one.
 * @param end where the first window ends (px)
 * @returns undefined where all of it is seen
 */
export function belowWindow(groups: readonly LaidFeet[], end: number): string | undefined {
  const below = groups.filter(({ bottom }) => bottom > end)
  if (below.length === 0) return undefined
  const feet = (of: readonly LaidFeet[]) => of.reduce((sum, one) => sum + one.feet, 0)
  return `Of ${counted(feet(groups), 'foot', 'feet')}, ${feet(below)} go on below this window: ${listed(below.map(({ name }) => name))}.`
}
