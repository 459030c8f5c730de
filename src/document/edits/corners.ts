import type { TrainDocument } from '../schema'
import { corners } from '../../mechanics/train'
import { towardSide } from '../../language/sides'

/** The corners of a foot in the order in which its gaps are given: "left end, toward the river". */
export const cornersOf = (document: TrainDocument): string[] =>
  corners.map(({ end, side }) => `${end} end, ${towardSide(document, side === 'three' ? 1 : -1)}`)
