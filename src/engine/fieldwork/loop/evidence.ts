import { covarianceOfSums } from '../../../mechanics/covarianceOfSums'
import { outward } from '../../../mechanics/readings/clock'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { readingGains, type Gains } from '../../../mechanics/readings/gains'
import type { Train } from '../../../mechanics/train'
import type { CouplingMotion } from '../../../mechanics/misalignment/shares'
import { tol } from '../../../mechanics/tolerances'
import type { ExpectedAnswer } from '../../plan/answer'
import { choleskyOf, solveLower } from '../../../mechanics/cholesky'

/** One value that was read again, beside what was expected of it (um, mrad). */
export interface EvidenceRow {
  readonly coupling: number
  readonly set: number
  /** Of a sweep. */
  readonly hour?: number
  /** How far the bracket of a sweep lifts or sinks the stem at that hour, a part of its sag. */
  readonly sag: number
  /** What the value gains from the misalignment `[y, sy, z, sz]`. */
  readonly gains: Gains
  readonly expected: number
  readonly difference: number
  readonly u: number
}

/** Everything that was read again, with how the errors of its values hang together. */
export interface Evidence {
  readonly rows: readonly EvidenceRow[]
  /** Columns of what a dial set anew may have for a zero, one a sweep. */
  readonly zeros: readonly (readonly number[])[]
  /** Lower triangle whose product with its transpose is the covariance of the differences. */
  readonly lower: readonly (readonly number[])[]
}

/**
 * Differences of what was read from what was expected, with their covariance: that of the lines found before, carried
 * to each reading; of the work in between; and each reading's own.
 */
export function evidenceOf(
  train: Train,
  found: readonly AsFound[],
  errors: readonly (readonly CouplingMotion[])[],
  expected: readonly ExpectedAnswer[],
  measured: readonly ExpectedAnswer[],
): Evidence {
  const rows = measured.flatMap((entry) => rowsOf(train, expected, entry))
  const covariance = rows.map((a) =>
    rows.map((b) => {
      const own = a === b ? a.u * a.u : 0
      const work = (errors[a.coupling] ?? []).reduce((sum, error, e) => {
        const other = errors[b.coupling]?.[e]
        return other ? sum + gainedBy(a, error) * gainedBy(b, other) : sum
      }, 0)
      const was = a.coupling === b.coupling ? found[a.coupling] : undefined
      const line = was?.again ?? was?.covariance
      const lines = line ? covarianceOfSums(a.gains, line, b.gains) : 0
      return own + work + lines
    }),
  )
  const sweeps = [...new Set(rows.flatMap((row) => (row.hour === undefined ? [] : [keyOf(row)])))]
  return {
    rows,
    zeros: sweeps.map((key) =>
      rows.map((row) => (row.hour !== undefined && keyOf(row) === key ? 1 : 0)),
    ),
    lower: choleskyOf(covariance),
  }
}

const keyOf = ({ coupling, set }: EvidenceRow): string => `${coupling} ${set}`

/** What a change of a coupling adds to a reading. */
export const gainedBy = (
  { gains: [y, sy, z, sz] }: Pick<EvidenceRow, 'gains'>,
  { misalignment: d }: Pick<CouplingMotion, 'misalignment'>,
): number => y * d.y + sy * d.sy + z * d.z + sz * d.sz

function rowsOf(
  train: Train,
  expected: readonly ExpectedAnswer[],
  entry: ExpectedAnswer,
): EvidenceRow[] {
  const c = train.couplings.findIndex(({ id }) => id === entry.coupling)
  const coupling = train.couplings[c]
  const set = coupling?.found[entry.set]
  const should = expected.find((one) => one.coupling === entry.coupling && one.set === entry.set)
  if (!coupling || !set || !should) return []
  const at = { coupling: c, set: entry.set }
  if (set.kind !== 'line') {
    if (!('readings' in entry) || !('readings' in should)) return []
    return entry.readings.flatMap(([hour, value]): EvidenceRow[] => {
      const told = should.readings.find((row) => Math.abs(row[0] - hour) < tol.dust)
      if (!told) return []
      return [
        {
          ...at,
          hour,
          sag: set.kind === 'gap' ? 0 : outward(hour).z,
          gains: readingGains(set, coupling, hour),
          expected: told[1],
          difference: value - told[1],
          u: set.u,
        },
      ]
    })
  }
  if (!('offset' in entry) || !('offset' in should)) return []
  const arm = set.at - coupling.mid
  const one = (gains: Gains, told: number, value: number, u: number): EvidenceRow => ({
    ...at,
    ...{ sag: 0, gains, expected: told, difference: value - told, u },
  })
  return [
    one([1, arm, 0, 0], should.offset.y, entry.offset.y, set.u),
    one([0, 0, 1, arm], should.offset.z, entry.offset.z, set.u),
    one([0, 1, 0, 0], should.slope.y, entry.slope.y, set.uSlope),
    one([0, 0, 0, 1], should.slope.z, entry.slope.z, set.uSlope),
  ]
}

/** A vector in units in which its errors are independent and all alike. */
export const whitened = ({ lower }: Evidence, values: readonly number[]): number[] =>
  solveLower(lower, values)
