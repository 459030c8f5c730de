import type { Train } from '../../../mechanics/train'
import { capital } from '../../../language/names'
import type { Action } from './action'
import type { StepAnswer } from './answer'
import { looksAtAll } from './liftedOrder'
import { groupsOf } from './search'

/** The same moves in three orders. */
interface Orders {
  /** As the craft's rules have them. */
  readonly craft: readonly Action[]
  /** As they were found to pass the fewest limits. */
  readonly rules: readonly Action[]
  /** As they are told: as found, or as somebody chose. */
  readonly actions: readonly Action[]
}

/** What the order rests on, said of this train's own moves and of the order that was really taken. */
export function orderWords(
  train: Train,
  steps: readonly StepAnswer[],
  { craft, rules, actions }: Orders,
): string {
  if (steps.length === 0)
    return 'Nothing is moved. That is a record too: date it, sign it, keep it with the readings.'
  const breaks = steps.flatMap((step) => step.breaks)
  const chosen = differ(actions, rules)
  const portions = actions.some(({ to, from }) => to - from < 1)
  const first = chosen
    ? 'In the order chosen.'
    : portions || !differ(craft, rules)
      ? craftWords(train, craft)
      : 'Not in the usual order, in which more limits would be passed on the way.'
  const cut = portions
    ? ' Some moves are cut into portions that take turns, since no order of whole moves was found that keeps every limit.'
    : ''
  const few =
    breaks.length > 0 && !chosen && !groupsOf(train, craft).every(looksAtAll)
      ? ' Not every order of so many moves was looked at.'
      : ''
  const kept =
    breaks.length === 0
      ? ' Every step was tried out where all machines then stand and keeps every limit entered.'
      : ` ${breaks.length === 1 ? 'One limit is' : `${breaks.length} limits are`} passed on the way: see the steps.`
  return first + cut + kept + few
}

const differ = (some: readonly Action[], others: readonly Action[]): boolean =>
  some.map(({ id }) => id).join('\n') !== others.map(({ id }) => id).join('\n')

/** The craft's order (common practice, no source), as far as this train has moves for it to put in order. */
function craftWords(train: Train, craft: readonly Action[]): string {
  const isSkid = ({ body }: Action) => train.bodies[body]?.kind === 'skid'
  const machines = new Set(craft.filter((one) => !isSkid(one)).map(({ body }) => body))
  const turns = [
    ...(craft.some(({ kind }) => kind === 'axial') ? ['moves along the train'] : []),
    ...(craft.some(isSkid) ? ['the skid'] : []),
    ...(machines.size > 1 ? ['outward from what stays'] : machines.size > 0 ? ['the machine'] : []),
  ]
  const order =
    turns.length > 1 ? `first ${turns.join(', then ')}` : machines.size > 1 ? turns[0] : undefined
  const sideways = craft.some(
    ({ body, kind }) =>
      kind === 'vertical' && craft.some((one) => one.body === body && one.kind === 'lateral'),
  )
  const parts = [
    ...(order === undefined ? [] : [order]),
    ...(sideways ? ['up and down before sideways'] : []),
  ]
  return parts.length === 0 ? 'One move.' : `${capital(parts.join('; '))}.`
}
