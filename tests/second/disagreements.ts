import type { SecondAnswer } from './solve'

/** The numbers of the planner's answer that the second builder answers too. */
export interface FirstAnswer {
  status: string
  cost?: number | undefined
  floor?: number | undefined
  worstShare?: number | undefined
  asFound: { coupling: string; share: Record<string, number> }[]
}

/** How two answers to one train compare. */
export interface Comparison {
  /** Empty when they agree. */
  disagreements: string[]
  /** The statuses differ, but the deciding number lies on its limit within the tolerance. */
  borderline: boolean
  /** Worst shares differ, but both are least within 1e-7 to 1e-6 of the least cost. */
  sameBand: boolean
}

/** Agreement asked of two right answers (relative), and below what they count as nothing. */
const agreement = {
  costWithoutCircles: 1e-6,
  withCircles: 2e-5,
  share: 2e-5,
  /** As-found shares need no solver. */
  asFound: 1e-7,
  /** Shares below this are zero. */
  smallShare: 1e-7,
  /** Costs below this are zero (fine units of the document). */
  smallCost: 1e-5,
}

/** Whether a value lies between two others, give or take. */
function between(value: number, low: number, high: number, relative: number, small: number) {
  if (value === low || value === high) return true
  return (
    value >= low - relative * Math.abs(low) - small &&
    value <= high + relative * Math.abs(high) + small
  )
}

/** Whether what decides between the two statuses lies within the tolerance of the share. */
function onTheEdge(first: FirstAnswer, second: SecondAnswer, loose: SecondAnswer): boolean {
  const { share, asFoundShares } = second
  const found = Math.max(...Object.values(asFoundShares).flatMap((by) => Object.values(by)))
  return [first.status, second.status].includes('in-tolerance')
    ? between(share, found, found, agreement.share, 0)
    : between(share, loose.floor, second.floor, agreement.share, 0)
}

function foundApart(first: FirstAnswer, second: SecondAnswer): string[] {
  return Object.entries(second.asFoundShares).flatMap(([coupling, by]) => {
    const row = first.asFound.find((found) => found.coupling === coupling)
    return Object.entries(by).flatMap(([state, share]) => {
      const value = row?.share[state] ?? NaN
      return between(value, share, share, agreement.asFound, agreement.smallShare)
        ? []
        : [`as found ${coupling} ${state}: first ${value}, second ${share}`]
    })
  })
}

/**
 * Compares the planner's answer with the second builder's by the output contract. `loose` is the
 * second answer with every circle as wide as a plan may take it: a right answer lies between the two.
 */
export function compare(first: FirstAnswer, second: SecondAnswer, loose = second): Comparison {
  const disagreements = foundApart(first, second)
  const check = (
    what: string,
    value = NaN,
    low: number,
    high: number,
    relative: number,
    small: number,
  ) => {
    const right = between(value, low, high, relative, small)
    if (!right) disagreements.push(`${what}: first ${value}, second ${low} to ${high}`)
  }
  const { share, smallShare, smallCost } = agreement
  check('floor', first.floor, loose.floor, second.floor, share, smallShare)
  if (first.status !== second.status) {
    const borderline = onTheEdge(first, second, loose)
    if (!borderline) disagreements.push(`status: first ${first.status}, second ${second.status}`)
    return { disagreements, borderline, sameBand: false }
  }
  if (second.status === 'impossible') return { disagreements, borderline: false, sameBand: false }
  const close = second.hasCircles ? agreement.withCircles : agreement.costWithoutCircles
  check('cost', first.cost, loose.cost, second.cost, close, smallCost)
  const [low, high] = second.worstShareBand
  const [lower, higher] = loose.worstShareBand
  const worst = first.worstShare ?? NaN
  const same = between(worst, second.worstShare, second.worstShare, share, smallShare)
  if (!same)
    check('worst share', worst, Math.min(low, lower), Math.max(high, higher), share, smallShare)
  return { disagreements, borderline: false, sameBand: !same && disagreements.length === 0 }
}

/** The second answer in the form of a first one, to compare two of them. */
export function asFirst(answer: SecondAnswer): FirstAnswer {
  return {
    status: answer.status,
    cost: answer.cost,
    floor: answer.floor,
    worstShare: answer.worstShare,
    asFound: Object.entries(answer.asFoundShares).map(([coupling, share]) => ({ coupling, share })),
  }
}
