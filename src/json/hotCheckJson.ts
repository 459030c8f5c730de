import type { HotCheckAnswer } from '../engine/fieldwork/hotCheck/answer'
import type { DocumentUnits } from '../mechanics/units'
import { line, totals } from './planJson'
import { written } from './written'

/** What hot checks tell, in the document's units. */
export const hotChecksJson = (
  answers: readonly HotCheckAnswer[],
  units: DocumentUnits,
): HotCheckAnswer[] =>
  answers.map((answer) =>
    written<HotCheckAnswer>(
      answer,
      {
        couplings: {
          cooling: { time: 'plain', between: 'plain', fits: squares },
          times: { after: 'plain', ...line },
          running: { ...line, u: line },
          expected: line,
          apart: { ...line, u: line },
          share: { running: 'plain', low: 'plain', high: 'plain', expected: 'plain' },
        },
        machines: {
          rows: { x: 'length', entered: 'fine', found: 'fine', u: 'fine', sigmas: 'plain' },
        },
        agree: squares,
        growth: 'as it is',
        trim: {
          share: 'plain',
          band: 'plain',
          plan: { total: totals, worstShare: 'plain', floor: 'plain' },
        },
      },
      units,
    ),
  )

const squares = { chi2: 'plain', dof: 'as it is', limit: 'plain' } as const
