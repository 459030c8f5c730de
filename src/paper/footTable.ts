import { footTable, type FootTableRow } from '../scene/footTable'
import { fittedToWords } from './columnWidths'
import type { Drawn } from './job'
import type { Block } from './page'

/** Every foot that is worked on, a line each: what to do there, what is left afterwards, in which steps. */
export function footTableBlocks({ train, answer, instructions }: Drawn): Block[] {
  if (answer.status !== 'planned') return []
  const rows = footTable(train, answer, instructions).flatMap(({ name, along, rows: feet }) =>
    feet.map((row, i) => [
      i === 0 ? name : ' ',
      row.foot,
      row.shim,
      along === undefined ? row.slide : `${row.slide}; ${along}`,
      left(row),
      row.steps.map(({ number }) => String(number)).join(', ') || ' ',
    ]),
  )
  if (rows.length === 0) return []
  return [
    { kind: 'heading', text: 'Every foot', aside: 'fixed machines are not touched' },
    fittedToWords({
      kind: 'table',
      columns: [
        { head: 'machine', width: 2.6 },
        { head: 'foot', width: 1.7 },
        { head: 'shims', width: 2.7 },
        { head: 'slide', width: 5 },
        { head: 'left at bolt; pack', width: 3.6 },
        { head: 'steps', width: 1.2 },
      ],
      rows,
    }),
  ]
}

const left = ({ room = 'not entered', pack, bound }: FootTableRow): string =>
  [room, ...(pack === undefined ? [] : [pack]), ...bound].join('; ')
