import type { Fact } from './arithmetic'
import type { Block } from './page'
import type { Pencil } from './pencil'

/** The normal way for part of a turn: zero, up and side from readings that are no opposite pairs. */
export function sumsBlocks({ fine }: Pencil, { how }: Fact): Block[] {
  if (how.kind !== 'least squares') return []
  const { sums } = how
  const d = (value: number) => value.toFixed(4).replace('-', '\u2212')
  const term = (value: number) => (value < 0 ? `\u2212 ${d(-value)}` : `+ ${d(value)}`)
  return [
    {
      kind: 'text',
      look: 'plain',
      text: 'These hours are no pairs of opposite readings, so halving does not do: it takes least squares. Each reading, less sag times cos, should be zero + up times cos + side times sin; cos and sin are those of the hour, 30 degrees each from 12.',
    },
    {
      kind: 'table',
      columns: [
        { head: "o'clock", width: 1, align: 'right' },
        { head: 'reading', width: 1.3, align: 'right' },
        { head: 'less sag times cos', width: 1.5, align: 'right' },
        { head: 'cos', width: 1.2, align: 'right' },
        { head: 'sin', width: 1.2, align: 'right' },
        { head: 'that times cos', width: 1.4, align: 'right' },
        { head: 'that times sin', width: 1.4, align: 'right' },
      ],
      rows: [
        ...sums.rows.map(({ hour, reading, v, cos, sin }) => [
          String(hour),
          fine(reading),
          fine(v),
          d(cos),
          d(sin),
          fine(v * cos),
          fine(v * sin),
        ]),
        ['sum', ' ', fine(sums.v), d(sums.cos), d(sums.sin), fine(sums.vCos), fine(sums.vSin)],
      ],
    },
    {
      kind: 'list',
      look: 'dash',
      items: [
        `${sums.rows.length} zero ${term(sums.cos)} up ${term(sums.sin)} side = ${fine(sums.v)}`,
        `${d(sums.cos)} zero ${term(sums.cosCos)} up ${term(sums.cosSin)} side = ${fine(sums.vCos)}`,
        `${d(sums.sin)} zero ${term(sums.cosSin)} up ${term(sums.sinSin)} side = ${fine(sums.vSin)}`,
        `three equations, solved: zero ${fine(sums.zero)}, up ${fine(sums.up)}, side ${fine(sums.side)}`,
      ],
    },
  ]
}
