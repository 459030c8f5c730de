import type { ReadyItem } from '../../engine/fieldwork/ready/answer'
import type { Train } from '../../mechanics/train'

/** Where in the document a check is entered: gaps of the first foot, flanges or readings of a coupling. */
export function readyPlace(
  { bodies, couplings }: Pick<Train, 'bodies' | 'couplings'>,
  { what, where }: Pick<ReadyItem, 'what' | 'where'>,
): string {
  const { place = '' } = [...bodies, ...couplings].find(({ id }) => id === where) ?? {}
  if (what === 'soft foot') return `${place}.feet[0].soft`
  return what === 'pipe strain' ? `${place}.strain` : `${place}.found`
}
