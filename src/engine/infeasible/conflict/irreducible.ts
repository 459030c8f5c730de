import type { ElasticLimit } from '../elastic/limit'
import { type FeasibilityCache, shrink } from './shrink'

/** An irreducible set, with the smallest worst share of its couplings while all of it is kept. */
export interface Irreducible {
  readonly members: ReadonlySet<number>
  readonly atLeast: number
}

type Block = (member: ElasticLimit) => boolean

const foot: Block = ({ kind }) => kind === 'foot'
const hole: Block = (member) => member.kind === 'foot' && member.limit === 'hole'
const pack: Block = (member) => member.kind === 'foot' && member.limit !== 'hole'
const restraint: Block = ({ kind }) => kind === 'restraint' || kind === 'tilt'
const held: Block = ({ kind }) => kind === 'held'

/**
 * Orders in which kinds of members are left out, each leading to sets that do without the first: a
 * conflict without nozzles, without bolts, without shims, without what is held.
 */
const orders: readonly (readonly Block[])[] = [
  [],
  [restraint],
  [restraint, pack],
  [restraint, hole],
  [foot],
  [held],
]

/**
 * Irreducible sets among the members, the one with the fewest first; of equal ones bolts and shims
 * before nozzles, then the one that misses most. Left out in several orders, and coupling by coupling.
 */
export function irreducibles(cache: FeasibilityCache, start: ReadonlySet<number>): Irreducible[] {
  const { members, train } = cache.model
  const found = new Map<string, Irreducible>()
  const look = (blocks: readonly Block[]): void => {
    const tests = blocks.map((block) => (index: number) => {
      const member = members[index]
      return member !== undefined && block(member)
    })
    const set = shrink(cache, start, tests)
    const reach = set && cache.reach(set)
    if (!set || reach?.kind !== 'missed') return
    found.set([...set].sort((a, b) => a - b).join(' '), { members: set, atLeast: reach.atLeast })
  }
  for (const order of orders) look(order)
  train.couplings.forEach((_, c) => {
    look([(member) => member.kind === 'coupling' && member.coupling !== c])
    look([restraint, (member) => member.kind === 'coupling' && member.coupling !== c])
  })
  train.states.forEach((_, s) => {
    look([(member) => member.kind === 'coupling' && member.state !== s])
  })
  const restraints = ({ members: set }: Irreducible) =>
    [...set].filter((index) => members[index]?.kind === 'restraint').length
  return [...found.values()].sort(
    (a, b) =>
      a.members.size - b.members.size ||
      restraints(a) - restraints(b) ||
      b.atLeast - a.atLeast ||
      Math.min(...a.members) - Math.min(...b.members),
  )
}
