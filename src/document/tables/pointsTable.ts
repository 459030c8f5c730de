import type { TrainDocument } from '../schema'
import { bodiesAt, nextId, type BodyAt } from '../edits/bodies'
import { valueAt, withList, withValue } from '../place'
import { bodyNamed, same } from './bodyNamed'
import { onlyNames } from './couplingRows'
import type { CsvCell } from './csv'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import { pastedRange } from './pastedRange'

const ways = ['axial', 'side', 'rise'] as const
const words = { axial: 'along', side: 'side', rise: 'rise' } as const
const places = ['x', 'y', 'z'] as const
const headings = { x: 'x', y: 'y', z: 'height' } as const

type Point = Readonly<Record<string, unknown>> & { readonly id: string }

const pointsOf = (document: TrainDocument, { path }: BodyAt): readonly Point[] =>
  (valueAt(document, [...path, 'restraints']) ?? []) as readonly Point[]

/** Nozzles and other points that must stay near, as a table: a row a point, each way in two columns. */
export const pointsTable: PasteTarget = {
  what: 'nozzles',
  columns: [
    { key: 'on', heading: 'on', names: ['machine', 'body', 'skid'], kind: 'text', down: true },
    { key: 'point', heading: 'point', names: ['nozzle', 'id', 'name'], kind: 'text' },
    ...places.map((key) => ({
      key,
      heading: headings[key],
      names: key === 'z' ? ['z'] : [],
      kind: 'length' as const,
    })),
    ...ways.flatMap((way) =>
      (['from', 'to'] as const).map((end) => ({
        key: `${way} ${end}`,
        heading: `${words[way]} ${end}`,
        names: way === 'axial' ? [`axial ${end}`] : [],
        kind: 'fine' as const,
      })),
    ),
  ],
  put,
  rows: (document) =>
    bodiesAt(document).flatMap((body) =>
      pointsOf(document, body).map((point) => ({
        on: body.name,
        point: point.id,
        ...Object.fromEntries(places.map((key) => [key, point[key] as CsvCell])),
        ...Object.fromEntries(
          ways.flatMap((way) => {
            const [from, to] = (point[way] ?? []) as readonly CsvCell[]
            return [
              [`${way} from`, from],
              [`${way} to`, to],
            ]
          }),
        ),
      })),
    ),
}

/** Changes the point that a row names, or adds it. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const body = bodyNamed(document, values['on'])
  if (typeof body === 'string') return { why: body }
  const points = pointsOf(document, body)
  const named = values['point'] === undefined ? undefined : String(values['point'])
  const found = points.findIndex(({ id }) => same(id, named))
  const adds = found < 0
  const lacks = adds ? (['x', 'z'] as const).find((key) => values[key] === undefined) : undefined
  if (lacks)
    return {
      why: `${body.name} has no point ${named ?? 'without a name'}, and a new one needs its ${headings[lacks]}`,
    }
  const at = adds ? points.length : found
  const old: Partial<Point> = points[at] ?? {}
  const ranges = ways.map((way) => ({ way, range: rangeOf(way, old, values) }))
  const refused = ranges.find(({ range }) => typeof range === 'string')
  if (refused) return { why: String(refused.range) }
  const id =
    named ??
    nextId(
      points.map((point) => point.id),
      'nozzle',
    )
  const path = [...body.path, 'restraints']
  const start = adds ? withList(document, path, (list) => [...list, { id }]) : document
  const fields = [
    ...places.map((key) => [key, values[key]] as const),
    ...ranges.map(({ way, range }) => [way, range] as const),
  ].filter(([, value]) => value !== undefined)
  if (fields.length === 0) return { why: onlyNames }
  return {
    document: fields.reduce(
      (now, [key, value]) => withValue(now, [...path, at, key], value),
      start,
    ),
    does: `${adds ? 'adds' : 'changes'} point ${id} of ${body.name}`,
  }
}

/** What a point may be carried one way, low end and high end with 0 between them; or why it is no range. */
function rangeOf(
  way: (typeof ways)[number],
  old: Partial<Point>,
  values: PastedValues,
): readonly [number, number] | string | undefined {
  const range = pastedRange(words[way], old[way], [values[`${way} from`], values[`${way} to`]])
  if (range === undefined || typeof range === 'string') return range
  const [from, to] = range
  if (from > 0) return `${words[way]} from: ${from} is above 0, and a range has 0 in it`
  if (to < 0) return `${words[way]} to: ${to} is below 0, and a range has 0 in it`
  return range
}
