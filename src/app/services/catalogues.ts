import limits from '../../../shared/catalogues/limits.json'
import materials from '../../../shared/catalogues/materials.json'
import tolerances from '../../../shared/catalogues/tolerances.json'
import { limitCatalogue, materialCatalogue, toleranceCatalogue } from '../../document/catalogues'

/** The published values that entry offers, each row with its source. */
export const catalogues = {
  tolerances: toleranceCatalogue.parse(tolerances),
  materials: materialCatalogue.parse(materials),
  limits: limitCatalogue.parse(limits),
}
