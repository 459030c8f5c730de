import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Train } from '../../../mechanics/train'

/** One thing that may have changed between two readings of a train, with what each amount of it adds to every line. */
export type Suspect = {
  /** A column for each amount that is open, over `[y, sy, z, sz]` of every coupling (um, mrad). */
  readonly columns: readonly (readonly number[])[]
} & (
  | { readonly kind: 'nothing' }
  /** A body stands elsewhere: `[ty, sy]` sideways, `[tz, sz]` up and down, or all four (um, mrad). */
  | { readonly kind: 'body'; readonly body: number; readonly way?: 'sideways' | 'up and down' }
  /** The readings of one coupling, then or now, say nothing. */
  | { readonly kind: 'readings'; readonly coupling: number }
  /** The base under all of it bends evenly: how much higher its middle lies over the ends (um). */
  | { readonly kind: 'base' }
)

/** What motions of all bodies add to the line of every coupling, `[y, sy, z, sz]` one after the other (um, mrad). */
const linesBy = (train: Train, motions: readonly Motion[]): number[] =>
  couplingMotions(train, motions).flatMap(({ misalignment: { y, sy, z, sz } }) => [y, sy, z, sz])

/** The same for a body alone, a column each for 1 um or mrad of `[ty, sy, tz, sz]`. */
export const bodyColumns = (train: Train, body: number): number[][] =>
  (['ty', 'sy', 'tz', 'sz'] as const).map((part) =>
    linesBy(
      train,
      train.bodies.map((_, i) => (i === body ? { ...noMotion, [part]: 1 } : noMotion)),
    ),
  )

/** Every single cause that is tried. */
export function suspectsOf(train: Train): Suspect[] {
  const count = 4 * train.couplings.length
  const bodies = train.bodies.flatMap((_, body): Suspect[] => {
    const columns = bodyColumns(train, body)
    return [
      { kind: 'body', body, way: 'sideways', columns: columns.slice(0, 2) },
      { kind: 'body', body, way: 'up and down', columns: columns.slice(2) },
      { kind: 'body', body, columns },
    ]
  })
  const readings = train.couplings.map((_, coupling): Suspect => ({
    kind: 'readings',
    coupling,
    columns: [0, 1, 2, 3].map((k) =>
      Array.from({ length: count }, (_one, i) => (i === 4 * coupling + k ? 1 : 0)),
    ),
  }))
  const bent = bentBase(train)
  return [
    { kind: 'nothing', columns: [] },
    ...bodies,
    ...readings,
    ...(bent ? [{ kind: 'base' as const, columns: [linesBy(train, bent)] }] : []),
  ]
}

/**
 * Motions of machines that ride on a base bent to a parabola, 1 um higher in the middle than a straight line from end to
 * end of the train: each as the chord between its outermost feet. Undefined for fewer than three machines: two on a bent base
 * lie as two of which one walked.
 */
function bentBase(train: Train): Motion[] | undefined {
  const xs = train.machines.flatMap(({ feet }) => feet.map(({ x }) => x))
  const [low, high] = [Math.min(...xs), Math.max(...xs)]
  const half = (high - low) / 2
  if (train.machines.length < 3 || !(half > 0)) return undefined
  const rise = (x: number) => 1 - ((x - (low + high) / 2) / half) ** 2
  return train.bodies.map((body, b): Motion => {
    const own = body.feet.map(({ x }) => x)
    if (b >= train.machines.length || own.length === 0) return noMotion
    const [left, right] = [Math.min(...own), Math.max(...own)]
    // slope of the chord, um a mm: a mrad lifts by 1 um a mm
    const sz = right > left ? (rise(right) - rise(left)) / (right - left) : 0
    return { ...noMotion, tz: rise(left) + sz * (body.x0 - left), sz }
  })
}
