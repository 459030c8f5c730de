import { tol } from '../../mechanics/tolerances'
import { Constraints, lengthened } from './constraints'
import type { LinearProgram, LpRow, Optimal } from './solver'
import { constraintsAt } from './touched'
import { Vertex } from './vertex'

/** How fast the bounds of a row move, per unit of what is changed; up is +. */
export interface MovingBounds {
  readonly lower: number
  readonly upper: number
}

/** A straight piece of the path: the objective at `from`, and what it changes by per unit; `to` may lie before `from`. */
export interface PathPiece {
  readonly from: number
  readonly to: number
  readonly objective: number
  readonly slope: number
}

/** A constraint that is reached on the way. */
interface Reached {
  readonly constraint: number
  readonly side: 'lower' | 'upper'
  readonly after: number
}

/** A corner takes the square of its columns; 8 MB for so many. */
const mostColumns = 1000

/**
 * The optimum of a linear program while bounds of rows move, each at a rate of its own: straight until another constraint
 * is reached, which then takes the place of one that lets go. Parametric programming by the dual simplex (Gass and
 * Saaty 1955, from memory). Whoever follows it judges what it comes to.
 */
export class BoundPath {
  /** How far the bounds have moved. */
  place = 0
  /** Values of the columns there. */
  readonly x: Float64Array
  private readonly objective: readonly number[]
  private readonly vertex: Vertex
  private constraints: Constraints
  private values: Float64Array
  /** The place of each constraint at the vertex, or -1; and how fast its bounds move. */
  private places: Int32Array
  private rates: { readonly lower: Float64Array; readonly upper: Float64Array }
  private readonly moving = new Set<number>()
  private now: { readonly way: Float64Array; readonly change: Float64Array } | undefined

  private constructor(
    from: Pick<BoundPath, 'x'> & {
      objective: readonly number[]
      vertex: Vertex
      constraints: Constraints
      values: Float64Array
    },
  ) {
    ;({ x: this.x, objective: this.objective, vertex: this.vertex } = from)
    ;({ constraints: this.constraints, values: this.values } = from)
    const { count } = this.constraints
    this.places = new Int32Array(count).fill(-1)
    this.rates = { lower: new Float64Array(count), upper: new Float64Array(count) }
    this.vertex.at.forEach((constraint, place) => {
      this.places[constraint] = place
    })
  }

  /**
   * A path that nothing moves on yet, at an optimal answer.
   * @returns undefined where the answer is no corner, or the program is so large that the solver is faster
   */
  static at(program: LinearProgram, answer: Optimal): BoundPath | undefined {
    if (program.columns.length > mostColumns) return undefined
    const constraints = Constraints.of(program)
    const x = Float64Array.from(answer.columns)
    const values = constraints.values(x)
    const touched = constraintsAt(program, constraints, answer, values)
    const vertex = Vertex.of(constraints, program.objective, touched)
    if (!vertex) return undefined
    const path = new BoundPath({ x, objective: program.objective, vertex, constraints, values })
    path.settle()
    return path
  }

  /** Another one from the same place, with bounds of rows that move. */
  moved(moving: ReadonlyMap<number, MovingBounds>): BoundPath {
    const { objective, constraints, values } = this
    const path = new BoundPath({
      x: this.x.slice(),
      objective,
      vertex: this.vertex.copy(),
      constraints: constraints.with([]),
      values: values.slice(),
    })
    for (const [row, rates] of moving) path.moves(row, rates)
    return path
  }

  /**
   * Adds rows, and goes to where they hold too without moving any bound.
   * @param moving of each of them; as they are where it stands
   * @returns false where nothing fulfils them
   */
  add(rows: readonly LpRow[], moving: readonly (MovingBounds | undefined)[]): boolean {
    const { count, n } = this.constraints
    this.constraints = this.constraints.with(rows)
    this.places = lengthened(this.places, count + rows.length).fill(-1, count)
    this.rates = {
      lower: lengthened(this.rates.lower, count + rows.length),
      upper: lengthened(this.rates.upper, count + rows.length),
    }
    moving.forEach((rates, i) => {
      if (rates) this.moves(count - n + i, rates)
    })
    this.values = this.constraints.values(this.x)
    return this.restored()
  }

  /** The pieces from here, one after the other, as bounds move on (or back) as far as `end`. */
  *pieces(end: number): Generator<PathPiece, void> {
    const steps = 50 + 4 * this.x.length
    for (let step = 0; step < steps; step++) {
      const sign = Math.sign(end - this.place)
      if (sign === 0) return
      const way = this.way(sign)
      const change = this.constraints.values(way)
      const next = this.firstReached(sign, change)
      const left = Math.abs(end - this.place)
      const by = Math.min(left, next?.after ?? Infinity)
      if (by > 0) {
        const { place: from } = this
        this.now = { way, change }
        const objective = dot(this.objective, this.x)
        yield { from, to: from + sign * by, objective, slope: sign * dot(this.objective, way) + 0 }
        this.go(from + sign * by)
      }
      if (!next || next.after >= left) return
      if (this.enter(next.constraint, next.side) < 0) return
    }
  }

  /** Goes to a place on the piece that was told last. */
  go(to: number): void {
    const by = Math.abs(to - this.place)
    if (!this.now || by === 0) return
    const sign = Math.sign(to - this.place)
    step(this.x, this.now.way, by)
    step(this.values, this.now.change, by)
    const { lower, upper } = this.constraints
    for (const k of this.moving) {
      lower[k] = (lower[k] ?? 0) + sign * by * (this.rates.lower[k] ?? 0)
      upper[k] = (upper[k] ?? 0) + sign * by * (this.rates.upper[k] ?? 0)
    }
    this.place = to
  }

  /** The answer where it stands, as a solver tells it. */
  answer(): Optimal {
    const { n, count } = this.constraints
    const duals = Array.from({ length: count - n }, () => 0)
    this.vertex.at.forEach((constraint, i) => {
      if (constraint >= n) duals[constraint - n] = this.vertex.press[i] ?? 0
    })
    return { kind: 'optimal', objective: dot(this.objective, this.x), columns: [...this.x], duals }
  }

  private moves(row: number, { lower, upper }: MovingBounds): void {
    const constraint = this.constraints.n + row
    this.moving.add(constraint)
    this.rates.lower[constraint] = lower
    this.rates.upper[constraint] = upper
    const place = this.places[constraint] ?? -1
    const { sides, press } = this.vertex
    // with a bound that moves it is no lengthened fixed
    if (sides[place] === 'fixed') sides[place] = (press[place] ?? 0) >= 0 ? 'lower' : 'upper'
  }

  /** Where the columns go while the bounds move on (+1) or back (-1). */
  private way(sign: number): Float64Array {
    const out = new Float64Array(this.x.length)
    for (const constraint of this.moving) {
      const place = this.places[constraint] ?? -1
      const side = this.vertex.sides[place]
      if (place < 0 || side === undefined || side === 'fixed') continue
      step(out, this.vertex.way(place), sign * (this.rates[side][constraint] ?? 0))
    }
    return out
  }

  /** @returns its place; -1 where none lets go for it */
  private enter(constraint: number, side: 'lower' | 'upper'): number {
    const { place, left } = this.vertex.enter(this.constraints, constraint, side)
    if (place < 0) return -1
    this.places[left] = -1
    this.places[constraint] = place
    return place
  }

  private firstReached(sign: number, change: Float64Array): Reached | undefined {
    const { lower, upper, count } = this.constraints
    const { places, values, rates } = this
    const still = tol.pathStill
    let [found, side, after] = [-1, 'lower' as 'lower' | 'upper', Infinity]
    for (let k = 0; k < count; k++) {
      if ((places[k] ?? -1) >= 0) continue
      const by = change[k] ?? 0
      const value = values[k] ?? 0
      const down = sign * (rates.lower[k] ?? 0) - by
      if (down > still) {
        const reached = (value - (lower[k] ?? 0)) / down
        if (reached < after) [found, side, after] = [k, 'lower', reached]
      }
      const up = by - sign * (rates.upper[k] ?? 0)
      if (up > still) {
        const reached = ((upper[k] ?? 0) - value) / up
        if (reached < after) [found, side, after] = [k, 'upper', reached]
      }
    }
    return found < 0 ? undefined : { constraint: found, side, after: Math.max(0, after) }
  }

  /** Goes, without moving any bound, to where every constraint holds. */
  private restored(): boolean {
    const { lower, upper, count } = this.constraints
    const { places, values } = this
    for (let tries = 0; tries < count; tries++) {
      let [found, side, most] = [-1, 'lower' as 'lower' | 'upper', tol.pathKept]
      for (let k = 0; k < count; k++) {
        if ((places[k] ?? -1) >= 0) continue
        const value = values[k] ?? 0
        const [low, high] = [lower[k] ?? 0, upper[k] ?? 0]
        if (value < low && (low - value) / Math.max(1, Math.abs(low)) > most)
          [found, side, most] = [k, 'lower', (low - value) / Math.max(1, Math.abs(low))]
        if (value > high && (value - high) / Math.max(1, Math.abs(high)) > most)
          [found, side, most] = [k, 'upper', (value - high) / Math.max(1, Math.abs(high))]
      }
      if (found < 0) return true
      const place = this.enter(found, side)
      if (place < 0) return false
      const way = this.vertex.way(place)
      const bound = (side === 'lower' ? lower : upper)[found] ?? 0
      const by = bound - (this.values[found] ?? 0)
      step(this.x, way, by)
      step(this.values, this.constraints.values(way), by)
    }
    return false
  }

  /** Takes out what the solver's last digits left between the corner and its constraints. */
  private settle(): void {
    const { lower, upper } = this.constraints
    const way = this.vertex.along((i) => {
      const constraint = this.vertex.at[i] ?? 0
      const bound = this.vertex.sides[i] === 'upper' ? upper[constraint] : lower[constraint]
      return (bound ?? 0) - (this.values[constraint] ?? 0)
    })
    step(this.x, way, 1)
    step(this.values, this.constraints.values(way), 1)
  }
}

function step(to: Float64Array, way: Float64Array, by: number): void {
  for (let j = 0; j < to.length; j++) to[j] = (to[j] ?? 0) + by * (way[j] ?? 0)
}

function dot(a: readonly number[], b: Float64Array): number {
  let sum = 0
  for (let j = 0; j < b.length; j++) sum += (a[j] ?? 0) * (b[j] ?? 0)
  return sum
}
