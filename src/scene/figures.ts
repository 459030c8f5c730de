import type { Train } from '../mechanics/train'
import type { AsFound } from '../mechanics/readings/asFound'
import { foundLines } from '../mechanics/uncertainty/foundLines'
import type { Misalignment } from '../mechanics/readings/equation'
import { noMotion, type Motion } from '../mechanics/motion'
import type { CouplingAnswer } from '../engine/plan/answer'
import type { DrawnAnswer } from './drawnAnswer'
import { couplingsAnswer } from '../engine/plan/report'
import { axisLines, foundAxes, answerMotions, type AxisLines } from './axisLines'
import { driftOf, type Drift } from './drift'
import { gatesOf, shiftsOf, type Gate } from './gates'
import { zeroOf, type Zero } from './zero'

/** The lines behind rise and side, in um and mm from the sheet's zero; plain data that can be sent. */
export interface Figures {
  readonly zero: string
  readonly lines: readonly AxisLines[]
  readonly gates: readonly Gate[]
  readonly drift: readonly Drift[]
  /** Every coupling in every state as it stands; also where there is no plan. */
  readonly asFound: readonly CouplingAnswer[]
}

/** What rise and side show of a train before anything moves: worked out once, it serves every frame of a drag. */
export interface StandingFigures {
  readonly found: readonly AsFound[]
  readonly zero: Zero
  readonly drift: readonly Drift[]
  readonly asFound: readonly CouplingAnswer[]
  /** What each state does to each coupling. */
  readonly shifts: readonly (readonly Misalignment[])[]
}

export function standingFigures(train: Train): StandingFigures {
  const found = foundLines(train)
  const zero = zeroOf(
    train,
    foundAxes(
      train,
      found.map(({ line }) => line),
    ),
  )
  const still = train.bodies.map(() => noMotion)
  return {
    found,
    zero,
    drift: driftOf(train, zero),
    asFound: couplingsAnswer(train, found, still),
    shifts: shiftsOf(train),
  }
}

/** Works out what rise and side show of an answer. */
export const figuresOf = (
  train: Train,
  answer: DrawnAnswer,
  standing: StandingFigures = standingFigures(train),
): Figures => figuresAt(train, answerMotions(train, answer), standing)

/** What rise and side show with every body moved so far (um, mrad; train order); undefined: there is no plan. */
export function figuresAt(
  train: Train,
  motions: readonly Motion[] | undefined,
  { found, zero, drift, asFound: standing, shifts }: StandingFigures,
): Figures {
  const misalignments = found.map(({ line }) => line)
  const lines = axisLines(train, misalignments, motions, zero.axis)
  const gates = gatesOf(train, lines, shifts)
  return { zero: zero.words, lines, gates, drift, asFound: standing }
}
