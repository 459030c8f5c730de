import { couplingAt, trainAt, type OutageTime } from '../../../mechanics/outageTimes'
import type { Misalignment } from '../../../mechanics/readings/equation'
import type { Train } from '../../../mechanics/train'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'
import { overTimes, sinceOf, type Since } from './since'

/** What became of a train from one closing to the next opening. */
interface HistoryTime {
  readonly name: string
  readonly since: Since
}

export interface History {
  /** Undefined where no two times can be compared. */
  readonly together: Since | undefined
  readonly times: readonly HistoryTime[]
  /** Times that cannot be compared, since a coupling was not read. */
  readonly open: readonly string[]
}

/** What walked between the outages that a file keeps: each as left, against the next as found, the last against the file as it is. */
export function historyOf(train: Train): History {
  const { outages } = train
  const times: HistoryTime[] = []
  const open: string[] = []
  outages.forEach((outage, i) => {
    const next = outages[i + 1]
    const name = `${outage.name} to ${next?.name ?? 'now'}`
    const then = trainAt(train, outage, 'left')
    const now = next ? trainAt(train, next, 'found') : { ...train, surveys: [] }
    if (then && now) times.push({ name, since: sinceOf(then, now) })
    else open.push(name)
  })
  const changes = times.map(({ since }) => since.changes)
  return { times, open, together: changes.length === 0 ? undefined : overTimes(train, changes) }
}

/** Where a coupling stood at one time: right machine against left, at the mid-span of today, cold. */
interface TrendPoint {
  readonly time: string
  readonly at: OutageTime | 'now'
  readonly line: Misalignment
  /** Standard uncertainties up and sideways (um). */
  readonly u: { readonly y: number; readonly z: number }
}

export interface Trend {
  /** Index in the couplings. */
  readonly coupling: number
  readonly points: readonly TrendPoint[]
}

/** Every coupling over the outages and now; empty of a train that keeps none. */
export function trendsOf(train: Train): Trend[] {
  const { outages } = train
  if (outages.length === 0) return []
  const still = { ...train, surveys: [] }
  return train.couplings.map((coupling, c): Trend => {
    const pointOf = (time: string, at: TrendPoint['at'], of: typeof coupling): TrendPoint => {
      const one = { ...still, couplings: [of] }
      const [was] = foundLines(one)
      if (!was) throw new RangeError(`coupling ${coupling.id} was not reduced`)
      const arm = coupling.mid - of.mid
      const { y, sy, z, sz } = was.line
      const v = (k: number) => was.covariance[k]?.[k] ?? 0
      return {
        time,
        at,
        line: { y: y + arm * sy, sy, z: z + arm * sz, sz },
        u: { y: Math.sqrt(Math.max(0, v(0))), z: Math.sqrt(Math.max(0, v(2))) },
      }
    }
    return {
      coupling: c,
      points: [
        ...outages.flatMap((outage) =>
          (['found', 'left'] as const).flatMap((at) => {
            const of = couplingAt(coupling, outage, at)
            return of ? [pointOf(outage.name, at, of)] : []
          }),
        ),
        pointOf('now', 'now', coupling),
      ],
    }
  })
}
