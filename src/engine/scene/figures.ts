import type { Train } from '../train/model'
import { asFound } from '../readings/asFound'
import { noMotion } from '../motion/motion'
import type { CouplingAnswer, PlanAnswer } from '../plan/answer'
import { couplingsAnswer } from '../plan/report'
import { axisLines, foundAxes, motionsOf, type AxisLines } from './axisLines'
import { driftOf, type Drift } from './drift'
import { gatesOf, type Gate } from './gates'
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

/** Works out what rise and side show of an answer. */
export function figuresOf(train: Train, answer: PlanAnswer): Figures {
  const found = train.couplings.map(asFound)
  const misalignments = found.map(({ line }) => line)
  const zero = zeroOf(train, foundAxes(train, misalignments))
  const lines = axisLines(train, misalignments, motionsOf(train, answer), zero.axis)
  return {
    zero: zero.words,
    lines,
    gates: gatesOf(train, lines),
    drift: driftOf(train, found, zero),
    asFound: couplingsAnswer(
      train,
      found,
      train.bodies.map(() => noMotion),
    ),
  }
}
