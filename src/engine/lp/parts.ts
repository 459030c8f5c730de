import { isTolerance } from './standing'
import { shareColumn, type Circle, type Column, type Program, type Row } from './program'

/**
 * A train falls apart where a body is held: what is left of it and what is right of it share no
 * motion, and where y and z count apart neither do rise and slide. Such parts can be solved one by one:
 * costs add up, the worst share is the worst of theirs.
 */
export interface Part {
  /** The same for the same motions of the same train and the same room kept free, whatever else is held. */
  readonly key: string
  readonly program: Program
  /** Column of the whole program for each column of the part. */
  readonly columns: readonly number[]
  readonly limits: readonly number[]
  readonly displacements: readonly number[]
  readonly circles: readonly number[]
}

/** A set of motions that no row joins to any other: what a part is made of. */
export interface MotionGroup {
  readonly key: string
  readonly motions: readonly number[]
}

/** A program with what each of its rows joins, made once and split for every choice of held bodies. */
export class Partition {
  readonly program: Program
  /** Motions of every limit, circle and displacement that has any. */
  private readonly limits: readonly (readonly number[])[]
  private readonly circles: readonly (readonly number[])[]
  private readonly displacements: readonly (readonly number[])[]

  constructor(program: Program) {
    this.program = program
    const motions = (columns: Iterable<number>) =>
      [...columns].filter((c) => c !== shareColumn && c < program.firstMove)
    const ofRow = (row: Row) => motions(row.terms.map(([column]) => column))
    this.limits = program.limits.map(ofRow)
    this.displacements = program.displacements.map(ofRow)
    this.circles = program.circles.map(({ u, w }) =>
      motions(new Set([...u.terms.keys(), ...w.terms.keys()])),
    )
  }

  /** The groups that the motions fall into when only those of `free` may happen. */
  split(free: (column: number) => boolean = () => true): MotionGroup[] {
    const { firstMove, columns } = this.program
    const root = columns.slice(0, firstMove).map((_, c) => c)
    const find = (c: number): number => {
      let at = c
      while ((root[at] ?? at) !== at) at = root[at] ?? at
      root[c] = at
      return at
    }
    for (const lists of [this.limits, this.circles, this.displacements])
      for (const list of lists) {
        let first: number | undefined
        for (const c of list) {
          if (!free(c)) continue
          if (first === undefined) first = find(c)
          else root[find(c)] = first
        }
      }
    const groups = new Map<number, number[]>()
    for (let c = shareColumn + 1; c < firstMove; c++) {
      if (!free(c)) continue
      const at = find(c)
      const group = groups.get(at)
      if (group) group.push(c)
      else groups.set(at, [c])
    }
    return [...groups.values()].map((motions) => ({ key: this.keyOf(motions), motions }))
  }

  private keyOf(motions: readonly number[]): string {
    const names = motions.map((c) => {
      const meaning = this.program.columns[c]?.meaning
      return meaning?.part === 'motion' ? `${meaning.body}${meaning.motion}` : `column ${c}`
    })
    return [...names, ...this.keptBy(motions)].join(' ')
  }

  /** The room kept free where these motions reach: it may change with what else is held. */
  private keptBy(motions: readonly number[]): string[] {
    const inside = new Set(motions)
    const touched = (list: readonly number[] | undefined) => list?.some((c) => inside.has(c))
    return [
      ...this.program.limits.flatMap(({ kept }, i) =>
        kept !== undefined && touched(this.limits[i]) ? [String(kept)] : [],
      ),
      ...this.program.circles.flatMap(({ kept }, i) =>
        kept !== undefined && touched(this.circles[i]) ? [JSON.stringify(kept)] : [],
      ),
    ]
  }

  /** The program of one group: its motions, what they cost, and every limit that one of them touches. */
  partOf(group: MotionGroup): Part {
    const { program } = this
    const inside = new Set(group.motions)
    const touching = (lists: readonly (readonly number[])[]) =>
      lists.flatMap((list, i) => (list.some((c) => inside.has(c)) ? [i] : []))
    const limits = touching(this.limits)
    const circles = touching(this.circles)
    const displacements = touching(this.displacements)
    const moves = displacements.flatMap((i) =>
      (program.displacements[i]?.terms ?? []).flatMap(([c]) => (c < program.firstMove ? [] : [c])),
    )
    const columns = [shareColumn, ...group.motions, ...moves.sort((a, b) => a - b)]
    const place = new Map(columns.map((column, i) => [column, i]))
    return {
      key: group.key,
      columns,
      limits,
      displacements,
      circles,
      program: {
        columns: picked(program.columns, columns),
        firstMove: 1 + group.motions.length,
        limits: picked(program.limits, limits).map((row) => onlyOf(row, place)),
        displacements: picked(program.displacements, displacements).map((row) =>
          onlyOf(row, place),
        ),
        circles: picked(program.circles, circles).map((circle) => onlyOfCircle(circle, place)),
      },
    }
  }

  /** Tolerances that no free motion touches: couplings between bodies that stay. */
  still(free: (column: number) => boolean = () => true): { rows: Row[]; circles: number[] } {
    const untouched = (list: readonly number[] | undefined) => !list?.some(free)
    return {
      rows: this.program.limits.filter((row, i) => isTolerance(row) && untouched(this.limits[i])),
      circles: this.program.circles.flatMap(({ radius }, i) =>
        radius.terms.size > 0 && untouched(this.circles[i]) ? [i] : [],
      ),
    }
  }
}

const picked = <T extends Column | Row | Circle>(
  all: readonly T[],
  which: readonly number[],
): T[] =>
  which.flatMap((i) => {
    const one = all[i]
    return one ? [one] : []
  })

const onlyOf = (row: Row, place: ReadonlyMap<number, number>): Row => ({
  ...row,
  terms: row.terms.flatMap(([column, coefficient]) => {
    const at = place.get(column)
    return at === undefined ? [] : [[at, coefficient] as const]
  }),
})

const onlyOfCircle = (circle: Circle, place: ReadonlyMap<number, number>): Circle => {
  const only = ({ constant, terms }: Circle['u']) => ({
    constant,
    terms: new Map(
      [...terms].flatMap(([column, coefficient]) => {
        const at = place.get(column)
        return at === undefined ? [] : [[at, coefficient] as const]
      }),
    ),
  })
  return { ...circle, u: only(circle.u), w: only(circle.w), radius: only(circle.radius) }
}
