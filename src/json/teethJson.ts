import type { StandingAnswer } from '../engine/plan/answer'
import type { TeethAnswer, TeethFigures } from '../engine/plan/teethAnswer'
import type { DocumentUnits } from '../mechanics/units'
import { written, type MeasuresOf } from './written'

const figures: MeasuresOf<TeethFigures> = {
  angle: { y: 'slope', z: 'slope' },
  size: 'slope',
  sliding: 'sliding',
}

const teethMeasures: MeasuresOf<TeethAnswer[]> = {
  least: 'slope',
  limit: 'sliding',
  asFound: figures,
  planned: figures,
}

/** How teeth run, in the document's units; nothing where no coupling has teeth. */
export const teethJson = (
  { teeth }: Pick<StandingAnswer, 'teeth'>,
  units: DocumentUnits,
): Pick<StandingAnswer, 'teeth'> => (teeth ? { teeth: written(teeth, teethMeasures, units) } : {})
