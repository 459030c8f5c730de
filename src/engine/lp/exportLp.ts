import type { ExportedProgram, ExportedRow } from './exportProgram'

/** Longest line written; readers are only bound to take 560 characters. */
const lineLength = 100

/** Writes a program in CPLEX LP format. Numbers carry every digit, so nothing is lost on the way. */
export function exportLp(program: ExportedProgram): string {
  const cost = program.columns.flatMap(({ name, cost }) =>
    cost === 0 ? [] : [[name, cost] as const],
  )
  const nothing = program.columns.slice(0, 1).map(({ name }) => [name, 0] as const)
  return [
    ...[program.title, ...program.notes].map(comment),
    '',
    'Minimize',
    ...wrapped('cost:', form(cost.length > 0 ? cost : nothing)),
    '',
    'Subject To',
    ...program.groups.flatMap(({ note, rows }) => [
      comment(note),
      ...rows.flatMap((row) => wrapped(`${row.name}:`, [...form(row.terms), ...bound(row)])),
    ]),
    '',
    'Bounds',
    ...program.columns.flatMap(boundsOf),
    '',
    'End',
    '',
  ].join('\n')
}

/** A comment on one line, whatever the text holds. */
const comment = (text: string): string =>
  `\\ ${text
    .replace(/[\s\p{C}]+/gu, ' ')
    .trim()
    .slice(0, 250)}`

const bound = ({ sense, rhs }: ExportedRow): string[] => [`${sense} ${rhs}`]

const form = (terms: readonly (readonly [name: string, coefficient: number])[]): string[] =>
  terms.map(([name, coefficient]) =>
    coefficient < 0 ? `- ${-coefficient} ${name}` : `+ ${coefficient} ${name}`,
  )

function boundsOf({ name, lower, upper }: ExportedProgram['columns'][number]): string[] {
  if (lower === -Infinity && upper === Infinity) return [` ${name} free`]
  if (lower === 0 && upper === Infinity) return []
  const low = lower === -Infinity ? '-inf' : String(lower)
  return upper === Infinity ? [` ${name} >= ${low}`] : [` ${low} <= ${name} <= ${upper}`]
}

function wrapped(head: string, parts: readonly string[]): string[] {
  const lines = [` ${head}`]
  for (const part of parts) {
    const line = lines.at(-1) ?? ''
    if (line.length + part.length + 1 > lineLength) lines.push(`   ${part}`)
    else lines[lines.length - 1] = `${line} ${part}`
  }
  return lines
}
