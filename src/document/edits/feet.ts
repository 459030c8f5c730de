import { listed } from '../../language/names'
import { footFieldList } from '../footFields'
import type { FootDocument, TrainDocument } from '../schema'
import { bodiesAt, nextId, numberAt, saidBody, type BodyAt } from './bodies'
import type { NamedEdit } from './machines'
import { removed, valueAt, withList, withValue, type Path } from '../place'

/** A foot may be unfinished: what is not known yet is left out. */
const newFoot = (id: string, x: number | undefined, y?: number): FootDocument =>
  ({ id, ...(x !== undefined && { x }), ...(y !== undefined && { y }) }) as FootDocument

const feetOf = (body: BodyAt): Path => [...body.path, 'feet']
const idsOf = ({ feet }: BodyAt): string[] => feet.map(({ id }) => id)

/** One more foot of a body, of which no more than its x (document's length unit) is known. */
export function addFoot(document: TrainDocument, body: BodyAt, x?: number): NamedEdit {
  const foot = newFoot(nextId(idsOf(body)), x)
  return {
    document: withList(document, feetOf(body), (feet) => [...feet, foot]),
    name: `added foot ${foot.id} of ${saidBody(body.name)}`,
  }
}

/** Ids of the next row: "3 near" and "3 far" after "2 near" and "2 far", else the next two. */
function nextPair(ids: readonly string[]): readonly [string, string] {
  const [one = '', other = ''] = ids.slice(-2)
  const [number, same] = [/\d+/.exec(one)?.[0], /\d+/.exec(other)?.[0]]
  if (number !== undefined && number === same && one !== other) {
    const next = (id: string) => id.replace(/\d+/, String(Number(number) + 1))
    if (!ids.includes(next(one)) && !ids.includes(next(other))) return [next(one), next(other)]
  }
  const first = nextId(ids)
  return [first, nextId([...ids, first])]
}

/** Where the two feet of the last row stand across, y in the document's length unit, if there is such a row. */
function lastRow({ feet }: BodyAt): readonly [number, number] | undefined {
  const [one, other] = [numberAt(feet.at(-2), ['y']), numberAt(feet.at(-1), ['y'])]
  return one === undefined || other === undefined || one === other ? undefined : [one, other]
}

/** Half the distance (document's length unit) between the two feet of the last row, if there is such a row. */
export function usualHalf(body: BodyAt): number | undefined {
  const row = lastRow(body)
  return row && Math.abs(row[0] - row[1]) / 2
}

/** Where the middle of a row stands across: as in the row before, else under the machine's own axis, half way between two. */
function middleOf(document: TrainDocument, body: BodyAt): number {
  const row = lastRow(body)
  if (row) return (row[0] + row[1]) / 2
  const y = (...end: string[]) => numberAt(valueAt(document, [...body.path, 'axis', ...end]), ['y'])
  const [left, right] = [y('left'), y('right')]
  return left === undefined && right === undefined ? (y() ?? 0) : ((left ?? 0) + (right ?? 0)) / 2
}

/**
 * A row of two more feet at one x, `apart` across (both in the document's length unit), about the machine's own axis:
 * first the one toward 3 o'clock, as in the rows before.
 */
export function addRow(
  document: TrainDocument,
  body: BodyAt,
  x: number | undefined,
  apart: number | undefined,
): NamedEdit {
  const half = apart === undefined ? usualHalf(body) : apart / 2
  const row = lastRow(body)
  const first = row && row[0] < row[1] ? -1 : 1
  const middle = middleOf(document, body)
  const [one, other] = nextPair(idsOf(body))
  const pair = [
    newFoot(one, x, half === undefined ? undefined : middle + first * half),
    newFoot(other, x, half === undefined ? undefined : middle - first * half),
  ]
  return {
    document: withList(document, feetOf(body), (feet) => [...feet, ...pair]),
    name: `added a row of two feet of ${saidBody(body.name)}`,
  }
}

/** A body without one of its feet. */
export function removeFoot(document: TrainDocument, body: BodyAt, index: number): NamedEdit {
  return {
    document: withList(document, feetOf(body), (feet) => removed(feet, index)),
    name: `removed foot ${body.feet[index]?.id ?? ''} of ${saidBody(body.name)}`,
  }
}

/** What is usually the same under all feet of a machine; where the hole stands is measured at each. */
const alike = footFieldList.filter((field) => field.alike !== undefined)
/** That in words: "pack, lift, clearance and keys". */
export const alikeWords = listed([...new Set(alike.map((field) => field.alike ?? ''))])

/** A foot with what is alike of the foot before it. */
export function asBefore(document: TrainDocument, body: BodyAt, index: number): NamedEdit {
  const [above, foot] = [body.feet[index - 1], body.feet[index]]
  if (!above || !foot) return { document, name: '' }
  return {
    document: alike.reduce(
      (now, { path }) => withValue(now, [...feetOf(body), index, ...path], valueAt(above, path)),
      document,
    ),
    name: `gave foot ${foot.id} of ${saidBody(body.name)} the ${alikeWords} of foot ${above.id}`,
  }
}

/** The value of the foot before, at one place of a foot; undefined where the place is none of a later foot. */
export function filledDown(document: TrainDocument, path: Path): NamedEdit | undefined {
  const [list, b, feet, index, ...rest] = path
  if (feet !== 'feet' || typeof index !== 'number' || index === 0 || rest.length === 0)
    return undefined
  if (rest[0] === 'id') return undefined
  const body = bodiesAt(document).find(({ path: at }) => at[0] === list && at[1] === b)
  const above = body?.feet[index - 1]
  const foot = body?.feet[index]
  if (!body || !above || !foot) return undefined
  return {
    document: withValue(document, path, valueAt(above, rest)),
    name: `copied a figure of foot ${above.id} of ${saidBody(body.name)} to foot ${foot.id}`,
  }
}
