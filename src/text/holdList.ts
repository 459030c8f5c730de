import { bestShareText } from '../language/roundedAmounts'
import { toldDigits } from '../language/amounts'
import { fineSign, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { effortOf } from '../engine/studies/holds/compare'
import type { Holds, RankedHold } from '../engine/studies/holds/holdRows'
import { fewerText } from './fewerText'
import { holdGroups, type HoldGroup } from './holdGroups'
import { withinWords } from './withinWords'
import { capital, inSentence, listed } from '../language/names'

/** A choice of held bodies as it stands in a list. */
export interface HoldItem {
  /** Ids of the bodies it holds. */
  readonly held: readonly string[]
  /** "The gear and the motor fixed", "Nothing fixed". */
  readonly title: string
  /** Digits in the document's fine unit; absent where there is no plan. */
  readonly moves?: string
  readonly effort?: string
  /** "57 %": that every state is in, its plan done blind; absent while it is not known. */
  readonly chance?: string
  /** In the place of the two numbers: "no plan", "nothing moves". */
  readonly verdict?: string
  /** "moves the turbine and the gear; best reachable 63 %". */
  readonly detail: string
  /** One clause; empty for the first. */
  readonly why: string
  /** Other choices with the very same plan, as titles. */
  readonly same: readonly string[]
  readonly current: boolean
}

/** Choices as people read them: the same plan once, what is beaten and what is impossible folded away. */
export interface HoldList {
  readonly unit: string
  readonly shown: readonly HoldItem[]
  readonly beaten: readonly HoldItem[]
  /** Impossible by themselves; choices that hold more than one of these are counted alone. */
  readonly impossible: readonly HoldItem[]
  readonly implied: number
  /** What disturbing fewer machines than the first would take; empty where that says nothing. */
  readonly fewer: string
  readonly solved: number
  /** False where only the best were looked for. */
  readonly complete: boolean
  /** The work allowed ran out. */
  readonly ranOut: boolean
}

/** Most items of a folded list that are told. */
const mostFolded = 60

/**
 * Puts ranked choices into a list. What is held now and nothing held always stand in it by themselves.
 */
export function holdList(
  train: Train,
  holds: Holds,
  chanceOf: (row: RankedHold) => string | undefined = () => undefined,
): HoldList {
  const { rows, complete, ranOut } = holds
  const fewest = Math.min(...rows.map(({ held }) => held.length))
  const nothing = (row: RankedHold) => row.held.length === fewest
  const stands = (row: RankedHold) => row.current || nothing(row)
  const groups = holdGroups(rows, nothing)
  const beaten = groups.filter(({ face, lead }) => lead.beatenBy !== undefined && !stands(face))
  const impossible = rows.filter((row) => row.cost === undefined && !stands(row))
  const least = impossible.filter(({ impliedBy }) => impliedBy === undefined)
  const single = (face: RankedHold): HoldGroup => ({ face, others: [], lead: face })
  return {
    unit: fineSign[train.units.fine],
    shown: [
      ...groups.filter((group) => !beaten.includes(group)),
      ...rows.filter((row) => row.cost === undefined && stands(row)).map(single),
    ].map((group) => itemOf(train, group, chanceOf(group.face))),
    beaten: beaten.slice(0, mostFolded).map((group) => itemOf(train, group)),
    impossible: least.slice(0, mostFolded).map((row) => itemOf(train, single(row))),
    implied: impossible.length - Math.min(least.length, mostFolded),
    fewer: fewerText(train, holds),
    solved: rows.length,
    complete,
    ranOut: ranOut ?? false,
  }
}

function itemOf(train: Train, { face, others, lead }: HoldGroup, chance?: string): HoldItem {
  const digits = (value: Micrometres) => toldDigits(value, train.units)
  return {
    held: face.held,
    title: titleOf(train, face.held),
    ...(face.cost === undefined
      ? { verdict: face.fault === undefined ? 'no plan' : 'no answer' }
      : face.disturbed.length === 0
        ? { verdict: 'nothing moves' }
        : { moves: digits(face.cost), effort: digits(effortOf(train, face)) }),
    ...(chance !== undefined && { chance }),
    detail: detailOf(train, face),
    why: lead.why,
    same: others.map(({ held }) => titleOf(train, held)),
    current: face.current,
  }
}

/** "The gear fixed", "Nothing fixed". */
function titleOf(train: Train, held: readonly string[]): string {
  const names = namesOf(train, held)
  return capital(`${names.length === 0 ? 'nothing' : listed(names)} fixed`)
}

const namesOf = (train: Train, ids: readonly string[]): string[] =>
  train.bodies.filter(({ id }) => ids.includes(id)).map(({ name }) => inSentence(name))

function detailOf(train: Train, row: RankedHold): string {
  const floor = row.floor === null ? '' : `best reachable ${bestShareText(row.floor)}`
  const moved = namesOf(train, row.disturbed)
  const within = row.wanted && row.cost !== undefined ? withinWords(row.wanted) : ''
  const moves = moved.length > 0 ? `moves ${listed(moved)}` : ''
  return [moves, within, floor].filter((part) => part !== '').join('; ')
}
