import type { Micrometres } from '../../mechanics/units'
import { combine, type Affine } from '../lp/affine'
import type { Frame } from '../lp/frame'
import { programUnit, type Column, type Program, type Row } from '../lp/program'
import { footRange } from './shims'
import { isLoose, footGroupsOf, footTurns } from './footGroups'

/** A program, and what the shims under a foot do in it. */
export interface ShimVariables {
  readonly program: Program
  /** Shim change (program units) at a foot. */
  height(body: number, foot: number): Affine
}

/** Gives bodies on three rows or more a column for each of their stands. */
export function withLooseShims(frame: Frame, program: Program, flat: Micrometres): ShimVariables {
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
    for (const feet of footGroupsOf(body)) {
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
    for (const way of footTurns(body)) {
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
