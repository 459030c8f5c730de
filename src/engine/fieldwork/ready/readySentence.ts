import type { Train } from '../../../mechanics/train'
import { capital, counted, inSentence, listed } from '../../../language/names'
import type { ReadyItem, ReadyWhat } from './answer'
import { checkedOf } from './checked'

/** More places than this are counted, not named. */
const mostNamed = 3

const kinds: readonly ReadyWhat[] = ['hot check', 'soft foot', 'pipe strain', 'signs', 'closure']

/** What is asked before moving, as people read it. */
export const readyName = (what: ReadyWhat): string => (what === 'closure' ? 'dial sum check' : what)

const lacking: Record<ReadyWhat, { readonly bad: string; readonly missing: string }> = {
  'soft foot': { bad: 'soft foot to be taken away', missing: 'soft foot not measured' },
  'pipe strain': { bad: 'pipe strain past its limit', missing: 'pipe strain not measured' },
  signs: { bad: 'signs of the readings in doubt', missing: 'signs of the readings not confirmed' },
  closure: { bad: 'dial sum checks that fail', missing: 'dial sum check not made' },
  'hot check': {
    bad: 'a hot check shows what the growth in use does not expect',
    missing: 'hot check not read',
  },
}

/** "Not ready: ..." with everything that is in the way, or "Ready", with what was accepted without and by whom. */
export function readySentence(train: Train, items: readonly ReadyItem[]): string {
  const open = kinds.flatMap((what) =>
    (['bad', 'missing'] as const).flatMap((state) => {
      const some = items.filter((item) => item.what === what && item.state === state)
      if (some.length === 0) return []
      const all = items.filter((item) => item.what === what).length
      return [`${lacking[what][state]} (${places(train, some, all)})`]
    }),
  )
  const waived = items
    .filter(({ state }) => state === 'waived')
    .map(({ what, where, by = '', why = '' }) =>
      capital(
        `${readyName(what)} of ${placeName(train, { what, where })} is accepted without, by ${by}: ${why}`,
      ),
    )
  const without = waived.length === 0 ? '' : ` ${waived.join('. ')}.`
  if (open.length > 0) return `Not ready: ${open.join('; ')}.${without}`
  return `Ready: soft foot, pipe strain, signs and dial sum checks are in${waived.length > 0 ? ' or accepted without' : ''}.${without}`
}

/** The same as a count: "Not ready: 7 of 8 checks are open", "Ready: all 8 checks are in, 1 of them accepted without". */
export function readyCount(items: readonly Pick<ReadyItem, 'state'>[]): string {
  const of = (...states: ReadyItem['state'][]) =>
    items.filter(({ state }) => states.includes(state)).length
  const open = of('bad', 'missing')
  const checks = counted(items.length, 'check', 'checks')
  if (open > 0) return `Not ready: ${open} of ${checks} ${open === 1 ? 'is' : 'are'} open`
  const without = of('waived')
  const waived = without === 0 ? '' : `, ${without} of them accepted without`
  return items.length === 1
    ? `Ready: the check is in${waived}`
    : `Ready: all ${checks} are in${waived}`
}

function places(train: Train, items: readonly ReadyItem[], all: number): string {
  if (items.length > mostNamed)
    return items.length === all ? `all ${all}` : `${items.length} of ${all}`
  return listed(items.map((item) => placeName(train, item)))
}

function placeName(train: Train, item: Pick<ReadyItem, 'what' | 'where'>): string {
  const name = checkedOf(train, item)?.name ?? item.where
  if (item.what === 'hot check') return `“${name}”`
  return item.what === 'soft foot' ? inSentence(name) : name
}
