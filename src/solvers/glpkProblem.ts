import type { GlpkCalls } from './glpkCalls'

/** GLPK's kinds of bounds. */
const kinds = { free: 1, lower: 2, upper: 3, both: 4, fixed: 5 } as const

/** GLPK's words for what the simplex came to. */
export const statuses = { optimal: 5, unbounded: 6 } as const

/** Where a parameter of the simplex lies behind their place (bytes), and its value for the dual simplex, then the primal one. */
const method = { at: 4, dualFirst: 2 } as const

/**
 * A problem in GLPK's memory, in its own numbers: rows and columns count from 1. It may be changed and grow, and is then
 * solved from the basis it was left with. To be deleted.
 */
export class GlpkProblem {
  private readonly calls: GlpkCalls
  private readonly at: number
  private rowCount = 0
  private columnCount = 0
  private entryCount = 0
  private entries = { i: new Int32Array(256), j: new Int32Array(256), a: new Float64Array(256) }
  private loaded = 0

  constructor(calls: GlpkCalls) {
    this.calls = calls
    this.at = calls.createProblem()
  }

  get rows(): number {
    return this.rowCount
  }

  get columns(): number {
    return this.columnCount
  }

  addRows(count: number): void {
    this.calls.addRows(this.at, count)
    this.rowCount += count
  }

  /** @returns its number */
  addColumn(): number {
    this.calls.addColumns(this.at, 1)
    return ++this.columnCount
  }

  /** Bounds of a row; -Infinity and Infinity for none. */
  boundRow(row: number, lower: number, upper: number): void {
    this.calls.rowBounds(this.at, row, kindOf(lower, upper), finite(lower), finite(upper))
  }

  boundColumn(column: number, lower: number, upper: number): void {
    this.calls.columnBounds(this.at, column, kindOf(lower, upper), finite(lower), finite(upper))
  }

  /** Cost of a column, of what is minimised. */
  setCost(column: number, cost: number): void {
    this.calls.setCost(this.at, column, cost)
  }

  /** One more coefficient; none may be given twice. */
  addEntry(row: number, column: number, coefficient: number): void {
    const n = ++this.entryCount
    if (n >= this.entries.a.length) this.entries = doubled(this.entries)
    this.entries.i[n] = row
    this.entries.j[n] = column
    this.entries.a[n] = coefficient
  }

  /**
   * Minimises by the simplex, from the basis of the last time.
   * @param steps after which it ends, however far it has come
   * @param dualFirst by the dual simplex: where rows have other bounds than the basis was found with
   * @returns status
   */
  minimise(steps: number, seconds: number, dualFirst: boolean): number {
    const { calls } = this
    if (this.loaded < this.entryCount) this.load()
    const parameters = calls.parameters(steps, 0, seconds * 1000, 0)
    if (dualFirst)
      new DataView(calls.memory.buffer).setInt32(parameters + method.at, method.dualFirst, true)
    const fault = calls.simplex(this.at, parameters)
    calls.free(parameters)
    return fault === 0 ? calls.status(this.at) : 0
  }

  objective(): number {
    return this.calls.objective(this.at)
  }

  columnValue(column: number): number {
    return this.calls.columnValue(this.at, column)
  }

  rowDual(row: number): number {
    return this.calls.rowDual(this.at, row)
  }

  delete(): void {
    this.calls.deleteProblem(this.at)
  }

  private load(): void {
    const { calls, entryCount: count } = this
    const size = count + 1
    const a = calls.malloc(16 * size)
    const [i, j] = [a + 8 * size, a + 12 * size]
    const { buffer } = calls.memory
    new Float64Array(buffer, a, size).set(this.entries.a.subarray(0, size))
    new Int32Array(buffer, i, size).set(this.entries.i.subarray(0, size))
    new Int32Array(buffer, j, size).set(this.entries.j.subarray(0, size))
    calls.loadMatrix(this.at, count, i, j, a)
    calls.free(a)
    calls.sortMatrix(this.at)
    this.loaded = count
  }
}

function kindOf(lower: number, upper: number): number {
  if (!Number.isFinite(lower)) return Number.isFinite(upper) ? kinds.upper : kinds.free
  if (!Number.isFinite(upper)) return kinds.lower
  return lower === upper ? kinds.fixed : kinds.both
}

const finite = (bound: number): number => (Number.isFinite(bound) ? bound : 0)

interface Entries {
  readonly i: Int32Array<ArrayBuffer>
  readonly j: Int32Array<ArrayBuffer>
  readonly a: Float64Array<ArrayBuffer>
}

function doubled({ i, j, a }: Entries): Entries {
  const size = 2 * a.length
  const out = { i: new Int32Array(size), j: new Int32Array(size), a: new Float64Array(size) }
  out.i.set(i)
  out.j.set(j)
  out.a.set(a)
  return out
}
