import type { Outage } from './outage'
import type { Coupling, Train } from './train'

/** When within an outage: as the train was opened, and as it was closed. */
export type OutageTime = 'found' | 'left'

/** A coupling as an outage read it; undefined where it did not. */
export function couplingAt(
  coupling: Coupling,
  outage: Outage,
  time: OutageTime,
): Coupling | undefined {
  const own = outage.couplings.find((one) => one.coupling === coupling.id)
  const found = own?.[time]
  if (!own || !found) return undefined
  const { p, q, place } = own
  return { ...coupling, place, p, q, mid: (p + q) / 2, found }
}

/** The train as an outage read it, by dials alone; undefined where a coupling was not read then. */
export function trainAt(train: Train, outage: Outage, time: OutageTime): Train | undefined {
  const couplings = train.couplings.map((coupling) => couplingAt(coupling, outage, time))
  return couplings.every((one) => one !== undefined)
    ? { ...train, surveys: [], couplings }
    : undefined
}
