import type { Micrometres } from '../units/units'
import type { Body, Train } from '../train/model'
import type { AsFound } from '../readings/asFound'
import { combine, type Affine } from '../program/affine'
import { frameOf, type Frame } from '../program/frame'
import { programUnit, type Column, type Program, type Row } from '../program/program'
import { reach } from '../plan/rounds'
import { common, notUnder, type Allowed } from './allowed'
import { Plates } from './plates'
import { footAllowed, footRange } from './shims'

/** A move that is told to people, and so must be one that they can make. */
export interface Choice {
  readonly kind: 'shim' | 'slide' | 'axial'
  readonly body: number
  /** Feet that it moves alike; none for a move along the train. */
  readonly feet: readonly number[]
  /** Row among the limits of the program that bounds it. */
  readonly row: number
  /** What it may be when moves under `plan.leave` are left alone, and when they are not. */
  readonly tidy: Allowed
  readonly any: Allowed
}

/** A program whose limits end with one row for each choice. */
export interface Choosing {
  readonly program: Program
  readonly choices: readonly Choice[]
}

/** Feet whose shims are changed alike: those of a row, or each by itself where the body may roll. */
export const standsOf = (body: Body): readonly (readonly number[])[] =>
  body.may.roll ? body.feet.map((_, f) => [f]) : body.rows.map(({ feet }) => feet)

/** A body on three rows or more: its feet need not stand exactly in one plane. */
export const isLoose = (body: Body): boolean => body.rows.length > 2

/**
 * The planner's program with a row for every shim change, slide and axial move that may happen. For
 * bodies on three rows or more the shims are columns of their own, within `flat` of the plane in
 * which the body lies; that plane is the least-squares one through the shims, so that nothing is
 * moved that no shim moves.
 */
export function choosing(train: Train, found: readonly AsFound[], program: Program): Choosing {
  const { shims } = train.plan
  if (!shims) throw new RangeError('the train has no shims')
  const plates = new Plates(shims.stock, shims.most)
  const frame = frameOf(train, found)
  const heights = loosened(frame, program, shims.flat)
  const limits = [...heights.program.limits]
  const choices: Choice[] = []
  const add = (choice: Omit<Choice, 'row'>, name: string, moved: Affine) => {
    if (moved.terms.size === 0) return
    const { kind, body } = choice
    const [foot = 0] = choice.feet
    choices.push({ ...choice, row: limits.length })
    limits.push({
      name,
      terms: [...moved.terms],
      lower: -reach,
      upper: reach,
      meaning: kind === 'axial' ? { fact: 'axial', body } : { fact: 'shim', body, foot },
    })
  }
  train.bodies.forEach((body, b) => {
    if (body.held) return
    if (body.may.rise)
      for (const feet of standsOf(body)) {
        const within = (least: Micrometres) =>
          common(
            feet.flatMap((f) => {
              const foot = body.feet[f]
              return foot ? [footAllowed(shims, plates, foot, least)] : []
            }),
          )
        const choice = { kind: 'shim' as const, body: b, feet }
        const allowed = { tidy: within(train.plan.leave), any: within(0) }
        const moved = heights.height(b, feet[0] ?? 0)
        add(
          { ...choice, ...allowed },
          `stand ${body.id} ${body.feet[feet[0] ?? 0]?.id ?? ''}`,
          moved,
        )
      }
    const free = { tidy: notUnder(train.plan.leave), any: notUnder(0) }
    for (const { x, feet } of body.rows) {
      const moved = frame.displacement(b, { x, y: 0, z: 0 }, 'dy', 'own')
      add({ kind: 'slide', body: b, feet, ...free }, `slid ${body.id} ${x}`, moved)
    }
    const along = frame.displacement(b, { x: body.x0, y: 0, z: 0 }, 'dx', 'own')
    add({ kind: 'axial', body: b, feet: [], ...free }, `along ${body.id}`, along)
  })
  return { program: { ...heights.program, limits }, choices }
}

interface Heights {
  readonly program: Program
  /** Shim change (program units) at a foot. */
  height(body: number, foot: number): Affine
}

/** Gives bodies on three rows or more a column for each of their stands. */
function loosened(frame: Frame, program: Program, flat: Micrometres): Heights {
  const { train } = frame
  const own = (b: number, f: number): Affine => {
    const { x = 0, y = 0 } = train.bodies[b]?.feet[f] ?? {}
    return frame.displacement(b, { x, y, z: 0 }, 'dz', 'own')
  }
  const columns: Column[] = []
  const links: Row[] = []
  const columnOf = new Map<string, number>()
  train.bodies.forEach((body, b) => {
    if (body.held || !body.may.rise || !isLoose(body)) return
    for (const feet of standsOf(body)) {
      const at = program.firstMove + columns.length
      const [first = 0] = feet
      const ranges = feet.flatMap((f) => {
        const foot = body.feet[f]
        return foot ? [foot.mayShim ? footRange(foot) : [0, 0]] : []
      })
      columns.push({
        name: `height ${body.id} ${body.feet[first]?.id ?? ''}`,
        lower: Math.max(...ranges.map(([low = 0]) => low)) / programUnit,
        upper: Math.min(...ranges.map(([, high = 0]) => high)) / programUnit,
        cost: 0,
        meaning: { part: 'height', body: b, feet },
      })
      for (const f of feet) columnOf.set(`${b} ${f}`, at)
      links.push({
        name: `flat ${body.id} ${body.feet[first]?.id ?? ''}`,
        terms: [...combine([-1, own(b, first)]).terms, [at, 1]],
        lower: -flat / programUnit,
        upper: flat / programUnit,
        meaning: { fact: 'shim', body: b, foot: first },
      })
    }
    const off = body.feet.map((_, f) =>
      combine([1, single(columnOf.get(`${b} ${f}`) ?? 0)], [-1, own(b, f)]),
    )
    for (const way of turnsOf(body)) {
      const terms = combine(...off.map((part, f) => [way[f] ?? 0, part] as const)).terms
      links.push({
        name: `plane ${body.id}`,
        terms: [...terms],
        lower: 0,
        upper: 0,
        meaning: { fact: 'shim', body: b, foot: 0 },
      })
    }
  })
  const height = (b: number, f: number) => {
    const column = columnOf.get(`${b} ${f}`)
    return column === undefined ? own(b, f) : single(column)
  }
  if (columns.length === 0) return { program, height }
  return { program: withHeights(program, columns, links, columnOf), height }
}

const single = (column: number): Affine => ({ constant: 0, terms: new Map([[column, 1]]) })

/** Inserts the columns before the moves; shims of these bodies are paid for by what goes in or out. */
function withHeights(
  program: Program,
  columns: readonly Column[],
  links: readonly Row[],
  columnOf: ReadonlyMap<string, number>,
): Program {
  const { firstMove } = program
  const moved = (c: number) => (c < firstMove ? c : c + columns.length)
  return {
    ...program,
    columns: [
      ...program.columns.slice(0, firstMove),
      ...columns,
      ...program.columns.slice(firstMove),
    ],
    firstMove: firstMove + columns.length,
    limits: [...program.limits, ...links],
    displacements: program.displacements.map((row) => {
      const paid = row.terms.filter(([c]) => c >= firstMove).map(([c, a]) => [moved(c), a] as const)
      const { meaning } = row
      const column =
        meaning.fact === 'shim' ? columnOf.get(`${meaning.body} ${meaning.foot}`) : undefined
      const what =
        column === undefined ? row.terms.filter(([c]) => c < firstMove) : [[column, 1] as const]
      return { ...row, terms: [...what, ...paid] }
    }),
  }
}

/** How far each independent way in which a body may rise, pitch and roll carries each of its feet. */
export function turnsOf(body: Body): number[][] {
  const { pitch, roll } = body.may
  const arm = Math.max(1, ...body.feet.map(({ x }) => Math.abs(x - body.x0)))
  const wide = Math.max(1, ...body.feet.map(({ y }) => Math.abs(y)))
  const ways = [
    body.feet.map(() => 1),
    ...(pitch ? [body.feet.map(({ x }) => (x - body.x0) / arm)] : []),
    ...(roll ? [body.feet.map(({ y }) => y / wide)] : []),
  ]
  return body.feet.reduce((left, { mayShim }, f) => (mayShim ? left : still(left, f)), ways)
}

/** The ways among these that leave a foot where it is: one fewer, or all where none carries it. */
function still(ways: readonly number[][], foot: number): number[][] {
  const size = (way: readonly number[]) => Math.abs(way[foot] ?? 0)
  const pivot = ways.reduce<number[] | undefined>(
    (best, way) => (size(way) > (best ? size(best) : 1e-9) ? way : best),
    undefined,
  )
  if (!pivot) return [...ways]
  return ways
    .filter((way) => way !== pivot)
    .map((way) => {
      const factor = (way[foot] ?? 0) / (pivot[foot] ?? 1)
      return way.map((value, f) => value - factor * (pivot[f] ?? 0))
    })
}
