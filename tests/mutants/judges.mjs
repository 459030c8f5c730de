/**
 * Which tests judge a file whose lines are changed: those that stand near it and are quick, by hand before random ones.
 * A place is a file or a folder of the sources; the longest that a file lies in decides. `npm run mutants` without
 * words runs all of them, in this order: first where a wrong sign hurts most.
 */
export const judges = [
  ['src/mechanics/motion.ts', ['engine/motion', 'engine/growth']],
  ['src/mechanics/growth.ts', ['engine/growth', 'chance/growthBetween', 'engine/motion']],
  [
    'src/mechanics/readings',
    [
      ...['engine/readingParts', 'engine/readings', 'engine/lineGains', 'engine/residualTest'],
      ...['engine/setDoubts', 'published/reverseDial', 'published/rimFace'],
    ],
  ],
  [
    'src/mechanics/misalignment',
    ['engine/stateShift', 'engine/setDoubts', 'engine/couplingMotion', 'engine/misalignment'],
  ],
  ['src/mechanics/misalignment/gearTeeth.ts', ['gear/teeth', 'gear/gear']],
  ['src/mechanics/footLimits.ts', ['engine/footBands']],
  ['src/mechanics/packRange.ts', ['engine/footBands']],
  ['src/mechanics/holeRadius.ts', ['engine/footBands']],
  ['src/mechanics/units.ts', ['engine/units']],
  ['src/mechanics/rotorSag.ts', ['published/rotorSag', 'published/catenaryAim']],
  ['src/mechanics/gearLift.ts', ['published/gearLift', 'entry/gearLift']],
  ['src/mechanics', ['engine/uncertainty', 'engine/readings', 'survey/byHand', 'ready/softFoot']],
  ['src/engine/proof', ['proof/byHand', 'proof/mutated', 'engine/motion', 'solver/dualBound']],
  ['src/engine/rounding/plates.ts', ['packs/stock', 'packs/plates', 'packs/exchange']],
  ['src/engine/rounding', ['packs/plates', 'packs/exchange', 'packs/byHand', 'packs/bothWays']],
  ['src/engine/lp', ['engine/limits', 'solver/soundness', 'solver/dualBound', 'proof/mutated']],
]

const holds = (place, file) => file === place || file.startsWith(`${place}/`)

/** The entry that decides for a file; undefined where no test is named for it. */
export function judgesOf(file) {
  return judges
    .filter(([place]) => holds(place, file))
    .reduce((best, entry) => (entry[0].length > (best?.[0].length ?? 0) ? entry : best), undefined)
}
