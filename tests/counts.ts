/** HOLDFAST_LONG=1, which `npm run test:long` sets: every comparison at full count. */
const isLong = process.env['HOLDFAST_LONG'] === '1'

/** How many there are to be: few in the run that people wait for, all in the long one. */
export const counted = (usual: number, long: number): number => (isLong ? long : usual)

/** The first of a list in the usual run, all of it in the long one. */
export const firstOf = <One>(list: readonly One[], usual: number): readonly One[] =>
  isLong ? list : list.slice(0, usual)
