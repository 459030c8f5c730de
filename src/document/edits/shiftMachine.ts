import { tidy } from '../../language/tidy'
import type { CouplingDocument, ReadingSetDocument, TrainDocument } from '../schema'
import { millimetresPer } from '../../mechanics/units'
import { couplingBetween, machineName, numberAt, saidBody } from './bodies'
import { hotChecksWith, isOf, withPlaces, withSets } from './hotCheckEdits'
import type { NamedEdit } from './machines'

/**
 * How far a machine may be moved along the train before one of its flex planes would meet its neighbour's,
 * in the document's length unit, from and to; the plane of a coupling with a single one goes along and stops nothing.
 */
export function shiftRoom(document: TrainDocument, index: number): readonly [number, number] {
  const { before, after } = beside(document, index)
  const free = (coupling: CouplingDocument | undefined, otherwise: number): number => {
    const p = numberAt(coupling, ['left', 'plane'])
    const q = numberAt(coupling, ['right', 'plane'])
    if (p === undefined || q === undefined || p === q) return otherwise
    // a spacer never shrinks to nothing: it would become a coupling with a single plane
    return Math.max(0, q - p - shiftStep(document))
  }
  return [-free(before, Infinity), free(after, Infinity)]
}

/**
 * A machine moved along the train by a length of the document: its feet, nozzles and growth points, its own
 * flex planes (the one plane of a coupling without spacer), the places of dials that ride on its shaft, and
 * the places of lines measured between two planes, which keep their place between them.
 * @param by document's length unit, + to the right
 */
export function shiftMachine(document: TrainDocument, index: number, by: number): NamedEdit {
  const machine = document.machines[index]
  const [least, most] = shiftRoom(document, index)
  const length = Math.min(Math.max(by, least), most)
  if (!machine || length === 0) return { document, name: '' }
  const at = (x: number): number => (Number.isFinite(x) ? tidy(x + length) : x)
  const { before, after } = beside(document, index)
  return {
    document: {
      ...document,
      machines: document.machines.map((one, i) =>
        i !== index
          ? one
          : {
              ...one,
              feet: one.feet.map((foot) => ({ ...foot, x: at(foot.x) })),
              ...(one.restraints && {
                restraints: one.restraints.map((point) => ({ ...point, x: at(point.x) })),
              }),
              ...(one.growth && {
                growth: Object.fromEntries(
                  Object.entries(one.growth).map(([state, points]) => [
                    state,
                    points.map((point) => ({ ...point, at: at(point.at) })),
                  ]),
                ),
              }),
            },
      ),
      couplings: document.couplings.map((coupling) =>
        coupling === before
          ? carried(coupling, 'right', at)
          : coupling === after
            ? carried(coupling, 'left', at)
            : coupling,
      ),
      ...hotChecksWith(document, {
        coupling: (one) =>
          isOf(one, before)
            ? withSets(one, (set) => carriedSet(before, 'right', at, set))
            : isOf(one, after)
              ? withSets(one, (set) => carriedSet(after, 'left', at, set))
              : one,
        moved: (one) => (one.machine === machine.id ? withPlaces(one, at) : one),
      }),
      ...(document.surveys && {
        surveys: document.surveys.map((survey) => ({
          ...survey,
          points: survey.points.map((point) =>
            point.machine === machine.id ? { ...point, x: at(point.x) } : point,
          ),
        })),
      }),
    },
    name: shiftWords(document, index, length),
  }
}

/**
 * The name of such a move, in the past tense.
 * @param by document's length unit, + to the right
 */
export const shiftWords = (document: TrainDocument, index: number, by: number): string =>
  `moved ${saidBody(machineName(document, index))} ${tidy(Math.abs(by))} ${document.units.length} ${
    by < 0 ? 'left' : 'right'
  } along the train, with its feet, nozzles, growth points, flex planes and dials`

/** Lengths to which a dragged machine snaps, in the document's length unit: whole mm, tenths of an inch. */
export const shiftStep = (document: TrainDocument): number =>
  millimetresPer[document.units.length] === 1 ? 1 : 0.1

function beside(document: TrainDocument, index: number) {
  const { machines } = document
  const id = machines[index]?.id
  return {
    before: couplingBetween(document, machines[index - 1]?.id, id),
    after: couplingBetween(document, id, machines[index + 1]?.id),
  }
}

/** A coupling whose machine at one end is moved. */
function carried(
  coupling: CouplingDocument,
  end: 'left' | 'right',
  at: (x: number) => number,
): CouplingDocument {
  const other = end === 'left' ? 'right' : 'left'
  const plane = coupling[end].plane
  const single = coupling.left.plane === coupling.right.plane
  const found = coupling.found.map((set) => carriedSet(coupling, end, at, set))
  return {
    ...coupling,
    [end]: { ...coupling[end], plane: at(plane) },
    ...(single && { [other]: { ...coupling[other], plane: at(plane) } }),
    found,
  }
}

/** A dial that rides on the moved shaft goes along; a line measured between the planes keeps its place between them. */
function carriedSet(
  coupling: CouplingDocument | undefined,
  end: 'left' | 'right',
  at: (x: number) => number,
  set: ReadingSetDocument,
): ReadingSetDocument {
  if (!coupling) return set
  if (set.kind === 'rim') return set.rides === end ? { ...set, at: at(set.at) } : set
  if (set.kind !== 'line') return set
  const [p, q] = [coupling.left.plane, coupling.right.plane]
  const single = p === q
  const along = single ? 1 : Math.min(1, Math.max(0, (set.at - p) / (q - p)))
  const part = single ? 1 : end === 'right' ? along : 1 - along
  const plane = coupling[end].plane
  return { ...set, at: tidy(set.at + part * (at(plane) - plane)) }
}
