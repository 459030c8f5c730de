import { tidy } from '../../../language/tidy'
import { inSentence, listed } from '../../../language/names'
import { drawPins } from '../../../language/pinWords'
import { newtonMetresPer, torqueSign } from '../../../mechanics/units'
import type { Body, Foot, Train } from '../../../mechanics/train'
import { inEndOrder, type FirstEnd } from './ends'

/** Rounds in which bolts are tightened, in percent of their torque (common practice, no source). */
const rounds = [30, 70, 100]

/**
 * What is loosened and what is open before a body is moved, a sentence each.
 * @param again it has been moved before, and was not tightened since
 */
export function beforeMove(
  train: Train,
  body: Body,
  touched: readonly number[],
  first: FirstEnd,
  again = false,
): string[] {
  const feet = inEndOrder(
    body,
    body.feet.map(({ id }) => ({ foot: id })),
    first,
  )
  const open = train.couplings.filter(
    ({ left, right }) => touched.includes(left) !== touched.includes(right),
  )
  if (again)
    return [
      ...(open.length === 0
        ? []
        : [
            `${open.length === 1 ? 'The coupling stays' : 'The couplings stay'} open: ${listed(open.map(({ name }) => name))}.`,
          ]),
      ...(feet.length === 0
        ? []
        : [
            `Loosen the bolts of ${inSentence(body.name)} again, crosswise as before, its dials watched; every other bolt stays tight.`,
          ]),
    ]
  return [
    ...(open.length === 0
      ? []
      : [
          `Open, before any bolt is loosened: the ${open.length === 1 ? 'coupling' : 'couplings'} ${listed(open.map(({ name }) => name))}, its bolts out, nothing that could draw the shafts along.`.replace(
            'its bolts',
            open.length === 1 ? 'its bolts' : 'their bolts',
          ),
        ]),
    ...drawPins(body),
    ...(feet.length === 0
      ? []
      : [
          `Loosen the bolts of ${inSentence(body.name)} a little at a time and crosswise, in the order of feet ${listed(feet.map(({ foot }) => foot))}, its dials watched; every bolt of the other machines${body.kind === 'skid' ? ', those on it too,' : ''} stays tight.`,
        ]),
  ]
}

/**
 * How the bolts of a body are tightened: in rounds to the torque of each foot, feet of one torque together; a blank to
 * fill where none was entered.
 */
export function tightenWords(train: Train, body: Body): string {
  const groups = new Map<string, { ids: string[]; foot: Foot }>()
  for (const foot of body.feet) {
    const key = foot.torque ? `${foot.torque.value} ${foot.torque.pattern ?? ''}` : ''
    const group = groups.get(key) ?? { ids: [], foot }
    group.ids.push(foot.id)
    groups.set(key, group)
  }
  const sign = torqueSign[train.units.length]
  const parts = [...groups.values()].map(({ ids, foot: { torque } }) => {
    const feet =
      groups.size === 1 ? 'all its bolts' : `${ids.length === 1 ? 'foot' : 'feet'} ${listed(ids)}`
    if (!torque)
      return `${feet} to ______ ${sign}, in rounds of ${listed(rounds.map(String))} % of it (not entered: from the drawing or the site's table)`
    const whole = torque.value / newtonMetresPer[train.units.length]
    const steps = rounds.map((part) => String(tidy(Math.round(whole * part) / 100)))
    return `${feet} to ${steps.slice(0, -1).join(', then ')}, then ${steps.at(-1) ?? ''} ${sign}${torque.pattern === undefined ? '' : `, ${torque.pattern}`}`
  })
  const told = parts.length === 0 ? '' : `: ${parts.join('; ')}`
  return `Tighten ${inSentence(body.name)}, jackscrews backed off${told}`
}
