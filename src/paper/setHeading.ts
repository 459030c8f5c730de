import { setName } from '../language/readingSets'
import { capital } from '../language/names'
import type { ReadingSet, Train } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import type { Block } from './page'

/** Over a set of readings: what it is, and the unit of its values where they have no words of their own. */
export const setHeading = (train: Train, set: ReadingSet, index: number): Block => ({
  kind: 'heading',
  text: capital(setName(train, set, index)),
  aside: set.kind === 'line' ? '' : `in ${fineSign[train.units.fine]}`,
})
