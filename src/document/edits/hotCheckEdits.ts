import type {
  CouplingDocument,
  HotCheckDocument,
  ReadingSetDocument,
  TrainDocument,
} from '../schema'

type HotCoupling = NonNullable<HotCheckDocument['couplings']>[number]
type Moved = NonNullable<HotCheckDocument['moved']>[number]

/** A hot check that no longer tells of the train as it is stays in the file and counts for nothing. */
export const hotChecksUnused = (
  { hotChecks }: TrainDocument,
  why: string,
): Pick<TrainDocument, 'hotChecks'> =>
  hotChecks
    ? {
        hotChecks: hotChecks.map((check) =>
          check.use === false ? check : { ...check, use: false, why },
        ),
      }
    : {}

/** Hot checks with every coupling and machine changed, or left out where it is gone; what has lost one counts for nothing. */
export function hotChecksWith(
  { hotChecks }: TrainDocument,
  change: {
    readonly coupling?: (one: HotCoupling) => HotCoupling | undefined
    readonly moved?: (one: Moved) => Moved | undefined
    readonly datum?: (id: string) => string | undefined
  },
  gone = '',
): Pick<TrainDocument, 'hotChecks'> {
  if (!hotChecks) return {}
  return {
    hotChecks: hotChecks.map((check) => {
      const couplings = check.couplings?.flatMap((one) => kept(one, change.coupling))
      const moved = check.moved?.flatMap((one) => kept(one, change.moved))
      const { datum, ...rest } = check
      const [base] = datum === undefined ? [] : kept(datum, change.datum)
      const lost =
        (couplings?.length ?? 0) + (moved?.length ?? 0) <
        (check.couplings?.length ?? 0) + (check.moved?.length ?? 0)
      return {
        ...rest,
        ...(base !== undefined && { datum: base }),
        ...(couplings && { couplings }),
        ...(moved && { moved }),
        ...(lost && check.use !== false && { use: false, why: gone }),
      }
    }),
  }
}

function kept<T>(one: T, change: ((one: T) => T | undefined) | undefined): T[] {
  const next = change ? change(one) : one
  return next === undefined ? [] : [next]
}

/** The reading sets of a coupling's times, changed alike. */
export const withSets = (
  one: HotCoupling,
  change: (set: ReadingSetDocument) => ReadingSetDocument,
): HotCoupling => ({
  ...one,
  times: one.times.map((time) => ({ ...time, found: time.found.map(change) })),
})

/** Points of a machine that was moved along the train. */
export const withPlaces = (one: Moved, at: (x: number) => number): Moved => ({
  ...one,
  points: one.points.map((point) => ({ ...point, at: at(point.at) })),
})

/** Whether a coupling is the one that a hot check names. */
export const isOf = (one: HotCoupling, coupling: CouplingDocument | undefined): boolean =>
  coupling !== undefined && one.coupling === coupling.id
