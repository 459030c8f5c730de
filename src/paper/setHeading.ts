import { setName } from '../language/readingSets'
import { capital } from '../language/names'
import type { ReadingSet, Train } from '../mechanics/train'
import type { Block } from './page'

/** Over a set of readings: what it is; the unit stands over its values. */
export const setHeading = (train: Train, set: ReadingSet, index: number): Block => ({
  kind: 'heading',
  text: capital(setName(train, set, index)),
})
