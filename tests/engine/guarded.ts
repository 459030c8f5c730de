import { at, given, oneRow, pair, planOf, type Json, type Pair } from './pair'

/**
 * B on one row of two feet, so that it only rises and slides. Its line is read to 10 um each way; two shims of 10 um err
 * by 10 / root 2 together, a slide by 20 um: the offset is known to root (100 + 50) up and to root (100 + 400) sideways.
 */
export const guarded = (plan: Json, found: [y: number, z: number], more: Pair = {}) =>
  planOf(
    pair({
      ...more,
      right: { feet: oneRow, ...more.right },
      found: [{ ...given(...found), u: 10 }],
      rest: { ...more.rest, plan },
    }),
  )

export const rise = (answer: ReturnType<typeof planOf>) => at(answer.feet, 0).shim
