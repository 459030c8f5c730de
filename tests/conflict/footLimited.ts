import { sum, type Affine } from '../second/affine'
import { build } from '../second/model'
import { ownCarry } from '../second/motion'
import { keptShareOf } from '../second/share'
import { loadSolver, Stages } from '../second/solver'
import type { Train } from '../second/train'

/** What one foot is not to do: shims or slides (um) taken the way it goes stay at or under `most`. */
export interface FootLimit {
  readonly body: string
  readonly foot: string
  readonly way: 'y' | 'z'
  readonly sign: 1 | -1
  readonly most: number
}

/** What other code makes of a train with one foot held back. */
export interface Limited {
  /** Least cost within the share asked for (um); none where no move keeps it. */
  readonly cost?: number
  /** The least worst share with no more than `cap` moved in all. */
  readonly share: number
}

/** The same train with one foot held back, by the second builder: a row more, its least cost, and its least worst share. */
export async function footLimited(file: Train, limit: FootLimit, cap: number): Promise<Limited> {
  const highs = await loadSolver()
  const built = build(file)
  const { program } = built
  const mover = built.movers.get(limit.body)
  const foot = mover?.body.feet.find(({ id }) => id === limit.foot)
  if (!mover || !foot) throw new Error(`no foot ${limit.foot} of ${limit.body}`)
  const carried = ownCarry(mover, { x: foot.x, y: foot.y ?? 0, z: 0 })[limit.way]
  program.rows.push({
    family: 'cost',
    also: [],
    expression: sum([limit.sign, carried]),
    low: -Infinity,
    high: limit.most,
  })
  const worst: Affine = { constant: 0, by: new Map([[program.worst, 1]]) }
  const cost: Affine = {
    constant: 0,
    by: new Map(program.cost.flatMap((price, c) => (price === 0 ? [] : [[c, price] as const]))),
  }
  const solved = (asked: (stages: Stages) => Limited): Limited => {
    const stages = new Stages(highs, program)
    try {
      return asked(stages)
    } finally {
      stages.dispose()
    }
  }
  const { share } = solved((stages) => {
    stages.addRow({ family: 'cost', also: [], expression: cost, low: -Infinity, high: cap })
    const least = stages.least(worst)
    if (!least) throw new Error('no move at all')
    return {
      share: Math.max(0, ...built.checks.map((check) => keptShareOf(check, least.columns))),
    }
  })
  return solved((stages) => {
    stages.limitWorst(built.share)
    const least = stages.least(cost)
    return least ? { share, cost: least.objective } : { share }
  })
}
