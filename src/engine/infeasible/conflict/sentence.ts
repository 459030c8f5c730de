import { shareText } from '../../../language/amounts'
import {
  atLeast,
  fineAmount,
  lengthAmount,
  slopeAmount,
  type RoundTo,
} from '../../../language/roundedAmounts'
import type { Train } from '../../../mechanics/train'
import { isRoom, type ElasticLimit, type RoomLimit } from '../elastic/limit'
import type { DualWeight } from '../elastic/dualWeights'
import { footLimitWords } from '../../../language/footLimitWords'
import { keptClause } from '../../../language/keptWords'
import { inSentence, listed } from '../../../language/names'
import { keptAloneInWords, type KeptAlone } from '../floor/keptAlone'
import type { More } from './more'
import { ownerInWords, towardOf } from './limitWords'
import { limitsOf } from './more'

/** Members that lack the same thing on the same body, and how much all of them together lack. */
export interface GroupedLack {
  readonly members: readonly ElasticLimit[]
  readonly toward: string
  /** um, or mrad for a tilt; undefined where it could not be found. */
  readonly amount: number | undefined
  /** Whether giving this much is all that the train needs; never, where no amount of it alone is. */
  readonly enough: 'yes' | 'never' | 'unknown'
}

/** Members that give room, put together by body, kind and the way in which they press. */
export function lackGroups(
  members: readonly (readonly [index: number, member: ElasticLimit])[],
  press: ReadonlyMap<number, DualWeight>,
): { readonly indices: number[]; readonly members: RoomLimit[] }[] {
  const groups = new Map<string, { indices: number[]; members: RoomLimit[] }>()
  for (const [index, member] of members) {
    if (!isRoom(member)) continue
    const what = member.kind === 'foot' ? member.limit : member.kind === 'tilt' ? '' : member.way
    const toward = towardOf(member, press.get(index)) ?? ''
    const key = [member.kind, member.body, what, toward].join(' ')
    const group = groups.get(key) ?? { indices: [], members: [] }
    group.indices.push(index)
    group.members.push(member)
    groups.set(key, group)
  }
  return [...groups.values()]
}

/**
 * A conflict in one sentence of the craft: what is held, which coupling is left where, and what is
 * missing at least. Where several limits could give, any one of them would do: "or".
 * @param kept the check that what is kept free leaves nothing of, where that is the whole conflict
 */
export function conflictSentence(
  train: Train,
  members: readonly ElasticLimit[],
  lacks: readonly GroupedLack[],
  tolerances: readonly { readonly text: string; readonly part: number }[],
  kept?: KeptAlone,
): string {
  const held = members.flatMap((member) =>
    member.kind === 'held' ? [inSentence(train.bodies[member.body]?.name ?? '')] : [],
  )
  const where = couplingsInWords(train, members)
  const fixed = held.length === 0 ? 'Whatever is fixed' : `With ${listed(held)} fixed`
  const missing = [...lacks]
    .filter(({ amount }) => amount !== undefined)
    .map((lack) => lackInWords(train, lack))
  const least = [...tolerances].sort((a, b) => a.part - b.part)[0]
  const close =
    held.length > 0 ? 'with those fixed no move can close that' : 'no move can close that'
  const tail = kept
    ? keptAloneInWords(train, kept)
    : missing.length > 0
      ? missing.join(', or ')
      : least
        ? `${atLeast(least.text)} would be needed, and ${close}`
        : close
  return `${fixed}, ${where} cannot come within the ${shareText(train.plan.share)} of tolerance asked for${kept ? '' : keptClause(train)}: ${tail}.`
}

/** "Low stage to gear in turndown", states of one coupling together. */
function couplingsInWords(train: Train, members: readonly ElasticLimit[]): string {
  const states = new Map<number, string[]>()
  for (const member of members) {
    if (member.kind !== 'coupling') continue
    const list = states.get(member.coupling) ?? []
    list.push(train.states[member.state]?.name ?? '')
    states.set(member.coupling, list)
  }
  return listed(
    [...states].map(
      ([coupling, names]) => `${train.couplings[coupling]?.name ?? ''} in ${listed(names)}`,
    ),
  )
}

function lackInWords(train: Train, { members, toward, amount, enough }: GroupedLack): string {
  const [first] = members
  if (first === undefined || amount === undefined) return ''
  const owner = ownerInWords(train, members)
  const many = owner.startsWith('the feet') || owner.startsWith('the keyed') || members.length > 1
  const whole = enough === 'yes'
  const round = whole ? 'up' : 'down'
  const size =
    first.kind === 'tilt' ? slopeAmount(amount, round, train) : fineAmount(amount, round, train)
  const reason = first.kind === 'foot' ? ` (${footLimitWords[first.limit].reason})` : ''
  const never = enough === 'never' ? ', and more there alone would not be enough' : ''
  return `${owner} ${many ? 'lack' : 'lacks'} ${whole ? size : atLeast(size)} ${toward}${reason}${never}`
}

/** How much more of each check of a tolerance: "0.35 mrad more at each plane and 0.2 mm more of gap". */
export function tolerancesText(
  train: Train,
  coupling: number,
  { amount, checks = [] }: More,
  round: RoundTo,
): string {
  const limits = limitsOf(train.couplings[coupling])
  return listed(
    checks.map((check) => {
      const more = (limits.get(check) ?? 0) * amount
      switch (check) {
        case 'planes':
          return `${slopeAmount(more, round, train)} more at each plane`
        case 'angle':
          return `${slopeAmount(more, round, train)} more of angle`
        case 'offset':
          return `${fineAmount(more, round, train)} more of offset`
        case 'gap':
          return `${lengthAmount(more, round, train)} more of gap`
        case 'stretch':
          return `${lengthAmount(more, round, train)} more of stretch either way`
        case 'float':
          return `${lengthAmount(more, round, train)} more of float of the rotor either way`
      }
    }),
  )
}
