import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import type { Motion } from '../../../mechanics/motion'
import { actionsOf } from './action'
import type { StepsAnswer } from './answer'
import { beforeAll } from './cautions'
import { chosenOrder } from './chosenOrder'
import { orderWords } from './orderWords'
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
  const craft = actionsOf(train, motions)
  const rules = findOrder(train, craft, (group) => orderWithLifts(train, group, packs))
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
    words: orderWords(train, steps, { craft, rules, actions }),
  }
}
