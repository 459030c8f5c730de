import { modelOf } from '../../src/cli/model'
import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import type { Solver } from '../../src/engine/lp/solver'
import { everyStage, PlanningRun } from '../../src/engine/planningRun'
import { holdsFrom } from '../../src/engine/studies/holds/holdRows'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { tradeoffPlanner } from '../../src/engine/studies/tradeoff/tradeoff'
import { glpkSolver } from '../../src/solvers/glpk'
import { askGlpsol, askHighs, glpsolInstalled } from '../cli/secondOpinion'
import { longTrain } from '../holds/longTrain'

/** A question of the bench: what is asked of a train, and how often. */
export interface Question {
  readonly name: string
  readonly times: number
  readonly ask: () => void | Promise<void>
  /** Programs asked, and how long they took in all (ms), since they were last set to nothing. */
  readonly asked: { programs: number; ms: number }
}

const read = (document: unknown) => {
  const train = readTrain(document)
  if (!train.ok) throw new Error(JSON.stringify(train.refused))
  return train
}

/** The example of four machines, or five, whose answers people wait for; then longer and longer trains. */
export async function questions(
  examples: readonly (readonly [string, unknown])[],
): Promise<Question[]> {
  const glpk = await glpkSolver()
  const asked = { programs: 0, ms: 0 }
  const solver: Solver = {
    ...glpk,
    solve: (program, seconds, warm) => {
      const began = performance.now()
      const outcome = glpk.solve(program, seconds, warm)
      asked.programs += 1
      asked.ms += performance.now() - began
      return outcome
    },
  }
  const of = (name: string, times: number, ask: Question['ask']) => ({ name, times, ask, asked })
  const out: Question[] = []
  for (const [name, document] of examples) {
    const train = read(document)
    out.push(
      of(`${name}: plan, floor and proof`, 15, () => {
        new PlanningRun(train, solver).plan()
      }),
      of(`${name}: the whole answer`, 9, () => {
        new PlanningRun(train, solver).answer(everyStage)
      }),
      of(`${name}: every choice of fixed machines`, 5, () => {
        holdsFrom(new HoldSolver(train.train, solver), { prices: false })
      }),
      of(`${name}: the trade-off`, 7, () => {
        tradeoffPlanner(train.train, solver)
      }),
    )
    const model = modelOf(new PlanningRun(train, solver), 'lp')
    if (model.status === 'stopped') throw new Error(model.why)
    const { text } = model
    out.push(
      of(`${name}: its last program alone, by HiGHS`, 7, async () => {
        await askHighs(text)
      }),
    )
    if (glpsolInstalled)
      out.push(
        of(`${name}: its last program alone, by glpsol as a process`, 7, () => {
          askGlpsol(text, 'lp')
        }),
      )
  }
  for (const machines of [10, 20, 50, 100]) {
    const train = read(letGo(longTrain(machines)))
    out.push(
      of(`${machines} machines, nothing fixed: plan, floor and proof`, 3, () => {
        new PlanningRun(train, solver).plan()
      }),
    )
  }
  const twelve = read(longTrain(12))
  out.push(
    of('12 machines: every choice of fixed machines', 1, () => {
      holdsFrom(new HoldSolver(twelve.train, solver), { prices: false })
    }),
  )
  const long = letGo(longTrain(50))
  const impossible = read({ ...long, plan: { ...long.plan, share: 0.3 } })
  out.push(
    of('50 machines, nothing fixed, impossible: that it is', 3, () => {
      new PlanningRun(impossible, solver).plan()
    }),
    of('50 machines, nothing fixed, impossible: reasons and remedies', 1, () => {
      new PlanningRun(impossible, solver).answer({ reasons: true })
    }),
  )
  return out
}

/** The same train with nothing fixed and round tolerances. */
const letGo = (train: TrainDocument): TrainDocument => ({
  ...train,
  machines: train.machines.map((machine) => ({ ...machine, held: false })),
  couplings: train.couplings.map((coupling) => ({
    ...coupling,
    tolerance: { ...coupling.tolerance, shape: 'round' as const },
  })),
})
