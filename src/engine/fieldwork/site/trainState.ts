import type { TrainDocument } from '../../../document/schema'
import { workRecordOf } from '../../../document/work'
import { datedIn, monthsLater, type Dated, type Day } from '../../../mechanics/day'
import { sharesOf, type CouplingResult } from '../../../mechanics/misalignment/shares'
import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'
import { hotCheckAnswers } from '../hotCheck/hotChecks'

/** When something is due; "open" where it cannot be told, since a date is missing. */
export type Urgency = 'now' | 'next stop' | 'open'

/** Something due, and why. Shares are parts of the tolerance. */
export type Due =
  | { readonly is: 'over tolerance' | 'over the share'; readonly when: Urgency }
  | { readonly is: 'work begun'; readonly when: 'now'; readonly entries: number }
  | {
      readonly is: 'trim'
      readonly when: 'now' | 'next stop'
      readonly check: string
      readonly share: number
    }
  | { readonly is: 'interval'; readonly when: 'now'; readonly since: Day }
  | { readonly is: 'no date'; readonly when: 'open' }

/** One train among those of a site: when it was last aligned, how it stands, what is due. */
export interface TrainState {
  readonly name: string
  readonly site: string
  /** When it was last left so: the newest page of its record as left, or outage kept with readings as left. */
  readonly aligned: Dated | undefined
  /** The coupling and state that use most of their tolerance by the readings entered; work done since is not counted. */
  readonly tightest: CouplingResult
  /** Coupling and state of it, by their names. */
  readonly where: string
  readonly asked: number
  /** Months from one alignment to the next look at it, where the file says so, and the day that comes to. */
  readonly every: number | undefined
  readonly next: Day | undefined
  /** Most urgent first. */
  readonly due: readonly Due[]
}

const urgencies: readonly Urgency[] = ['now', 'next stop', 'open']

/** What is due soonest first, then what uses most of its tolerance. */
export const byUrgency = (a: TrainState, b: TrainState): number =>
  rank(a) - rank(b) || b.tightest.share - a.tightest.share

/** Trains by the site they stand at, each site with the most urgent first; those without one come last. */
export function bySite<One extends TrainState>(
  states: readonly One[],
): [site: string, here: One[]][] {
  const sites = [...new Set(states.map(({ site }) => site))].toSorted((a, b) =>
    a === '' || b === '' ? Number(a === '') - Number(b === '') : a.localeCompare(b, 'en'),
  )
  return sites.map((site) => [
    site,
    states.filter((state) => state.site === site).toSorted(byUrgency),
  ])
}

const rank = ({ due: [first] }: TrainState): number =>
  first ? urgencies.indexOf(first.when) : urgencies.length

/** How a train stands on a day. Nothing is planned: only what stands in its file is told. */
export function trainState(
  read: { readonly document: TrainDocument; readonly train: Train },
  today: Day,
): TrainState {
  const { document, train } = read
  const aligned = alignedOn(document, train)
  const tightest = sharesOf(train, foundLines(train)).reduce((a, b) => (b.share > a.share ? b : a))
  const every = train.checkEvery
  const next =
    aligned !== undefined && every !== undefined ? monthsLater(aligned.day, every) : undefined
  const seen: Due[] = [
    ...standingDue(tightest.share, train.plan.share),
    ...workDue(document),
    ...trimDue(read, aligned?.day),
    ...(next !== undefined && next <= today
      ? [{ is: 'interval', when: 'now', since: next } as const]
      : []),
  ]
  const due: Due[] =
    seen.length === 0 && aligned === undefined ? [{ is: 'no date', when: 'open' }] : seen
  return {
    ...{ name: train.name, site: document.site?.trim() ?? '', aligned, tightest },
    where: [
      train.couplings[tightest.coupling]?.name,
      ...(train.states.length > 1
        ? [train.states.find(({ id }) => id === tightest.state)?.name]
        : []),
    ].join(', '),
    ...{ asked: train.plan.share, every, next },
    due: due.toSorted((a, b) => urgencies.indexOf(a.when) - urgencies.indexOf(b.when)),
  }
}

/** The newest date at which somebody wrote down how the train was left. */
function alignedOn({ record }: TrainDocument, { outages }: Train): Dated | undefined {
  const pages = workRecordOf(record)?.pages ?? []
  const dates = [
    ...pages
      .filter(({ kind }) => kind === 'as left' || kind === 'nothing moved')
      .map(({ when }) => when),
    ...outages
      .filter(({ couplings }) => couplings.some(({ left }) => left))
      .map(({ when }) => when),
  ].flatMap((when) => datedIn(when) ?? [])
  return dates.toSorted((a, b) => (a.day < b.day ? -1 : 1)).at(-1)
}

function standingDue(share: number, asked: number): Due[] {
  if (share > 1 + tol.share) return [{ is: 'over tolerance', when: 'now' }]
  return share > asked * (1 + tol.share) ? [{ is: 'over the share', when: 'next stop' }] : []
}

/** Work that is begun leaves the train as nobody has read it. */
function workDue({ record }: TrainDocument): Due[] {
  const { work = [], again = [] } = workRecordOf(record) ?? {}
  const entries = work.filter(({ done }) => done).length + again.length
  return entries === 0 ? [] : [{ is: 'work begun', when: 'now', entries }]
}

/** What the newest hot check tells, unless the train was aligned after it. */
function trimDue(
  read: { readonly document: TrainDocument; readonly train: Train },
  aligned: Day | undefined,
): Due[] {
  const checks = hotCheckAnswers(read)
  const newest = checks.reduce<(typeof checks)[number] | undefined>(
    (a, b) => (a && (datedIn(a.when)?.day ?? '') > (datedIn(b.when)?.day ?? '') ? a : b),
    undefined,
  )
  if (!newest) return []
  const { when, share } = newest.trim
  const day = datedIn(newest.when)?.day
  if (aligned !== undefined && day !== undefined && day < aligned) return []
  return (when === 'now' || when === 'next stop') && share !== undefined
    ? [{ is: 'trim', when, check: newest.name, share }]
    : []
}
