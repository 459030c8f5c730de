import { choiceNow, choiceOf, looseBodies, type HoldChoice } from './choice'
import type { HoldSolver } from './holdSolver'
import { mixedBest } from './mixed'
import { rankHolds } from './rank'
import type { HoldRow } from './row'

/** Choices solved before the list is taken as it is. */
const mostSolved = 600

/**
 * Good choices of a train with too many bodies for all of them: what is held now, nothing, each body
 * alone, the best that a mixed-integer program finds, and from there the neighbours of the best ones
 * known, one body more or less held, until `enough` plans are known or none is left to try.
 */
export function* bestRows(
  holds: HoldSolver,
  prices: boolean,
  enough: number,
): Generator<HoldRow, void> {
  const { train } = holds
  const loose = looseBodies(train)
  const known = new Map<string, { choice: HoldChoice; row: HoldRow }>()
  const expanded = new Set<string>()
  const key = (choice: HoldChoice) => choice.map((held) => (held ? 'h' : '-')).join('')
  const solve = (choice: HoldChoice): HoldRow | undefined => {
    if (known.has(key(choice))) return undefined
    const row = holds.row(choice, prices)
    known.set(key(choice), { choice, row })
    return row
  }
  const start = [
    choiceNow(train),
    choiceOf(train, new Set()),
    ...loose.map((body) => choiceOf(train, new Set([body]))),
  ]
  const best = mixedBest(holds)
  for (const choice of [...start, ...(best ? [best] : [])]) {
    const row = solve(choice)
    if (row) yield row
  }
  while (known.size < mostSolved) {
    const next = mostPromising([...known.values()])
    if (!next) return
    expanded.add(key(next.choice))
    for (const body of loose) {
      const flipped = next.choice.map((held, b) => (b === body ? !held : held))
      if (impossibleAlready(flipped)) continue
      const row = solve(flipped)
      if (row) yield row
    }
  }

  /** The best ranked plan whose neighbours were not tried, while it is one of those that count. */
  function mostPromising(all: readonly { choice: HoldChoice; row: HoldRow }[]) {
    const plans = all.filter(({ row }) => row.cost !== undefined)
    const place = new Map(plans.map(({ choice, row }) => [row, choice]))
    const ranked = rankHolds(
      train,
      plans.map(({ row }) => row),
    )
    for (const row of ranked.slice(0, enough)) {
      const choice = place.get(row)
      if (choice && !expanded.has(key(choice))) return { choice, row }
    }
    return undefined
  }

  /** More held than an impossible choice is impossible: it cannot be among the best. */
  function impossibleAlready(choice: HoldChoice): boolean {
    return [...known.values()].some(
      ({ choice: other, row }) =>
        row.status === 'impossible' && other.every((held, b) => !held || choice[b]),
    )
  }
}
