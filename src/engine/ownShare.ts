import { tidy } from '../language/tidy'
import { tol } from '../mechanics/tolerances'
import { disturbedBodies } from './plan/disturbed'
import type { ChanceStudy } from './chance/chanceStudy'
import type { WantedAnswer } from './chance/answer'
import { shareStep } from './chanceAlong'
import type { HoldChoice } from './studies/holds/choice'
import type { HoldSolver } from './studies/holds/holdSolver'

/** Plans are looked at so many steps apart first, at the same shares for every choice, so that their parts are shared. */
const stride = 8

/**
 * The largest share of tolerance, at or under the one asked for, at which a choice of held bodies has a plan whose
 * chance reaches the one wanted; where none is found, the best one seen. Shares are looked at in wide steps down to
 * the first that reaches it, and between that and the one before by halves: a chance that is reached only between two
 * looks is missed, one that is told as reached is.
 * @param holds at the share asked for; @param floor of the choice
 */
export function ownShare(
  holds: HoldSolver,
  study: ChanceStudy,
  choice: HoldChoice,
  floor: number,
): WantedAnswer {
  const { share: asked, sure } = holds.train.plan
  const chance = sure?.chance ?? 0
  const last = Math.max(0, Math.floor((asked - floor) / shareStep + tol.digit))
  const shareAt = (step: number) => tidy(asked - step * shareStep)
  const known = new Map<number, number>()
  /** Chance of the plan at a step; -1: no plan, or one whose moves nothing shows, though something has to move. */
  const chanceAt = (step: number): number => {
    const before = known.get(step)
    if (before !== undefined) return before
    const motions = holds.at(shareAt(step)).motionsOf(choice)
    const counts = motions && (step === 0 || disturbedBodies(holds.train, motions).length > 0)
    const all = counts ? study.good(study.judged(motions)).all / study.draws : -1
    known.set(step, all)
    return all
  }
  const answer = (step: number): WantedAnswer => ({
    chance,
    reached: chanceAt(step) >= chance,
    share: shareAt(step),
    asked,
  })
  const wide = Array.from({ length: Math.floor(last / stride) + 1 }, (_, i) => i * stride)
  if (last % stride !== 0) wide.push(last)
  const first = wide.find((step) => chanceAt(step) >= chance) ?? aroundBest()
  if (first === undefined) return answer(bestOf(known))
  let [low, high] = [wide.findLast((step) => step < first) ?? 0, first]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (chanceAt(middle) >= chance) high = middle
    else low = middle
  }
  return answer(high)

  /** Nearer and nearer to the best look: a step that reaches the chance after all; undefined: none. */
  function aroundBest(): number | undefined {
    for (let by = stride / 2; by >= 1; by /= 2) {
      const best = bestOf(known)
      const found = [best - by, best + by].find(
        (step) => step >= 0 && step <= last && chanceAt(step) >= chance,
      )
      if (found !== undefined) return found
    }
    return undefined
  }
}

/** The step of the best chance, the cheapest of equals. */
const bestOf = (known: ReadonlyMap<number, number>): number =>
  [...known].reduce((a, b) => (b[1] > a[1] || (b[1] === a[1] && b[0] < a[0]) ? b : a), [0, -1])[0]
