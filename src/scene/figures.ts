import type { Train } from '../mechanics/train'
import { foundOf } from '../mechanics/readings/linesFound'
import { noMotion, type Motion } from '../mechanics/motion'
import type { CouplingAnswer } from '../engine/plan/answer'
import type { PlanAnswer } from '../engine/work/answer'
import { couplingsAnswer } from '../engine/plan/report'
import { axisLines, foundAxes, motionsOf, type AxisLines } from './axisLines'
import { driftOf, type Drift } from './drift'
import { gatesOf, type Gate } from './gates'
import { kept } from '../mechanics/kept'
import { zeroOf } from './zero'

/** The lines behind rise and side, in um and mm from the sheet's zero; plain data that can be sent. */
export interface Figures {
  readonly zero: string
  readonly lines: readonly AxisLines[]
  readonly gates: readonly Gate[]
  readonly drift: readonly Drift[]
  /** Every coupling in every state as it stands, in document units; also where there is no plan. */
  readonly asFound: readonly CouplingAnswer[]
}

/** What rise and side show of a train before anything moves. */
const standingFigures = kept((train: Train) => {
  const found = foundOf(train)
  const misalignments = found.map(({ line }) => line)
  const zero = zeroOf(train, foundAxes(train, misalignments))
  const still = train.bodies.map(() => noMotion)
  return {
    misalignments,
    zero,
    drift: driftOf(train, found, zero),
    asFound: couplingsAnswer(train, found, still),
  }
})

/** Works out what rise and side show of an answer. */
export const figuresOf = (train: Train, answer: PlanAnswer): Figures =>
  figuresAt(train, motionsOf(train, answer))

/** What rise and side show with every body moved so far (um, mrad; train order); undefined: there is no plan. */
export function figuresAt(train: Train, motions: readonly Motion[] | undefined): Figures {
  const { misalignments, zero, drift, asFound: standing } = standingFigures(train)
  const lines = axisLines(train, misalignments, motions, zero.axis)
  return { zero: zero.words, lines, gates: gatesOf(train, lines), drift, asFound: standing }
}
