import { tol } from '../../mechanics/tolerances'
import type { Constraints } from './constraints'
import type { BoundSide, Touched } from './touched'

/**
 * A corner of a linear program that is the optimum of those constraints that it stands at: as many as there are columns, none
 * a combination of the others; with what each presses with, and the way along which its value grows by one while the others
 * stay. The revised simplex with a basis of constraints (Dantzig 1963, from memory), for going along when bounds move:
 * the solver's package tells no basis.
 */
export class Vertex {
  /** The constraints that it stands at ... */
  readonly at: Int32Array
  readonly sides: BoundSide[]
  /** ... and what the objective changes by when the value of each of them grows by one. */
  readonly press: Float64Array
  private readonly n: number
  private readonly ways: Float64Array

  private constructor(
    n: number,
    from: Pick<Vertex, 'at' | 'sides' | 'press'> & { ways: Float64Array },
  ) {
    this.n = n
    ;({ at: this.at, sides: this.sides, press: this.press, ways: this.ways } = from)
  }

  /**
   * @param touched what an optimal answer stands at, those first that it presses on most
   * @returns undefined where that is too little to hold a corner
   */
  static of(
    constraints: Constraints,
    objective: readonly number[],
    touched: readonly Touched[],
  ): Vertex | undefined {
    const { n } = constraints
    const ways = new Float64Array(n * n)
    for (let j = 0; j < n; j++) ways[j * n + j] = 1
    const vertex = new Vertex(n, {
      at: new Int32Array(n).fill(-1),
      sides: Array.from({ length: n }, (): BoundSide => 'lower'),
      press: Float64Array.from(objective),
      ways,
    })
    let open = n
    for (const { constraint, side } of touched) {
      if (open === 0) return vertex
      const parts = vertex.partsOf(constraints, constraint)
      let [place, size] = [-1, tol.pathPart]
      for (let i = 0; i < n; i++) {
        const part = Math.abs(parts[i] ?? 0)
        if (vertex.at[i] === -1 && part > size) [place, size] = [i, part]
      }
      if (place < 0) continue
      vertex.exchange(constraint, side, place, parts)
      open--
    }
    return open === 0 ? vertex : undefined
  }

  copy(): Vertex {
    return new Vertex(this.n, {
      at: this.at.slice(),
      sides: [...this.sides],
      press: this.press.slice(),
      ways: this.ways.slice(),
    })
  }

  /** The way along which the constraint in a place grows by one and the others stay. */
  way(place: number): Float64Array {
    return this.ways.subarray(place * this.n, (place + 1) * this.n)
  }

  /** The way along which the constraints that it stands at change by so much each. */
  along(change: (place: number) => number): Float64Array {
    const out = new Float64Array(this.n)
    for (let i = 0; i < this.n; i++) {
      const by = change(i)
      if (by === 0) continue
      const way = this.way(i)
      for (let j = 0; j < this.n; j++) out[j] = (out[j] ?? 0) + by * (way[j] ?? 0)
    }
    return out
  }

  /**
   * Stands at one more constraint and lets that one go which loses its press first, so that it stays the optimum of what it
   * stands at.
   * @returns the place of the new one, and which stood there; place -1 where none can let go, so that nothing fulfils all of them
   */
  enter(
    constraints: Constraints,
    constraint: number,
    side: 'lower' | 'upper',
  ): { readonly place: number; readonly left: number } {
    const parts = this.partsOf(constraints, constraint)
    const inward = side === 'lower' ? 1 : -1
    const [smallest, sameRatio] = [tol.pathPart, tol.pathRatio]
    let [place, least, size] = [-1, Infinity, 0]
    for (let i = 0; i < this.n; i++) {
      const part = parts[i] ?? 0
      const own = this.sides[i] === 'lower' ? 1 : this.sides[i] === 'upper' ? -1 : 0
      if (inward * own * part <= smallest) continue
      const ratio = Math.abs((this.press[i] ?? 0) / part)
      const apart = ratio - least
      const same = Math.abs(apart) <= sameRatio * Math.max(1, ratio)
      // of equal ones that with the largest part, which keeps the digits
      if (same ? Math.abs(part) <= size : apart > 0) continue
      ;[place, least, size] = [i, ratio, Math.abs(part)]
    }
    const left = this.at[place] ?? -1
    if (place >= 0) this.exchange(constraint, side, place, parts)
    return { place, left }
  }

  /** A constraint as a sum of those that it stands at: so much of each. */
  private partsOf(constraints: Constraints, constraint: number): Float64Array {
    const out = new Float64Array(this.n)
    for (let i = 0; i < this.n; i++) out[i] = constraints.value(constraint, this.way(i))
    return out
  }

  private exchange(constraint: number, side: BoundSide, place: number, parts: Float64Array): void {
    const { n, ways, press } = this
    const own = place * n
    const pivot = parts[place] ?? 1
    // a machine moves its neighbours' couplings and no more: most of a way is nought
    const moved: number[] = []
    for (let j = 0; j < n; j++) {
      const value = ways[own + j] ?? 0
      if (value === 0) continue
      ways[own + j] = value / pivot
      moved.push(j)
    }
    const pressed = (press[place] ?? 0) / pivot
    for (let i = 0; i < n; i++) {
      const part = parts[i] ?? 0
      if (i === place || part === 0) continue
      const other = i * n
      for (const j of moved) ways[other + j] = (ways[other + j] ?? 0) - part * (ways[own + j] ?? 0)
      press[i] = (press[i] ?? 0) - part * pressed
    }
    press[place] = pressed
    this.at[place] = constraint
    this.sides[place] = side
  }
}
