import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import { firstCuts, violatedCuts } from '../../lp/cuts'
import { reach, programUnit, type Cut, type Program } from '../../lp/program'
import { stageProgram } from '../../lp/stage'
import type { MixedOutcome, MixedProgram } from '../../lp/solver'
import { choiceOf, looseBodies, type HoldChoice } from './choice'
import type { HoldSolver } from './holdSolver'

/**
 * The choice that a mixed-integer program finds best: least cost plus the effort of what is disturbed.
 * Each loose body with an effort has a binary that its moves must pay for. Circles are cut as in every
 * program, so that the answer of each round costs no more than the truth; the choice is found when its
 * plan, solved as such, costs what was promised.
 * @returns undefined where nothing can be planned, or the solver has no binaries or stopped
 */
export function mixedBest(holds: HoldSolver): HoldChoice | undefined {
  const { solver, train } = holds
  const nothingHeld = choiceOf(train, new Set())
  const first = holds.solve(nothingHeld)
  if (first.status !== 'planned' || !solver.solveMixed) return undefined
  const { program } = holds.partition
  let cuts = [...firstCuts(program), ...holds.cutsOf(nothingHeld)]
  let best: { choice: HoldChoice; cost: Micrometres } = {
    choice: nothingHeld,
    cost: holds.costWithEffort(nothingHeld) ?? Infinity,
  }
  for (let round = 0; round < tol.mostMixedRounds; round++) {
    const mixed = mixedProgram(holds, first.share, cuts, best.cost)
    const outcome: MixedOutcome = solver.solveMixed(mixed, tol.seconds)
    if (outcome.kind === 'stopped') break
    const choice = choiceIn(holds, outcome.columns)
    const cost = holds.costWithEffort(choice) ?? Infinity
    if (cost < best.cost) best = { choice, cost }
    if (best.cost <= outcome.objective * programUnit * (1 + tol.sameCost) + tol.sameCost) break
    const more = [...violatedCuts(program, cuts, outcome.columns), ...holds.cutsOf(choice)].filter(
      (cut) => !cuts.some((known) => known.circle === cut.circle && known.angle === cut.angle),
    )
    if (more.length === 0) break
    cuts = [...cuts, ...more]
  }
  return best.choice
}

/** Loose bodies whose effort a choice pays when it disturbs them. */
const withEffort = (holds: HoldSolver): number[] =>
  looseBodies(holds.train).filter((b) => (holds.train.bodies[b]?.effort ?? 0) > 0)

/**
 * The least-cost program with a binary for each body with an effort: all that it moves, priced, is at
 * most the best cost known times its binary. A body moved for more than that is in no better choice.
 */
function mixedProgram(
  holds: HoldSolver,
  share: number,
  cuts: readonly Cut[],
  known: Micrometres,
): MixedProgram {
  const { program } = holds.partition
  const lp = stageProgram(program, { ask: 'cost', share }, cuts)
  const bodies = withEffort(holds)
  const binaries = bodies.map((_, i) => lp.columns.length + i)
  const most = known / programUnit
  const effort = (b: number) => (holds.train.bodies[b]?.effort ?? 0) / programUnit
  return {
    columns: [...lp.columns, ...bodies.map(() => ({ lower: 0, upper: 1 }))],
    rows: [
      ...lp.rows,
      ...bodies.flatMap((b, i) => {
        const binary = binaries[i] ?? 0
        const paid = { terms: priced(program, b), most: most - effort(b) }
        const unpaid = unpriced(program, b).flatMap((column) =>
          [1, -1].map((sign) => ({ terms: [[column, sign] as const], most: reach })),
        )
        return [paid, ...unpaid]
          .filter(({ terms }) => terms.length > 0)
          .map((row) => ({
            terms: [...row.terms, [binary, -row.most] as const],
            lower: -Infinity,
            upper: 0,
          }))
      }),
    ],
    objective: [...lp.objective, ...bodies.map(effort)],
    binaries,
  }
}

/** What a body's moves cost, as terms of a row. */
const priced = (program: Program, body: number): (readonly [number, number])[] =>
  program.columns.flatMap(({ meaning, cost }, c) =>
    meaning.part === 'move' && meaning.body === body && cost > 0 ? [[c, cost] as const] : [],
  )

/** Motions of a body that has moves which cost nothing; none where all its moves are paid for. */
function unpriced(program: Program, body: number): number[] {
  const paid = new Set(
    program.displacements.flatMap(({ meaning, terms }) =>
      'body' in meaning && meaning.body === body ? terms.map(([column]) => column) : [],
    ),
  )
  return program.columns.flatMap(({ meaning }, c) =>
    meaning.part === 'motion' && meaning.body === body && !paid.has(c) ? [c] : [],
  )
}

/**
 * The bodies that a point leaves where they are are held; the others are let go. A body with a binary
 * moves when that is 1, whatever the solver's last digits say of its motions.
 */
function choiceIn(holds: HoldSolver, columns: readonly number[]): HoldChoice {
  const { program } = holds.partition
  const moved = new Set(
    program.columns.flatMap(({ meaning }, c) =>
      meaning.part === 'motion' && Math.abs(columns[c] ?? 0) * programUnit > tol.unseen
        ? [meaning.body]
        : [],
    ),
  )
  withEffort(holds).forEach((b, i) => {
    if ((columns[program.columns.length + i] ?? 0) > 0.5) moved.add(b)
    else moved.delete(b)
  })
  return choiceOf(holds.train, new Set(looseBodies(holds.train).filter((b) => !moved.has(b))))
}
