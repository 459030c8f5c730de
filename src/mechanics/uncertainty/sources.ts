import { couplingMotions } from '../misalignment/couplingMotion'
import { noMotion, type Motion } from '../motion'
import type { Train } from '../train'
import { growthErrors } from './growthErrors'
import type { DoubtfulGrowth } from './growthPoints'
import { lineErrors } from './foundLines'
import type { ErrorSource } from './errorSource'
import { usualU } from './usual'
import { bodyErrors, placeErrors, type WorkError } from './workErrors'

/**
 * Errors that no plan changes: of what was read, of growth, and of the gaps between shaft ends.
 * @param grown whether the error of a growth value counts
 */
export function standingErrors(
  train: Train,
  grown?: (point: DoubtfulGrowth) => boolean,
): ErrorSource[] {
  return [
    ...lineErrors(train),
    ...train.couplings.flatMap((_, c) => gapError(train, c)),
    ...growthErrors(train, grown),
  ]
}

function gapError({ couplings }: Train, c: number): ErrorSource[] {
  const coupling = couplings[c]
  if (!coupling?.axial) return []
  const gap = (coupling.axial.u ?? usualU.gap) * 1000
  const misalignment = { y: 0, sy: 0, z: 0, sz: 0 }
  return [
    {
      key: `gap at ${coupling.id}`,
      group: { kind: 'gap', coupling: c },
      effects: [{ coupling: c, by: { misalignment, gap } }],
    },
  ]
}

/** Errors of shims and slides of the bodies that move. */
export const workSources = (train: Train, moves: (body: number) => boolean): ErrorSource[] =>
  train.bodies.flatMap((body, b) =>
    moves(b)
      ? sourcesOf(train, b, 'work', bodyErrors(train, body, { shims: true, slides: true }))
      : [],
  )

/** Errors of the places of the feet of bodies that a plan moves, which act through its pitch and yaw. */
export const placeSources = (
  train: Train,
  motions: readonly Motion[],
  moves: (body: number) => boolean,
): ErrorSource[] =>
  train.bodies.flatMap((body, b) =>
    moves(b) ? sourcesOf(train, b, 'places', placeErrors(train, body, motions[b] ?? noMotion)) : [],
  )

/** Errors of one body as what they do to the couplings; a skid carries its errors to what it carries. */
function sourcesOf(
  train: Train,
  b: number,
  kind: 'work' | 'places',
  errors: readonly WorkError[],
): ErrorSource[] {
  return errors.flatMap(({ key, motion }): ErrorSource[] => {
    const all = train.bodies.map((_, i) => (i === b ? motion : noMotion))
    const effects = couplingMotions(train, all).flatMap((by, coupling) => {
      const { y, z, sy, sz } = by.misalignment
      return y === 0 && z === 0 && sy === 0 && sz === 0 && by.gap === 0 ? [] : [{ coupling, by }]
    })
    return effects.length === 0 ? [] : [{ key, group: { kind }, effects }]
  })
}
