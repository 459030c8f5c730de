import type { DocumentUnits } from '../mechanics/units'
import { isAlong, isReading, type Beyond, type Typed } from './placeKinds'
import { placeOf } from './refusal'
import { signedSaid } from './said'
import { unitSign } from './unitSign'

/** A value this many times the largest of the others of its column, where there are two others or more that are not 0. */
const oddRatio = 100
const fewestOthers = 2

/** The largest two of the sizes in one column of one table, and how many there are beside 0. */
interface Column {
  readonly first: number
  readonly second: number
  readonly count: number
}

/** Columns by what the places in them share. */
export function valueColumns(numbers: readonly Typed[]): ReadonlyMap<string, Column> {
  const columns = new Map<string, Column>()
  for (const number of numbers) {
    const name = columnOf(number)
    const size = Math.abs(number.value)
    if (name === undefined || size === 0) continue
    const { first, second, count } = columns.get(name) ?? { first: 0, second: 0, count: 0 }
    columns.set(name, {
      first: Math.max(first, size),
      second: size > first ? first : Math.max(second, size),
      count: count + 1,
    })
  }
  return columns
}

/** Plates and shims are thin and thick by nature, degrees begin anywhere, and places along the train too. */
function columnOf({ path, quantity }: Typed): string | undefined {
  if (['temperature', 'hour', 'time', 'plain'].includes(quantity)) return undefined
  if (path[0] === 'plan' || path.includes('plates')) return undefined
  if (quantity === 'length' && isAlong(path)) return undefined
  // the hours of one set stand together; sets of other dials do not
  const from = isReading(path) ? path.length - 2 : 0
  return placeOf(path.map((key, i) => (i >= from && typeof key === 'number' ? '*' : key)))
}

export function beyondOthers(
  columns: ReadonlyMap<string, Column>,
  number: Typed,
  units: DocumentUnits,
): Beyond | undefined {
  const name = columnOf(number)
  const column = name === undefined ? undefined : columns.get(name)
  if (!column || Math.abs(number.value) !== column.first) return undefined
  if (column.count - 1 < fewestOthers || column.first < oddRatio * column.second) return undefined
  const said = (value: number) => `${signedSaid(value)} ${unitSign(number.quantity, units)}`
  return {
    said: said(number.value),
    beyond: `${oddRatio} times the largest of the others here, ${said(column.second)}, or more`,
  }
}
