import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { keptRooms, type KeptRooms } from '../../../mechanics/uncertainty/kept'
import { frameOf } from '../frame'
import type { Program } from '../program'
import { displacements } from './displacement'
import { bandRows } from './footBands'
import { holeCircles } from './hole'
import { leastAngleRows } from './leastAngle'
import { restraintRows } from './restraint'
import { tiltRows } from './tilt'
import { tolerances } from './tolerance'

/**
 * Writes down every limit, tolerance and displacement of a train, with the choice of held bodies it carries.
 * @param kept room kept free of the tolerances, where it is not that of the train as it is
 */
export function buildProgram(
  train: Train,
  found: readonly AsFound[],
  kept: KeptRooms | undefined = keptRooms(train),
): Program {
  const frame = frameOf(train, found)
  const moved = displacements(frame)
  const tolerance = tolerances(frame, kept)
  return {
    columns: [...frame.columns, ...moved.columns],
    firstMove: frame.columns.length,
    limits: [
      ...bandRows(frame),
      ...tiltRows(frame),
      ...restraintRows(frame),
      ...leastAngleRows(frame),
      ...tolerance.rows,
    ],
    displacements: moved.rows,
    circles: [...holeCircles(frame), ...tolerance.circles],
  }
}
