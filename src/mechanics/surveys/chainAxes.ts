import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import type { Millimetres } from '../units'
import type { SurveyRow } from './rows'

/** What one standard deviation of each independent error does to the line of each coupling: lists of `[y, sy, z, sz]`. */
export type ChainErrors = readonly (readonly (readonly number[])[])[]

/** The axis of a machine against that of the first one, as the couplings between them tell it. */
interface ChainAxis {
  /** Where its numbers hold. */
  readonly at: Millimetres
  /** `[y, sy, z, sz]` there (um, mrad). */
  readonly line: readonly number[]
  /** Of these four. */
  readonly covariance: readonly (readonly number[])[]
}

/**
 * The axes of all machines, from the first on: each lies as the one before it carried along x to the mid-span of the
 * coupling between them, and that coupling's line added; the errors of couplings are independent (JCGM 100, 5.1.2). It
 * takes as many steps as there are couplings, where sums over all of them for each place take the product.
 */
export function chainAxes(
  { couplings, machines }: Pick<Train, 'couplings' | 'machines'>,
  lines: readonly Misalignment[],
  errors: ChainErrors,
): ChainAxis[] {
  const axes: ChainAxis[] = machines.map(() => ({
    at: couplings[0]?.mid ?? 0,
    line: [0, 0, 0, 0],
    covariance: [0, 1, 2, 3].map(() => [0, 0, 0, 0]),
  }))
  for (const c of fromTheFirst(couplings)) {
    const { left, right, mid } = couplings[c] ?? { left: -1, right: -1, mid: 0 }
    const before = axes[left]
    const line = lines[c]
    if (!before || !line) continue
    const along = mid - before.at
    const [y, sy, z, sz] = carried(before.line, along)
    const across = before.covariance.map((row) => carried(row, along))
    const turned = [0, 1, 2, 3].map((i) =>
      carried(
        across.map((row) => row[i] ?? 0),
        along,
      ),
    )
    axes[right] = {
      at: mid,
      line: [y + line.y, sy + line.sy, z + line.z, sz + line.sz],
      covariance: covarianceOf(errors[c] ?? []).map((row, i) =>
        row.map((own, j) => own + (turned[i]?.[j] ?? 0)),
      ),
    }
  }
  return axes
}

/** Couplings by their place along the train, in whatever order a file lists them: indices, the first one first. */
export const fromTheFirst = (couplings: Train['couplings']): number[] =>
  couplings.map((_, c) => c).sort((a, b) => (couplings[a]?.right ?? 0) - (couplings[b]?.right ?? 0))

/** A line `[y, sy, z, sz]` told at another place along the train. */
const carried = (
  [y = 0, sy = 0, z = 0, sz = 0]: readonly number[],
  along: Millimetres,
): [number, number, number, number] => [y + sy * along, sy, z + sz * along, sz]

/** What the couplings say of a number that was surveyed, but for the line of the survey itself (um). */
export const saidOf = (axes: readonly ChainAxis[], { machine, way, x }: SurveyRow): number => {
  const axis = axes[machine]
  if (!axis) return 0
  const [y, , z] = carried(axis.line, x - axis.at)
  return way === 'y' ? y : z
}

/** Covariance of what the couplings say of two such numbers: that of the machine nearer to the first, carried to both places. */
export function sharedBy(axes: readonly ChainAxis[], one: SurveyRow, other: SurveyRow): number {
  const axis = axes[Math.min(one.machine, other.machine)]
  if (!axis) return 0
  const [i, j] = [one.way === 'y' ? 0 : 2, other.way === 'y' ? 0 : 2]
  const [a, b] = [one.x - axis.at, other.x - axis.at]
  const of = (row: number, column: number): number => axis.covariance[row]?.[column] ?? 0
  return of(i, j) + b * of(i, j + 1) + a * (of(i + 1, j) + b * of(i + 1, j + 1))
}

/** Covariance that the errors of one coupling make, of `[y, sy, z, sz]`. */
export const covarianceOf = (columns: readonly (readonly number[])[]): number[][] =>
  [0, 1, 2, 3].map((i) =>
    [0, 1, 2, 3].map((j) =>
      columns.reduce((sum, column) => sum + (column[i] ?? 0) * (column[j] ?? 0), 0),
    ),
  )
