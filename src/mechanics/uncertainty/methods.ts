import { choleskyOf, solveLower } from '../cholesky'
import { asFound } from '../readings/asFound'
import type { Misalignment } from '../readings/equation'
import { readingSystem } from '../readings/system'
import type { Coupling, ReadingSet } from '../train'
import { readingErrors } from './readingErrors'

/** Sets of one coupling that are read in one way and give its line, or its slope, by themselves. */
export interface Method {
  readonly kind: 'rims' | 'faces' | 'faces at the spacer' | 'line'
  /** Indices in `found`. */
  readonly sets: readonly number[]
  readonly line: Misalignment
  /** Covariance of `[y, sy, z, sz]` (um and mrad): readings, places, sag. */
  readonly covariance: readonly (readonly number[])[]
  /** True where offsets are no part of what it reads. */
  readonly slopeAlone: boolean
}

/** Two methods on one coupling. */
export interface MethodsCompared {
  readonly a: Method
  readonly b: Method
  /** The second less the first; offsets 0 where one of them has none. */
  readonly difference: Misalignment
  /** Its length in its own uncertainty, squared. */
  readonly squares: number
  /** What chance passes once in twenty. */
  readonly limit: number
  readonly agree: boolean
}

/** Chi-square that chance passes once in twenty, for two and for four numbers (table value). */
const onceInTwenty = { slope: 5.991, line: 9.488 } as const

/** Every method that gives a line or a slope by itself, from the sets that are used. */
function methodsOf(coupling: Coupling): Method[] {
  const { found } = coupling
  const of = (...kinds: ReadingSet['kind'][]) =>
    found.flatMap((set, i) => (set.used && kinds.includes(set.kind) ? [i] : []))
  const groups = [
    { kind: 'rims', sets: of('rim') },
    { kind: 'faces', sets: of('face', 'gap') },
    { kind: 'faces at the spacer', sets: of('spool') },
    ...of('line').map((set) => ({ kind: 'line' as const, sets: [set] })),
  ] as const
  return groups.flatMap(({ kind, sets }) => method(coupling, kind, sets) ?? [])
}

/** Every two methods beside each other: once in twenty they are said to differ where both are sound. */
export function comparedMethods(coupling: Coupling): MethodsCompared[] {
  const methods = methodsOf(coupling)
  return methods.flatMap((a, i) => methods.slice(i + 1).map((b) => compared(a, b)))
}

function method(
  coupling: Coupling,
  kind: Method['kind'],
  sets: readonly number[],
): Method | undefined {
  if (sets.length === 0) return undefined
  const slopeAlone = kind === 'faces'
  const own = coupling.found.filter((_, i) => sets.includes(i))
  const found = slopeAlone ? [...own, offsetsOfNothing(coupling)] : own
  const alone = { ...coupling, found }
  if (readingSystem(alone).open.length > 0) return undefined
  const { line, covariance } = asFound(alone)
  const columns = readingErrors(alone, 0, { line, covariance }).map(({ effects }) => {
    const d = effects[0]?.by.misalignment
    return d ? [d.y, d.sy, d.z, d.sz] : [0, 0, 0, 0]
  })
  return {
    kind,
    sets,
    line,
    covariance: [0, 1, 2, 3].map((i) =>
      [0, 1, 2, 3].map((j) =>
        columns.reduce((sum, column) => sum + (column[i] ?? 0) * (column[j] ?? 0), 0),
      ),
    ),
    slopeAlone,
  }
}

/** Faces read no offset: any will do to make their slope a line. */
const offsetsOfNothing = ({ place, mid }: Coupling): ReadingSet => ({
  kind: 'line',
  place,
  used: true,
  at: mid,
  offset: { y: 0, z: 0 },
  slope: {},
  u: 1,
  uGiven: true,
  uSlope: 1,
  uSlopeGiven: true,
})

/** The difference against its covariance, which is the sum of both (JCGM 100, 5.1.2): a chi-square where both are sound. */
function compared(a: Method, b: Method): MethodsCompared {
  const slope = a.slopeAlone || b.slopeAlone
  const parts = slope ? ([1, 3] as const) : ([0, 1, 2, 3] as const)
  const numbers = ({ line: { y, sy, z, sz } }: Method) => [y, sy, z, sz]
  const by = numbers(b).map((value, k) => value - (numbers(a)[k] ?? 0))
  const lower = choleskyOf(
    parts.map((i) => parts.map((j) => (a.covariance[i]?.[j] ?? 0) + (b.covariance[i]?.[j] ?? 0))),
  )
  const white = solveLower(
    lower,
    parts.map((k) => by[k] ?? 0),
  )
  const squares = white.reduce((sum, value) => sum + value * value, 0)
  const limit = slope ? onceInTwenty.slope : onceInTwenty.line
  const [y = 0, sy = 0, z = 0, sz = 0] = by
  return {
    a,
    b,
    difference: slope ? { y: 0, sy, z: 0, sz } : { y, sy, z, sz },
    squares,
    limit,
    agree: squares <= limit,
  }
}
