import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { towardTangent, pressingRows, type CircleDirection } from '../../lp/duals'
import type { Meaning, Program } from '../../lp/program'
import { keyOf, elasticLimitOf } from '../../infeasible/elastic/limit'
import type { BindingLimit } from '../../plan/answer'
import { bindingLimit } from '../../plan/bindingLimit'
import type { RoundsOptimal } from '../../lp/rounds'

/** A coupling in a state, or a limit, that keeps a foot where the plan puts it. */
export type Holder = BindingLimit

interface Holding {
  meaning: Meaning
  side: 'lower' | 'upper'
  weight: number
  /** Weight of the row that stands for it in words. */
  most: number
  toward: CircleDirection
}

/**
 * The limits and tolerances with a dual in an answer to a program whose last limit is the one asked
 * about: what would have to give for it to give. One entry a coupling and state, a foot's limit, a
 * restraint; hardest first.
 */
export function holdersOf(
  train: Train,
  program: Program,
  answer: Pick<RoundsOptimal, 'answer' | 'asked'>,
): Holder[] {
  const own = program.limits.length - 1
  const holding = new Map<string, Holding>()
  for (const { row, limit, cut, side, weight } of pressingRows(program, answer, {})) {
    if (limit === own) continue
    const key = keyOf(elasticLimitOf(row.meaning, side))
    const was = holding.get(key)
    const strongest = was === undefined || weight > was.most
    const toward = was?.toward ?? { u: 0, w: 0 }
    holding.set(key, {
      meaning: strongest ? row.meaning : was.meaning,
      side: strongest ? side : was.side,
      most: Math.max(weight, was?.most ?? 0),
      weight: weight + (was?.weight ?? 0),
      toward: cut ? towardTangent(toward, cut, weight) : toward,
    })
  }
  const all = [...holding.values()].sort((a, b) => b.weight - a.weight)
  return all
    .filter(({ weight }) => weight > tol.noPress * (all[0]?.weight ?? 0))
    .map((one) => bindingLimit(train, one))
}
