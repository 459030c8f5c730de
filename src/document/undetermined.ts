import { tol } from '../mechanics/tolerances'
import { couplingAt } from '../mechanics/outageTimes'
import { readAt } from '../mechanics/readAt'
import type { Coupling, Train } from '../mechanics/train'
import type { Refusal } from './refusal'
import { readingSystem } from '../mechanics/readings/system'

/** The same of the readings of every hot check that is used. */
export const hotUndetermined = (train: Train): Refusal[] =>
  train.hotChecks
    .filter(({ used }) => used)
    .flatMap(({ couplings }) =>
      couplings.flatMap(({ coupling, times }) => {
        const of = train.couplings[coupling]
        return of ? times.flatMap((time) => undetermined(readAt(of, time))) : []
      }),
    )

/** The same of what every outage read of a coupling that the train has. */
export const outagesUndetermined = (train: Train): Refusal[] =>
  train.outages.flatMap((outage) =>
    train.couplings.flatMap((coupling) =>
      (['found', 'left'] as const).flatMap((time) => {
        const at = couplingAt(coupling, outage, time)
        if (!at) return []
        return undetermined(at).map(({ at: where, why }) => ({
          at: where.replace(/\.found$/, `.${time}`),
          why,
        }))
      }),
    ),
  )

interface Way {
  readonly word: string
  readonly hours: string
}
const side: Way = { word: 'sideways', hours: '3 and 9' }
const rise: Way = { word: 'up and down', hours: '12 and 6' }

/** Refuses a coupling whose readings leave any of its four unknowns open, and says what would fix it. */
export function undetermined(coupling: Coupling): Refusal[] {
  const { svd, open, equations } = readingSystem(coupling)
  const at = `${coupling.place}.found`
  if (equations.length === 0)
    return [
      {
        at,
        why: `${coupling.found.length === 0 ? 'no readings' : 'no reading is used'}: give sets that fix offset and slope of ${coupling.name}, sideways and up and down`,
      },
    ]
  if (open.length === 0) return []
  const directions = open.map((k) => svd.right[k] ?? [])
  const touches = (k: number) => directions.some((v) => Math.abs(v[k] ?? 0) > tol.noticed)
  const mixed = open.length === 1 && (touches(0) || touches(1)) && (touches(2) || touches(3))
  if (mixed)
    return [
      {
        at,
        why: `the readings of ${coupling.name} fix sideways and up and down only together, not apart: read one more hour, at best the one opposite (12 and 6, or 3 and 9)`,
      },
    ]
  const words = [
    ...missing(side, touches(0), touches(1), rankOpen(directions, 0)),
    ...missing(rise, touches(2), touches(3), rankOpen(directions, 2)),
  ]
  return [{ at, why: `the readings of ${coupling.name} leave open ${words.join(', and ')}` }]
}

/** How many of the two unknowns that start at `first` are open. */
function rankOpen(directions: readonly (readonly number[])[], first: number): number {
  return directions.filter((v) => Math.hypot(v[first] ?? 0, v[first + 1] ?? 0) > 0.5).length
}

function missing(way: Way, offset: boolean, slope: boolean, count: number): string[] {
  if (!offset && !slope) return []
  const faceOrRim = `a face sweep at ${way.hours} o'clock, or a rim sweep at another plane`
  if (count > 1)
    return [
      `offset and slope ${way.word} (a rim sweep read at ${way.hours} o'clock, and ${faceOrRim}, would fix them)`,
    ]
  if (offset && slope)
    return [
      `the slope ${way.word}, known only together with the offset (${faceOrRim}, would fix it)`,
    ]
  return offset
    ? [`the offset ${way.word} (a rim sweep read at ${way.hours} o'clock would fix it)`]
    : [`the slope ${way.word} (${faceOrRim}, would fix it)`]
}
