import type { AxialAnswer, AxialRoom } from '../engine/plan/axialAnswer'
import type { DocumentUnits } from '../mechanics/units'
import { written, type MeasuresOf } from './written'

const room = {
  from: 'length',
  to: 'length',
  low: 'length',
  high: 'length',
  left: 'length',
} as const satisfies MeasuresOf<AxialRoom>

const measures: MeasuresOf<AxialAnswer> = {
  machines: {
    moves: { feet: 'fine', left: 'fine', right: 'fine' },
    grows: { left: 'fine', right: 'fine' },
  },
  couplings: {
    found: 'length',
    planned: 'length',
    want: 'length',
    tolerance: 'length',
    states: { gap: 'length', left: 'length', stretch: room, rotor: { ...room, centre: 'length' } },
  },
}

/** The train along its shafts in the document's units; nothing where no gap was entered. */
export const axialJson = (
  { axial }: { axial?: AxialAnswer },
  units: DocumentUnits,
): { axial?: AxialAnswer } => (axial ? { axial: written(axial, measures, units) } : {})
