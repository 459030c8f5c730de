import { normalQuantile } from '../normalQuantile'
import { tol } from '../tolerances'
import type { Coupling } from '../train'
import { equationsOf, type Equation } from './equation'
import { asFound } from './asFound'
import { solveSymmetric } from '../symmetric'

/** One value that was read, with what it lies off the line that all of them give together. */
interface NormalizedResidual {
  /** Index in `found`, and of the reading in its set (of a line: of what it gives, in order). */
  readonly set: number
  readonly index: number
  /** Residual over its own standard deviation: standard normal where nothing is wrong. */
  readonly w: number
  /** What the other values see of an error here, as a part of 1: 0 and nothing can show it. */
  readonly redundancy: number
}

/** What the readings of a coupling say of each other. */
export interface ResidualTest {
  /** Beyond it a normalized residual comes by chance once in so many couplings as `risk` says. */
  readonly limit: number
  /** Chance that sound readings are accused, a coupling. */
  readonly risk: number
  /** The value that lies farthest off, where it is over the limit. */
  readonly worst?: NormalizedResidual
  /** Values that an error of the worst cannot be told from; empty where it can be named. */
  readonly alike: readonly NormalizedResidual[]
}

/** Chance that sound readings of a coupling are accused. */
const risk = 0.05
/** Standard normal quantile of the 95 % that tells one value from another. */
const sureOf95 = 1.645
/** Two tests that hang together more than this are the same test. */
const sameTest = 0.999

/**
 * Tests every value for an error of its own, by normalized residuals (Baarda 1968, data snooping): residual over its
 * standard deviation in the least squares of all values, each sweep with a zero of its own. The risk of the coupling is
 * shared out among the tests that differ (Bonferroni). A value is named only where its residual stands out from every
 * other by more than chance makes of two tests that hang together as these do: four hours of one sweep are one test,
 * which tells that one of them is wrong and not which; five hours can tell.
 * @returns undefined where nothing is left over to test by
 */
export function residualTest(coupling: Coupling): ResidualTest | undefined {
  const { rows, equations } = numbered(coupling)
  const spread = residualSpread(equations, rows)
  const tested = rows.flatMap((row, i) => {
    const redundancy = spread[i]?.[i] ?? 0
    return redundancy > tol.dependent ? [{ ...row, i, redundancy }] : []
  })
  if (tested.length === 0) return undefined
  const { line } = asFound(coupling)
  const unknowns = [line.y, line.sy, line.z, line.sz]
  const all = tested.map(({ set, index, i, redundancy }) => {
    const equation = equations[i]
    const model = (equation?.coefficients ?? []).reduce<number>(
      (sum, c, k) => sum + c * (unknowns[k] ?? 0),
      0,
    )
    const residual = ((equation?.value ?? 0) - model) * (equation?.weight ?? 0)
    return { set, index, redundancy, i, w: residual / Math.sqrt(redundancy) }
  })
  const together = (a: number, b: number) =>
    (spread[a]?.[b] ?? 0) / Math.sqrt((spread[a]?.[a] ?? 1) * (spread[b]?.[b] ?? 1))
  const tests = all.filter(
    (one, k) => !all.slice(0, k).some((other) => Math.abs(together(one.i, other.i)) > sameTest),
  ).length
  const limit = normalQuantile(1 - risk / tests / 2)
  const worst = all.reduce((a, b) => (Math.abs(b.w) > Math.abs(a.w) ? b : a))
  if (Math.abs(worst.w) <= limit) return { limit, risk, alike: [] }
  const alike = all.filter((one) => {
    if (one === worst) return false
    const r = Math.abs(together(one.i, worst.i))
    return (
      r > sameTest ||
      Math.abs(worst.w) - Math.abs(one.w) <= sureOf95 * Math.sqrt(2 * Math.max(0, 1 - r))
    )
  })
  return { limit, risk, worst, alike }
}

/** The equations of all sets that are used, and which value each is. */
function numbered(coupling: Coupling): {
  rows: { set: number; index: number; sweep: boolean }[]
  equations: Equation[]
} {
  const rows: { set: number; index: number; sweep: boolean }[] = []
  const equations = coupling.found.flatMap((set, s) => {
    if (!set.used) return []
    const own = equationsOf(set, coupling)
    rows.push(...own.map((_, index) => ({ set: s, index, sweep: set.kind !== 'line' })))
    return own
  })
  return { rows, equations }
}

/**
 * Cofactors of the residuals, each in its own uncertainty: the identity less what the four numbers of the line and the
 * zero of each sweep take out of it.
 */
function residualSpread(
  equations: readonly Equation[],
  rows: readonly { set: number; sweep: boolean }[],
): number[][] {
  const count = (set: number) => rows.filter((row) => row.set === set).length
  const columns = [0, 1, 2, 3].map((k) =>
    equations.map(({ coefficients, weight }) => (coefficients[k] ?? 0) * weight),
  )
  const scaled = columns.map((column) => {
    const norm = Math.hypot(...column) || 1
    return column.map((value) => value / norm)
  })
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
  return rows.map((row, i) => {
    const unit = scaled.map((column) => column[i] ?? 0)
    const by = solveSymmetric(
      scaled.map((a) => scaled.map((b) => dot(a, b))),
      unit,
    )
    return rows.map((other, j) => {
      const fitted = scaled.reduce((sum, column, k) => sum + (by[k] ?? 0) * (column[j] ?? 0), 0)
      const zero = row.sweep && other.set === row.set ? 1 / count(row.set) : 0
      return (i === j ? 1 : 0) - fitted - zero
    })
  })
}
