import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { frameOf } from '../frame'
import type { Program } from '../program'
import { displacements } from './displacement'
import { bandRows } from './footBands'
import { holeCircles } from './hole'
import { restraintRows } from './restraint'
import { tiltRows } from './tilt'
import { tolerances } from './tolerance'

/** Writes down every limit, tolerance and displacement of a train, with the choice of held bodies it carries. */
export function buildProgram(train: Train, found: readonly AsFound[]): Program {
  const frame = frameOf(train, found)
  const moved = displacements(frame)
  const tolerance = tolerances(frame)
  return {
    columns: [...frame.columns, ...moved.columns],
    firstMove: frame.columns.length,
    limits: [...bandRows(frame), ...tiltRows(frame), ...restraintRows(frame), ...tolerance.rows],
    displacements: moved.rows,
    circles: [...holeCircles(frame), ...tolerance.circles],
  }
}
