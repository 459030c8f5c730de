import type { ReadyItem } from '../../engine/fieldwork/ready/answer'
import type { Train } from '../../mechanics/train'

/** Where in the document a check is entered: the first foot without its gap, flanges or readings of a coupling, a hot check. */
export function readyPlace(
  { bodies, couplings, hotChecks }: Pick<Train, 'bodies' | 'couplings' | 'hotChecks'>,
  { what, where }: Pick<ReadyItem, 'what' | 'where'>,
): string {
  if (what === 'hot check')
    return `${hotChecks.find(({ id }) => id === where)?.place ?? 'hotChecks'}.name`
  const body = bodies.find(({ id }) => id === where)
  const { place = '' } = body ?? couplings.find(({ id }) => id === where) ?? {}
  const open = body?.feet.findIndex(({ soft, gaps }) => soft === undefined && !gaps) ?? 0
  if (what === 'soft foot') return `${place}.feet[${Math.max(0, open)}].soft`
  return what === 'pipe strain' ? `${place}.strain` : `${place}.found`
}
