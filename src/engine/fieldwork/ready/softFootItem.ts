import { fineText } from '../../../language/amounts'
import type { Body, Train } from '../../../mechanics/train'
import type { ReadyItem } from './answer'
import type { SoftFoot } from './softFoot'

type Found = Pick<ReadyItem, 'words'> & { readonly state: 'in' | 'missing' | 'bad' }

/** What soft foot says of a body's readiness. */
export function softFootItem(train: Train, body: Body, soft: SoftFoot): Found {
  const text = (value: number) => fineText(value, train.units)
  const allowed = `${text(soft.limit.value)} is allowed: ${soft.limit.source}`
  const worst = soft.feet.reduce<SoftFoot['feet'][number] | undefined>(
    (a, b) => (a === undefined || b.rise > a.rise ? b : a),
    undefined,
  )
  switch (soft.verdict) {
    case 'none':
      return { state: 'missing', words: `soft foot of ${body.name} is not measured` }
    case 'part':
      return {
        state: 'missing',
        words: `soft foot of ${body.name} is not measured at foot ${soft.unread.join(', ')}`,
      }
    case 'sound':
      return {
        state: 'in',
        words: `${body.name} stands evenly: no foot rises more than ${text(worst?.rise ?? 0)} (${allowed})`,
      }
    case 'soft':
      return {
        state: 'bad',
        words: `${body.name} is soft: foot ${worst?.foot ?? ''} rises ${text(worst?.rise ?? 0)} (${allowed})`,
      }
  }
}
