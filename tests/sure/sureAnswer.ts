import type { Solver } from '../../src/engine/lp/solver'
import { planTrain } from '../planned'
import type { Motions } from '../second/sure/errors'
import type { Spread } from '../second/sure/spreads'
import type { Train } from '../second/train'

interface Chance {
  chance: number
  low: number
  high: number
}

/** What the contract says that `sure` holds; nothing of it is taken from the engine's own types. */
interface SureAnswer {
  draws: number
  seed: number
  all?: Chance
  reread?: Chance
  asFound: Chance
  couplings?: { coupling: string; state: string; chance: number; u: Spread[] }[]
  bolts?: Chance
  half?: number
  double?: number
  buys?: { what: string; where?: string; exact: number; halved?: number; cost?: number }[]
  assumed: { where: string; what: string; value: number }[]
}

/** A train planned with `plan.sure`, and what the answer says of its chances. */
export interface Planned {
  status: string
  motions: Motions
  sure: SureAnswer | undefined
}

/** Plans a train as the command line does; a refusal is an error here. */
export function plannedSure(train: Train, solver: Solver): Planned {
  const answer = planTrain(train, solver, { reasons: false, prices: false })
  if ('refused' in answer) throw new Error(`refused: ${JSON.stringify(answer.refused)}`)
  const { sure } = answer as { sure?: unknown }
  return {
    status: answer.status,
    motions: Object.fromEntries((answer.bodies ?? []).map(({ id, move }) => [id, move])),
    sure: sure as SureAnswer | undefined,
  }
}
