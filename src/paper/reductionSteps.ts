import type { Coupling, ReadingSet } from '../mechanics/train'
import type { Fact } from './arithmetic'
import type { Pencil } from './pencil'

/** One line of arithmetic: what is done, and what comes out. */
export interface Step {
  readonly words: string
  readonly result: string
}

/** The steps from the readings of a set to where the right shaft's axis lies. */
export function reductionSteps(
  pencil: Pencil,
  coupling: Coupling,
  set: ReadingSet,
  fact: Fact,
): Step[] {
  return [...dialSteps(pencil, set, fact), ...axisSteps(pencil, coupling, set, fact)]
}

/** From the readings to the one number that the dial sees: halved, sag taken off. */
function dialSteps(pencil: Pencil, set: ReadingSet, { how, plane }: Fact): Step[] {
  const { fine } = pencil
  switch (how.kind) {
    case 'given':
      return []
    case 'opposite': {
      const [a, b] = how.readings
      return [
        { words: 'reading at 12; at 3', result: fine(a) },
        { words: 'reading at 6; at 9', result: fine(b) },
        { words: 'the first less the second', result: fine(a - b) },
        { words: 'half of it', result: fine((a - b) / 2) },
        ...sagStep(pencil, set, plane === 'up', (a - b) / 2, how.sag),
      ]
    }
    case 'one': {
      const raw = how.sees + how.sag
      return [
        { words: `reading at ${how.hour}`, result: fine(how.reading) },
        { words: 'mean of the two readings beside it, which is the zero', result: fine(how.mean) },
        { words: 'the first less the second', result: fine(how.reading - how.mean) },
        ...(how.hour === 6 || how.hour === 9
          ? [{ words: `at ${how.hour} the sign turns`, result: fine(raw) }]
          : []),
        ...sagStep(pencil, set, plane === 'up', raw, how.sag),
      ]
    }
    case 'least squares':
      return [{ words: 'from the three equations', result: fine(how.sees) }]
  }
}

/** Sag pushes the stem in at 12 and lets it out at 6, so it is taken off up and down, never sideways. */
function sagStep(
  { fine }: Pencil,
  set: ReadingSet,
  up: boolean,
  before: number,
  sag: number,
): Step[] {
  if (set.kind === 'gap' || set.kind === 'line') return []
  const words = `take off the sag, half of what the bar shows between 12 and 6`
  if (!up) return [{ words, result: `${fine(before)} (acts the same on both sides)` }]
  if (set.sagGiven) return [{ words, result: `less (${fine(sag)}) = ${fine(before - sag)}` }]
  return [{ words, result: `${fine(before)} (sag NOT ENTERED, taken as none)` }]
}

/** From what the dial sees to the right shaft's axis, with the sign of how the dial is rigged. */
function axisSteps(pencil: Pencil, coupling: Coupling, set: ReadingSet, fact: Fact): Step[] {
  const { fine, length, slope, slopeUnit, lengthUnit, stands } = pencil
  const axis: Step =
    fact.what === 'offset'
      ? {
          words: `so at x ${length(fact.x)} ${lengthUnit} the right axis is`,
          result: stands(fact.plane, fact.value),
        }
      : { words: 'so the slope of the right axis is', result: `${slope(fact.value)} ${slopeUnit}` }
  const sees = fact.how.kind === 'given' ? 0 : fact.how.sees
  const half = (diameter: number) =>
    `divided by half the diameter, ${length(diameter / 2)} ${lengthUnit}`
  const over = (diameter: number) => sees / (diameter / 2)
  switch (set.kind) {
    case 'line':
      return [axis]
    case 'rim':
      return [
        {
          words: `the stem rides the ${set.rides} shaft: the sign ${set.rides === 'left' ? 'turns' : 'stays'}`,
          result: fine(set.rides === 'left' ? -sees : sees),
        },
        axis,
      ]
    case 'face':
      return [
        { words: half(set.diameter), result: `${slope(over(set.diameter))} ${slopeUnit}` },
        ...(set.face === 'back'
          ? [
              {
                words: 'back of the face: the sign turns',
                result: `${slope(-over(set.diameter))} ${slopeUnit}`,
              },
            ]
          : []),
        axis,
      ]
    case 'gap':
      return [
        { words: half(set.diameter), result: `${slope(over(set.diameter))} ${slopeUnit}` },
        {
          words: 'a gap opens where the axis runs away from it: the sign turns',
          result: `${slope(-over(set.diameter))} ${slopeUnit}`,
        },
        axis,
      ]
    case 'spool': {
      const span = coupling.q - coupling.p
      const angle = over(set.diameter)
      return [
        { words: half(set.diameter), result: `${slope(angle)} ${slopeUnit}` },
        { words: `times the span, ${length(span)} ${lengthUnit}`, result: fine(angle * span) },
        ...(set.end === 'right'
          ? [{ words: 'at the right end the sign turns', result: fine(-angle * span) }]
          : []),
        axis,
      ]
    }
  }
}

/** Steps of one plane beside those of the other where they are the same steps. */
export const together = (a: readonly Step[], b: readonly Step[]): boolean =>
  a.length === b.length && a.every(({ words }, i) => words === b[i]?.words)
