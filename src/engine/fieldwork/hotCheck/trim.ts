import type { RunningCoupling } from '../../../mechanics/hotCheck/running'
import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import type { TrimAnswer } from './answer'

type Shown = NonNullable<TrimAnswer['tolerance']>

/**
 * Whether a trim pays. Now: the readings show that a coupling runs beyond its tolerance. At the next stop: it probably
 * does, or they show that it uses more than is asked for. Not: they do not show that (guard band of 95 %: JCGM 106:2012,
 * 8.3; when a trim pays is common practice, no source).
 */
export function trimOf(train: Train, running: readonly RunningCoupling[]): TrimAnswer {
  const [first, ...rest] = running
  if (!first) return { when: 'open' }
  const worst = rest.reduce((a, b) => (b.result.share > a.result.share ? b : a), first)
  const band: [number, number] = [
    Math.max(...running.map(({ reached }) => reached.low)),
    Math.max(...running.map(({ reached }) => reached.high)),
  ]
  const { share } = worst.result
  const shown = (limit: number): Shown =>
    band[1] <= limit * (1 + tol.share) ? 'in' : band[0] > limit ? 'out' : 'not shown'
  const [tolerance, asked] = [shown(1), shown(train.plan.share)]
  return {
    when: tolerance === 'out' ? 'now' : share > 1 || asked === 'out' ? 'next stop' : 'not',
    coupling: train.couplings[worst.coupling]?.id ?? '',
    share,
    band,
    tolerance,
    asked,
  }
}
