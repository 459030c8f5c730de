import type { ReadyItem } from '../../engine/fieldwork/ready/answer'
import { checkedOf } from '../../engine/fieldwork/ready/checked'
import type { Train } from '../../mechanics/train'

/** Where in the document a check is entered: the first foot without its gap, flanges or readings of a coupling, a hot check. */
export function readyPlace(
  train: Pick<Train, 'bodies' | 'couplings' | 'hotChecks'>,
  item: Pick<ReadyItem, 'what' | 'where'>,
): string {
  const place = checkedOf(train, item)?.place ?? ''
  switch (item.what) {
    case 'soft foot': {
      const body = train.bodies.find(({ id }) => id === item.where)
      const open = body?.feet.findIndex(({ soft, gaps }) => soft === undefined && !gaps) ?? 0
      return `${place}.feet[${Math.max(0, open)}].soft`
    }
    case 'pipe strain':
      return `${place}.strain`
    case 'signs':
    case 'closure':
      return `${place}.found`
    case 'hot check':
      return `${place}.name`
  }
}
