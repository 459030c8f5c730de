import type { Micrometres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'

/** A limit with where it comes from; site procedure and the makers' drawings govern. */
export interface SourcedLimit {
  readonly value: Micrometres
  readonly source: string
}

/** How surely the source is known, as the catalogue of limits under shared/ says it. */
type Published = SourcedLimit & { readonly certainty: string }

/** The same values stand in shared/catalogues/limits.json; a test compares them. */
export const published = {
  softFoot: {
    metric: {
      value: 50,
      source: 'API RP 686, 2nd edition (2009), chapter 7, 5.4.4.1',
      certainty: 'secondary',
    },
    inch: {
      value: 50.8,
      source:
        'City of San Diego, Clean Water Program Guideline, section 11005 Machine Alignment, November 2000',
      certainty: 'read in a copy of the source',
    },
  },
  pipeStrain: {
    metric: { value: 50, source: 'API RP 686, chapter 6', certainty: 'secondary' },
    inch: { value: 50.8, source: 'API RP 686, chapter 6', certainty: 'secondary' },
  },
  closure: {
    metric: {
      value: 25.4,
      source: 'a training text without a name: 1 mil',
      certainty: 'read in a copy of the source; the trade says 0.02 to 0.03 mm',
    },
    inch: {
      value: 25.4,
      source: 'a training text without a name: 1 mil',
      certainty: 'read in a copy of the source; the trade says 0.02 to 0.03 mm',
    },
  },
} as const satisfies Record<string, Record<'metric' | 'inch', Published>>

/** A published limit in the system that the document's fine unit belongs to. */
export function publishedLimit(train: Train, what: keyof typeof published): SourcedLimit {
  const { value, source, certainty } =
    published[what][train.units.fine === 'mil' ? 'inch' : 'metric']
  return { value, source: `${source} (${certainty})` }
}
