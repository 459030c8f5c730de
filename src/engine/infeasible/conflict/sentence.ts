import { fineText, shareText } from '../../../language/amounts'
import { slopeSign, toLength } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { isRoom, type Member, type RoomMember } from '../elastic/limit'
import type { Press } from '../elastic/dualWeights'
import { footLimitWords } from '../../../language/footLimitWords'
import { inSentence, listed } from '../../../language/names'
import { ownerInWords, towardOf } from './limitWords'

/** Members that lack the same thing on the same body, and how much all of them together lack. */
export interface Lack {
  readonly members: readonly Member[]
  readonly toward: string
  /** um, or mrad for a tilt; undefined where it could not be found. */
  readonly amount: number | undefined
  /** Whether giving this much is all that the train needs, or only resolves this conflict. */
  readonly enough: boolean
}

/** Members that give room, put together by body, kind and the way in which they press. */
export function lackGroups(
  members: readonly (readonly [index: number, member: Member])[],
  press: ReadonlyMap<number, Press>,
): { readonly indices: number[]; readonly members: RoomMember[] }[] {
  const groups = new Map<string, { indices: number[]; members: RoomMember[] }>()
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
 * @param floor least share of tolerance that is reached
 */
export function conflictSentence(
  train: Train,
  members: readonly Member[],
  floor: number | undefined,
  lacks: readonly Lack[],
  tolerances: readonly { readonly text: string; readonly share: number }[],
): string {
  const held = members.flatMap((member) =>
    member.kind === 'held' ? [inSentence(train.bodies[member.body]?.name ?? '')] : [],
  )
  const where = couplingsInWords(train, members)
  const best = floor === undefined ? 'more than was asked for' : reachedText(floor)
  const lead =
    held.length === 0
      ? `Whatever is held, ${where} cannot come under ${best}`
      : `Holding ${listed(held)} leaves ${where} at ${best} or more`
  const missing = [...lacks]
    .filter(({ amount }) => amount !== undefined)
    .map((lack) => lackInWords(train, lack))
  const least = [...tolerances].sort((a, b) => a.share - b.share)[0]
  const close =
    held.length > 0 ? 'with those held no move can close that' : 'no move can close that'
  const tail =
    missing.length > 0
      ? missing.join(', or ')
      : least
        ? `${least.text} would be needed, and ${close}`
        : close
  return `${lead}; ${shareText(train.plan.share)} was asked for: ${tail}.`
}

const reachedText = (share: number): string =>
  share < 1.995 ? `${shareText(share)} of tolerance` : `${share.toFixed(1)} times its tolerance`

/** "Low stage to gear in turndown", states of one coupling together. */
function couplingsInWords(train: Train, members: readonly Member[]): string {
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

function lackInWords(train: Train, { members, toward, amount, enough: all }: Lack): string {
  const [first] = members
  if (first === undefined || amount === undefined) return ''
  const owner = ownerInWords(train, members)
  const many = owner.startsWith('the feet') || owner.startsWith('the keyed') || members.length > 1
  const size =
    first.kind === 'tilt' ? `${amount.toFixed(2)} ${slopeSign(train.units)}` : enough(amount, train)
  const reason = first.kind === 'foot' ? ` (${footLimitWords[first.limit].reason})` : ''
  return `${owner} ${many ? 'lack' : 'lacks'} ${all ? '' : 'at least '}${size} ${toward}${reason}`
}

/** Small amounts keep a digit that says something. */
export const enough = (amount: number, train: Train): string => {
  const text = fineText(amount, train.units)
  return /[1-9]/.test(text) ? text : `under ${fineText(smallest[train.units.fine], train.units)}`
}
const smallest = { um: 1, mm: 10, mil: 2.54 } as const

/** An amount of tolerance with its unit and the check it belongs to. */
export function toleranceText(
  train: Train,
  { what, amount, unit }: { what: string; amount: number; unit: 'slope' | 'fine' | 'length' },
): string {
  const place = what.endsWith('plane') ? `at the ${what}` : `of ${what}`
  switch (unit) {
    case 'fine':
      return `${enough(amount, train)} more ${place}`
    case 'length':
      return `${toLength(amount, train.units).toPrecision(2)} ${train.units.length} more ${place}`
    case 'slope':
      return `${Number(amount.toPrecision(2))} ${slopeSign(train.units)} more ${place}`
  }
}
