import { ExportNames } from './exportNames'
import type { ExportedProgram } from './exportProgram'

const senses = { '<=': 'L', '>=': 'G', '=': 'E' } as const

/** Writes a program in free MPS format, minimising row "cost". Numbers carry every digit. */
export function exportMps(program: ExportedProgram): string {
  const rows = program.groups.flatMap((group) => group.rows)
  const entries = new Map(program.columns.map(({ name }) => [name, [] as string[]]))
  for (const row of rows)
    for (const [column, coefficient] of row.terms)
      entries.get(column)?.push(` ${column} ${row.name} ${coefficient}`)
  return [
    ...[program.title, ...program.notes].map(comment),
    `NAME ${new ExportNames().take(program.title)}`,
    'ROWS',
    ' N cost',
    ...rows.map(({ name, sense }) => ` ${senses[sense]} ${name}`),
    'COLUMNS',
    ...program.columns.flatMap(({ name, cost }) => {
      const inRows = entries.get(name) ?? []
      // A column without any entry would be unknown to the bounds.
      return cost === 0 && inRows.length > 0 ? inRows : [` ${name} cost ${cost}`, ...inRows]
    }),
    'RHS',
    ...rows.flatMap(({ name, rhs }) => (rhs === 0 ? [] : [` RHS ${name} ${rhs}`])),
    'BOUNDS',
    ...program.columns.flatMap(boundsOf),
    'ENDATA',
    '',
  ].join('\n')
}

const comment = (text: string): string =>
  `* ${text
    .replace(/[\s\p{C}]+/gu, ' ')
    .trim()
    .slice(0, 250)}`

function boundsOf({ name, lower, upper }: ExportedProgram['columns'][number]): string[] {
  if (lower === -Infinity && upper === Infinity) return [` FR BND ${name}`]
  return [
    ...(lower === -Infinity ? [` MI BND ${name}`] : []),
    ...(lower !== 0 && lower !== -Infinity ? [` LO BND ${name} ${lower}`] : []),
    ...(upper === Infinity ? [] : [` UP BND ${name} ${upper}`]),
  ]
}
