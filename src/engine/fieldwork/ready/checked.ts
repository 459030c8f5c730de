import type { Train } from '../../../mechanics/train'
import type { ReadyItem } from './answer'

/** What a check is of, with its place in the document: a body, a hot check, or a coupling. */
interface Checked {
  readonly id: string
  readonly name: string
  readonly place: string
}

/** What a check before moving is of; undefined where the train has it no more. */
export function checkedOf(
  { bodies, couplings, hotChecks }: Pick<Train, 'bodies' | 'couplings' | 'hotChecks'>,
  { what, where }: Pick<ReadyItem, 'what' | 'where'>,
): Checked | undefined {
  const isIt = ({ id }: Checked) => id === where
  switch (what) {
    case 'soft foot':
      return bodies.find(isIt)
    case 'hot check':
      return hotChecks.find(isIt)
    case 'pipe strain':
    case 'signs':
    case 'closure':
      return couplings.find(isIt)
  }
}
