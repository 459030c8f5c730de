/** HOLDFAST_LONG=1, which `npm run test:long` sets: every comparison at full count. */
const isLong = process.env['HOLDFAST_LONG'] === '1'

/**
 * HOLDFAST_WHOLE=1, which `npm run test:whole` and `.ci/run` set: every test is run. The usual run leaves out what a
 * change seldom breaks and takes long: browser tests tagged @whole, and what asks this.
 */
export const isWhole = isLong || process.env['HOLDFAST_WHOLE'] === '1'

/** How many there are to be: few in the run that people wait for, all in the long one; in the whole one as many as said. */
export const counted = (usual: number, long: number, whole = usual): number =>
  isLong ? long : isWhole ? whole : usual

/** The first of a list in the usual run, all of it in the long one; in the whole one as many as said. */
export const firstOf = <One>(list: readonly One[], usual: number, whole = usual): readonly One[] =>
  list.slice(0, counted(usual, list.length, whole))
