import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import type { Motion } from '../../../mechanics/motion'
import { actionsOf, type Action } from './action'
import type { StepAnswer, StepsAnswer } from './answer'
import { beforeAll } from './cautions'
import { chosenOrder } from './chosenOrder'
import { movingSteps } from './movingSteps'
import { orderWithLifts } from './liftedOrder'
import { findOrder, walk } from './search'
import { softFootSteps, type SoftShim } from './softFoot'
import type { FootPack } from './stepFeet'

export interface OrderOptions {
  readonly packs?: readonly FootPack[]
  /** Ids of steps in the order somebody chose; steps left out follow in the order of the rules. */
  readonly order?: readonly string[]
  /** Shims that make feet plane again before anything else. */
  readonly soft?: readonly SoftShim[]
  /** Soft feet are to be seen to first, with shims or in another way: every step after that is provisional. */
  readonly provisional?: boolean
}

/**
 * The order of work: steps with stop points, each tried out where all machines then stand.
 * @param motions own motion of every body that the plan (rounded, where it is) comes to
 * @returns the steps, and every limit that some step passes on the way
 */
export function orderOfWork(
  train: Train,
  found: readonly AsFound[],
  motions: readonly Motion[],
  options: OrderOptions = {},
): StepsAnswer {
  const soft = softFootSteps(train, options.soft ?? [])
  const packs = options.packs ?? []
  const rules = findOrder(train, actionsOf(train, motions), (group) =>
    orderWithLifts(train, group, packs),
  )
  const { actions, unknown } = chosenOrder(rules, options.order ?? [])
  const chosen = actions.some((action, i) => action !== rules[i])
  const placed = walk(train, actions)
  const foundPasses = chosen
    ? walk(train, rules).some(({ path }) => path.passed.length > 0)
    : placed.some(({ path }) => path.passed.length > 0)
  const steps = [...soft, ...movingSteps(train, found, motions, placed, packs, foundPasses)].map(
    (step) => ({
      ...step,
      provisional: step.kind !== 'soft foot' && (soft.length > 0 || options.provisional === true),
    }),
  )
  const first = steps[0]
  if (first) first.cautions = [beforeAll, ...first.cautions]
  return {
    steps,
    breaks: steps.flatMap((step) => step.breaks),
    order: actions.map(({ id }) => id),
    chosen,
    found: rules.map(({ id }) => id),
    unknown,
    words: wordsOf(steps, rules, actions),
  }
}

function wordsOf(
  steps: readonly StepAnswer[],
  rules: readonly Action[],
  actions: readonly Action[],
): string {
  if (steps.length === 0)
    return 'Nothing needs to move. That is a record too: date it, sign it, keep it with the readings.'
  const breaks = steps.flatMap((step) => step.breaks)
  const portions = rules.some(({ to, from }) => to - from < 1)
  const chosen = actions.some((action, i) => action !== rules[i])
  const first = chosen
    ? 'In the order chosen.'
    : 'Axial first, then the skid, then outward from what stays; each machine up and down before sideways.'
  const cut = portions
    ? ' Some moves are cut into portions that take turns, since no order of whole moves keeps every limit.'
    : ''
  const kept =
    breaks.length === 0
      ? ' Every step was tried out where all machines then stand and keeps every limit entered.'
      : ` ${breaks.length === 1 ? 'One limit is' : `${breaks.length} limits are`} passed on the way: see the steps.`
  return first + cut + kept
}
