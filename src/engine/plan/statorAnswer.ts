import { acrossAt, centringLine, gapAround, lineOfFeet, rotorLine } from '../../mechanics/airGap'
import type { AcrossMove, GapAround } from '../../mechanics/airGap'
import { noMotion, type Motion } from '../../mechanics/motion'
import { tol } from '../../mechanics/tolerances'
import type { Stator } from '../../mechanics/stator'
import type { Body, Train } from '../../mechanics/train'
import type { Micrometres, Millimetres } from '../../mechanics/units'

/** A stator on feet of its own beside the rotor that a plan moves. */
export interface StatorAnswer {
  machine: string
  /** The most that a gap may differ from what it is to be, as a part of the mean one around. */
  limit: number
  /** Whether every gap is within it, with the rotor where the plan puts it (as found where there is none) and the stator as it stands. */
  within: boolean
  gaps: StatorGapAnswer[]
  /** What centres it, foot by foot; empty where it stays, where its feet were not entered, and without a plan. */
  feet: StatorFootAnswer[]
}

interface StatorGapAnswer {
  gap: string
  at: Millimetres
  mean: Micrometres
  outOfRound: Micrometres
  /** How far the middle of the bore is off where it is to be, seen from the rotor, and the largest difference of a gap. */
  found: Off
  /** The same with the rotor as planned and the stator as it stands. */
  planned: Off
  /** How far the bore goes here to be centred, and the same then; left out where it stays, and without a plan. */
  move?: AcrossMove
  centred?: Off
}

interface Off {
  y: Micrometres
  z: Micrometres
  part: number
}

interface StatorFootAnswer {
  foot: string
  shim: Micrometres
  side: Micrometres
}

/** Every stator of a train, with the rotors where these motions put them; left out where there is none. */
export function statorsAnswer(
  train: Train,
  motions?: readonly Motion[],
): { stators?: StatorAnswer[] } {
  const stators = statorsOf(train, motions)
  return stators.length === 0 ? {} : { stators }
}

/** @param motions own motion of every body, in the order of the train's; none: as found */
export const statorsOf = (train: Train, motions?: readonly Motion[]): StatorAnswer[] =>
  train.bodies.flatMap((body, b) =>
    body.stator ? [statorOf(train, body, body.stator, motions && (motions[b] ?? noMotion))] : [],
  )

/** One stator: whether it stays, and if not what centres it, its shims in steps of the store. */
function statorOf(
  train: Train,
  body: Body,
  stator: Stator,
  motion: Motion | undefined,
): StatorAnswer {
  const rotor = rotorLine(body, motion ?? noMotion)
  const still: AcrossMove = { y: 0, z: 0 }
  const planned = stator.gaps.map((gap) =>
    gapAround(gap, stator.aim, less(still, acrossAt(rotor, gap.at))),
  )
  const within = planned.every(({ part }) => part <= stator.limit + tol.share)
  const goes = motion !== undefined && !within
  const centring = centringLine(stator)
  const wanted = (x: Millimetres) => plus(acrossAt(centring, x), acrossAt(rotor, x))
  const feet = goes ? stator.feet.map(({ id, x }) => footMove(train, id, x, wanted(x))) : []
  const moves =
    feet.length === 0
      ? wanted
      : (x: Millimetres) => acrossAt(lineOfFeet(feet.map((foot) => foot.moved)), x)
  return {
    machine: body.id,
    limit: stator.limit,
    within,
    gaps: stator.gaps.map((gap, g) => {
      const found = gapAround(gap, stator.aim, still)
      const move = moves(gap.at)
      return {
        gap: gap.id,
        at: gap.at,
        mean: found.mean,
        outOfRound: found.outOfRound,
        found: offOf(found),
        planned: offOf(planned[g] ?? found),
        ...(goes && {
          move,
          centred: offOf(gapAround(gap, stator.aim, less(move, acrossAt(rotor, gap.at)))),
        }),
      }
    }),
    feet: feet.map(({ foot, moved: { y, z } }) => ({ foot, shim: z, side: y })),
  }
}

/** A shim comes in steps of the store, where the train names one. */
function footMove({ plan: { shims } }: Train, foot: string, x: Millimetres, { y, z }: AcrossMove) {
  const shim = shims ? Math.round(z / shims.step) * shims.step : z
  return { foot, moved: { x, y, z: shim } }
}

const offOf = ({ off: { y, z }, part }: GapAround): Off => ({ y, z, part })
const plus = (a: AcrossMove, b: AcrossMove): AcrossMove => ({ y: a.y + b.y, z: a.z + b.z })
const less = (a: AcrossMove, b: AcrossMove): AcrossMove => ({ y: a.y - b.y, z: a.z - b.z })
