import type { Micrometres } from '../../../mechanics/units'
import type { RemedyContext } from './candidate'
import { fieldAt, type FieldChange } from './change'
import { raisedReadings } from './raisedReadings'
import { fineStep } from './sizes'

/** Plates count as part of the packs on them, and stay: minimum and maximum rise with the pack. */
export function plateChanges(
  { train, document }: RemedyContext,
  plates: ReadonlyMap<number, Micrometres>,
  onto: ReadonlyMap<number, Micrometres>,
): FieldChange[] {
  const field = (at: string, to: number): FieldChange => ({ at, from: fieldAt(document, at), to })
  const lifts = new Map([...plates, ...onto])
  const bodies = [...lifts].flatMap(([m, rise]) => {
    const body = train.machines[m]
    if (!body || rise === 0) return []
    const grown = (place: string, which: 'now' | 'min' | 'max', value: number | undefined) =>
      value === undefined ? [] : [field(`${place}.pack.${which}`, fineStep(train, value + rise))]
    return [
      ...body.feet.flatMap(({ place, pack }) => {
        if (!pack) return []
        const stands = plates.has(m) && pack.now >= pack.min
        return [
          ...grown(place, 'now', pack.now),
          ...(stands ? grown(place, 'min', pack.min) : []),
          ...(plates.has(m) ? grown(place, 'max', pack.max) : []),
        ]
      }),
      ...body.restraints.flatMap(({ place, rise: range }) =>
        range
          ? [
              field(`${place}.rise[0]`, fineStep(train, range[0] - rise)),
              field(`${place}.rise[1]`, fineStep(train, range[1] - rise)),
            ]
          : [],
      ),
    ]
  })
  const readings = train.couplings.flatMap((coupling) =>
    raisedReadings(
      document,
      train,
      coupling,
      (lifts.get(coupling.right) ?? 0) - (lifts.get(coupling.left) ?? 0),
    ),
  )
  return [...bodies, ...readings]
}
