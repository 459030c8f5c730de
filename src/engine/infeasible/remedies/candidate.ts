import type { TrainDocument } from '../../../document/schema'
import type { Train } from '../../../mechanics/train'
import type { Relaxation } from '../elastic/relaxation'
import type { ElasticModel } from '../elastic/elasticModel'
import type { RemedyAmount, RemedyKind } from './answer'
import { catalogue } from './catalogue'
import type { FieldChange } from './change'

/** A train with what the makers of candidates look at. */
export interface RemedyContext {
  readonly document: TrainDocument
  readonly train: Train
  readonly model: ElasticModel
  /** Sets of members that cannot be had together: a remedy must loosen something in each. */
  readonly conflicts: readonly ReadonlySet<number>[]
}

/** A limit that a candidate may let give, by whole steps. */
export interface Sized {
  readonly give: Relaxation
  /** Members that it loosens. */
  readonly members: readonly number[]
  /** In units of the give: program units of room, or a share. */
  readonly step: number
  /** Needed before the first of it helps, where a limit is passed already; part of the amount. */
  readonly before?: number
  readonly amount: (value: number) => RemedyAmount
  readonly changes: (value: number) => readonly FieldChange[]
}

/** A change to the train that could help, before it is known how much of it is needed. */
export interface Candidate {
  readonly kinds: readonly RemedyKind[]
  /** 1 is minutes, 10 is weeks. */
  readonly effort: number
  /** Crew hours. Common practice, no source. */
  readonly hours: readonly [low: number, high: number]
  readonly risk: string
  /** What it is about: the machine, the state, the coupling. */
  readonly where: string
  /** Members of the model that it gives up altogether. */
  readonly drops: readonly number[]
  /** Bodies that it holds in their place. */
  readonly stays: readonly number[]
  readonly sized: readonly Sized[]
  /** What it does in any case. */
  readonly fixed: readonly Relaxation[]
  readonly changes: readonly FieldChange[]
  readonly agree: string
  /** What to do, in words, from the amounts that it needs and the train as its changed file has it. */
  readonly lead: (amounts: readonly RemedyAmount[], then: Train) => string
  /** The candidates that a pair is made of. */
  readonly of?: readonly Candidate[]
  /** Looks at the shims that the plan after it adds (um, by body), and answers better amounts. */
  readonly refine?: (values: readonly number[], shims: readonly (readonly number[])[]) => number[]
}

/** A candidate of one kind; hours count for each machine that is worked on. */
export function candidateOf(
  kind: RemedyKind,
  parts: Pick<Candidate, 'where' | 'agree' | 'lead'> &
    Partial<Omit<Candidate, 'kinds' | 'effort' | 'hours' | 'risk'>>,
  machines = 1,
): Candidate {
  const { effort, hours, risk } = catalogue[kind]
  return {
    kinds: [kind],
    effort,
    hours: [hours[0] * machines, hours[1] * machines],
    risk,
    drops: [],
    stays: [],
    sized: [],
    fixed: [],
    changes: [],
    ...parts,
  }
}

/** Whether a candidate loosens anything in a set of members. */
export const touches = ({ drops, sized }: Candidate, set: ReadonlySet<number>): boolean =>
  drops.some((member) => set.has(member)) ||
  sized.some(({ members }) => members.some((member) => set.has(member)))

/** Whether a part of a candidate turned out to do nothing: then it is another one under two names. */
export function idle(candidate: Candidate, values: readonly number[]): boolean {
  let first = 0
  return (candidate.of ?? [candidate]).some(({ sized, fixed }) => {
    const mine = values.slice(first, first + sized.length)
    first += sized.length
    return sized.length > 0 && fixed.length === 0 && mine.every((value) => value === 0)
  })
}

/** What a candidate needs of each thing that it sizes; nothing of what needs nothing. */
export const amountsNeeded = ({ sized }: Candidate, values: readonly number[]): RemedyAmount[] =>
  sized.flatMap((one, g) => {
    const value = values[g] ?? 0
    return value > 0 ? [one.amount(value)] : []
  })

/** What to do, in words: of a pair each part with its own amounts, though both may be at one foot. */
export function leadOf(candidate: Candidate, values: readonly number[], then: Train): string {
  let from = 0
  return (candidate.of ?? [candidate])
    .map((one) => {
      const own = values.slice(from, from + one.sized.length)
      from += one.sized.length
      return one.lead(amountsNeeded(one, own), then)
    })
    .join(' ')
}

/** Two candidates as one; undefined where both would change the same field. */
export function both(a: Candidate, b: Candidate): Candidate | undefined {
  const fields = ({ changes, sized }: Candidate) => [
    ...changes.map(({ at }) => at),
    ...sized.flatMap((one) => one.changes(one.step).map(({ at }) => at)),
  ]
  const taken = new Set(fields(a))
  if (fields(b).some((at) => taken.has(at)) || a.stays.length + b.stays.length > 0) return undefined
  return {
    of: [a, b],
    kinds: [...a.kinds, ...b.kinds],
    effort: a.effort + b.effort,
    hours: [a.hours[0] + b.hours[0], a.hours[1] + b.hours[1]],
    risk: once([a.risk, b.risk]),
    where: once([a.where, b.where]),
    drops: [...a.drops, ...b.drops],
    stays: [],
    sized: [...a.sized, ...b.sized],
    fixed: [...a.fixed, ...b.fixed],
    changes: [...a.changes, ...b.changes],
    agree: once([a.agree, b.agree]),
    lead: (amounts, then) => `${a.lead(amounts, then)} ${b.lead(amounts, then)}`,
  }
}

/** Each part once. */
const once = (texts: readonly string[]): string =>
  [...new Set(texts.flatMap((text) => text.split('; ')))].join('; ')
