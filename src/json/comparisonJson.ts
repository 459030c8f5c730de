import type { DocumentUnits } from '../mechanics/units'
import type { Comparison } from '../engine/fieldwork/loop/compare'
import { line } from './planJson'
import { written } from './written'

/** Expected beside measured readings in the document's units, as the record keeps them. */
export const comparisonJson = (comparison: Comparison, units: DocumentUnits): Comparison =>
  written(
    comparison,
    {
      couplings: {
        sets: {
          set: 'as it is',
          rows: { hour: 'as it is', expected: 'fine', measured: 'fine', difference: 'fine' },
          line,
        },
        line,
        meaning: 'as it is',
      },
      meaning: 'as it is',
    },
    units,
  )
