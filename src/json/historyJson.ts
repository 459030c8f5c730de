import type { History, Trend } from '../engine/fieldwork/since/history'
import type { Train } from '../mechanics/train'
import { sinceJson } from './sinceJson'
import { written } from './written'

/** What walked between the outages that a file keeps, and every coupling over the years, in the document's units. */
export function historyJson(
  train: Train,
  { times, together, open }: History,
  trends: readonly Trend[],
) {
  return {
    times: times.map(({ name, since }) => ({ name, ...sinceJson(train, since) })),
    ...(together && { together: sinceJson(train, together) }),
    open,
    trend: trends.map(({ coupling, points }) => ({
      coupling: train.couplings[coupling]?.id ?? '',
      points: written(
        points.map(({ time, at, line, u }) => ({
          time,
          at,
          offset: { y: line.y, z: line.z },
          slope: { y: line.sy, z: line.sz },
          u,
        })),
        {
          offset: { y: 'fine', z: 'fine' },
          slope: { y: 'slope', z: 'slope' },
          u: { y: 'fine', z: 'fine' },
        },
        train.units,
      ),
    })),
  }
}
