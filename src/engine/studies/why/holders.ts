import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { cutRow } from '../../lp/cuts'
import type { Meaning, Program } from '../../lp/program'
import { keyOf, memberOf } from '../../infeasible/elastic/limit'
import type { BindingAnswer } from '../../plan/answer'
import { limitWords } from '../../plan/limitWords'
import type { RoundsOptimal } from '../../lp/rounds'

/** A coupling in a state, or a limit, that keeps a foot where the plan puts it. */
export type Holder = Pick<BindingAnswer, 'limit' | 'where' | 'part'>

interface Pressing {
  meaning: Meaning
  side: 'lower' | 'upper'
  weight: number
  /** Weight of the row that stands for it in words. */
  most: number
  toward: { u: number; w: number }
}

/**
 * The limits and tolerances with a dual in an answer to a program whose last limit is the one asked
 * about: what would have to give for it to give. One entry a coupling and state, a foot's limit, a
 * restraint; hardest first.
 */
export function holdersOf(
  train: Train,
  program: Program,
  { answer: { duals }, cuts }: Pick<RoundsOptimal, 'answer' | 'cuts'>,
): Holder[] {
  const own = program.limits.length - 1
  const pressing = new Map<string, Pressing>()
  const press = (meaning: Meaning, dual: number, angle?: number) => {
    if (dual === 0) return
    const side = dual > 0 ? 'lower' : 'upper'
    const key = keyOf(memberOf(meaning, side))
    const weight = Math.abs(dual)
    const was = pressing.get(key)
    const strongest = was === undefined || weight > was.most
    const { u, w } = was?.toward ?? { u: 0, w: 0 }
    pressing.set(key, {
      meaning: strongest ? meaning : was.meaning,
      side: strongest ? side : was.side,
      most: Math.max(weight, was?.most ?? 0),
      weight: weight + (was?.weight ?? 0),
      toward:
        angle === undefined
          ? { u, w }
          : { u: u + weight * Math.cos(angle), w: w + weight * Math.sin(angle) },
    })
  }
  program.limits.forEach(({ meaning }, i) => {
    if (i !== own) press(meaning, duals[i] ?? 0)
  })
  // Tangents found in the last round stand behind those that were asked, and have no duals yet.
  const asked = duals.length - program.limits.length - program.displacements.length
  cuts
    .filter((cut) => cutRow(program, cut, '').terms.length > 0)
    .slice(0, asked)
    .forEach((cut, k) => {
      const meaning = program.circles[cut.circle]?.meaning
      const dual = duals[own + 1 + k] ?? 0
      // Behind the tangents stand displacements and the cap on cost, whose duals are of either sign.
      if (meaning && dual < 0) press(meaning, dual, cut.angle)
    })
  const all = [...pressing.values()].sort((a, b) => b.weight - a.weight)
  return all
    .filter(({ weight }) => weight > tol.noPress * (all[0]?.weight ?? 0))
    .map((one) => limitWords(train, one))
}
