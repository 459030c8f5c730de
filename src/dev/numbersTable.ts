import { toleranceTable } from '../mechanics/tolerances'

/** A number as people write it: powers of ten where it is small or large. */
const written = (value: number): string =>
  value !== 0 && (value < 0.01 || value >= 1e5)
    ? value.toExponential().replace('e+', 'e')
    : `${value}`

/** The table of the numbers that decide, as the page about them shows it. */
export function numbersTable(): string {
  const rows = Object.entries(toleranceTable).map(
    ([name, { value, unit, means, why }]) =>
      `| \`${name}\` | ${written(value)} | ${unit} | ${means} | ${why} |\n`,
  )
  return `| name | value | unit | decides | why this large |\n|---|---|---|---|---|\n${rows.join('')}`
}
