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
export const agreement = {
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

function apart(a: number, b: number, relative: number, small: number): boolean {
  if (!Number.isFinite(a) || !Number.isFinite(b)) return !Object.is(a, b)
  return Math.abs(a - b) > relative * Math.max(Math.abs(a), Math.abs(b)) + small
}

/** Whether what decides between the two statuses lies within the tolerance of the share. */
function onTheEdge(first: FirstAnswer, second: SecondAnswer): boolean {
  const { share, floor, asFoundShares } = second
  const edge = agreement.share * share
  const statuses = [first.status, second.status]
  const found = Math.max(...Object.values(asFoundShares).flatMap((by) => Object.values(by)))
  return statuses.includes('in-tolerance')
    ? Math.abs(found - share) <= edge
    : Math.abs(floor - share) <= edge
}

/** Compares the planner's answer with the second builder's by the output contract. */
export function compare(first: FirstAnswer, second: SecondAnswer): Comparison {
  const disagreements: string[] = []
  const differ = (
    what: string,
    a: number | undefined,
    b: number,
    relative: number,
    small: number,
  ) => {
    if (a === undefined || apart(a, b, relative, small))
      disagreements.push(`${what}: first ${a ?? 'none'}, second ${b}`)
  }
  for (const [coupling, by] of Object.entries(second.asFoundShares)) {
    const found = first.asFound.find((row) => row.coupling === coupling)
    for (const [state, share] of Object.entries(by)) {
      const what = `as found ${coupling} ${state}`
      differ(what, found?.share[state], share, agreement.asFound, agreement.smallShare)
    }
  }
  differ('floor', first.floor, second.floor, agreement.share, agreement.smallShare)
  if (first.status !== second.status) {
    if (onTheEdge(first, second)) return { disagreements, borderline: true, sameBand: false }
    disagreements.push(`status: first ${first.status}, second ${second.status}`)
    return { disagreements, borderline: false, sameBand: false }
  }
  if (second.status === 'impossible') return { disagreements, borderline: false, sameBand: false }
  const close = second.hasCircles ? agreement.withCircles : agreement.costWithoutCircles
  differ('cost', first.cost, second.cost, close, agreement.smallCost)
  const worst = first.worstShare ?? NaN
  const { share, smallShare } = agreement
  const [low, high] = second.worstShareBand
  const inBand = worst >= low * (1 - share) - smallShare && worst <= high * (1 + share) + smallShare
  const same = !apart(worst, second.worstShare, share, smallShare)
  if (!same && !inBand)
    disagreements.push(
      `worst share: first ${worst}, second ${second.worstShare} (${low} to ${high})`,
    )
  return { disagreements, borderline: false, sameBand: !same && inBand }
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
