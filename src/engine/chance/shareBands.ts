import type { ChanceStudy, JudgedPlan } from './chanceStudy'
import { addBlock, sharesInto } from './judge'

/** Between which shares of tolerance a coupling lies in a state in 19 of 20 draws. */
export type ShareBand = readonly [low: number, high: number]

/** The band of every coupling in every state, the plan done blind: what stands between the lowest and the highest 2.5 %. */
export function shareBands(study: ChanceStudy, plan: JudgedPlan): ShareBand[][] {
  const { blocks, draws } = study
  return plan.states.map((states, c) => {
    const { alike = [], numbers = 0 } = plan.work[c] ?? {}
    const shares = states.map(() => new Float64Array(draws))
    let first = 0
    blocks.sizes.forEach((size, block) => {
      const worked = blocks.sum(alike, numbers, block)
      states.forEach((state, s) => {
        const errors = blocks.standingAt(c, s, block).slice()
        addBlock(errors, worked)
        const to = shares[s]
        if (to) sharesInto(to, first, state, errors, size)
      })
      first += size
    })
    return shares.map((all) => {
      all.sort()
      const at = (part: number) => all[Math.min(draws - 1, Math.floor(part * draws))] ?? 0
      return [at(0.025), at(0.975)]
    })
  })
}
