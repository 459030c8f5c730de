import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { LinearProgram } from '../../src/engine/lp/solver'

// The optimum of a linear program as it stands, bit for bit, in fractions: the exact simplex of glpsol finds its
// basis, and the equations of that basis are solved here in whole numbers.

/** Binary places that every double here is a whole number of: the program's numbers lie far within them. */
const places = 300n

/** A double as a whole number of 2^-300; exact, or an error. */
function whole(value: number): bigint {
  const view = new DataView(new ArrayBuffer(8))
  view.setFloat64(0, value)
  const raw = view.getBigUint64(0)
  const exponent = Number((raw >> 52n) & 0x7ffn)
  const mantissa = (raw & ((1n << 52n) - 1n)) + (exponent === 0 ? 0n : 1n << 52n)
  const shift = places + BigInt(Math.max(exponent, 1) - 1075)
  if (shift < 0n && mantissa % (1n << -shift) !== 0n) throw new RangeError(`too small: ${value}`)
  const size = shift < 0n ? mantissa >> -shift : mantissa << shift
  return raw >> 63n === 1n ? -size : size
}

/** Free MPS with every digit of every double. */
function mps({ columns, rows, objective }: LinearProgram): string {
  const kind = (lower: number, upper: number) =>
    lower === upper ? 'E' : Number.isFinite(lower) ? 'G' : Number.isFinite(upper) ? 'L' : 'N'
  const lines = ['NAME x', 'ROWS', ' N cost']
  const kinds = rows.map(({ lower, upper }) => kind(lower, upper))
  rows.forEach((_, i) => lines.push(` ${kinds[i] ?? ''} r${i}`))
  lines.push('COLUMNS')
  const terms = columns.map((): string[] => [])
  objective.forEach((cost, j) => cost !== 0 && terms[j]?.push(`cost ${cost}`))
  rows.forEach(({ terms: of }, i) => {
    for (const [j, a] of of) terms[j]?.push(`r${i} ${a}`)
  })
  terms.forEach((all, j) => {
    for (const term of all.length > 0 ? all : ['cost 0']) lines.push(` x${j} ${term}`)
  })
  lines.push('RHS', 'BOUNDS')
  const at = (section: string, line: string) => {
    lines.splice(lines.indexOf(section) + 1, 0, line)
  }
  rows.forEach(({ lower, upper }, i) => {
    const bound = kinds[i] === 'L' ? upper : lower
    if (kinds[i] !== 'N') at('RHS', ` b r${i} ${bound}`)
  })
  columns.forEach(({ lower, upper }, j) => {
    const [low, high] = [Number.isFinite(lower), Number.isFinite(upper)]
    if (low && lower === upper) lines.push(` FX n x${j} ${lower}`)
    else {
      if (!low) lines.push(` MI n x${j}`)
      else if (lower !== 0) lines.push(` LO n x${j} ${lower}`)
      if (high) lines.push(` UP n x${j} ${upper}`)
      else if (!low) lines.push(` PL n x${j}`)
    }
  })
  return `${[...lines, 'ENDATA'].join('\n')}\n`
}

/** A fraction: over is above 0. */
export interface Fraction {
  readonly part: bigint
  readonly over: bigint
}

/** True where a double is the fraction or less. */
export const isNotOver = (value: number, { part, over }: Fraction): boolean =>
  whole(value) * over <= part << places

/** By how much a double is under the fraction, of its size. */
export function under(value: number, { part, over }: Fraction): number {
  const exact = (part << places) / over
  return Number(exact - whole(value)) / Math.max(1, Math.abs(Number(exact)))
}

/** A row with two bounds as two rows: the format has such a row by its width, which is rounded. */
const oneBound = (row: LinearProgram['rows'][number]) =>
  Number.isFinite(row.lower) && Number.isFinite(row.upper) && row.lower !== row.upper
    ? [
        { ...row, upper: Infinity },
        { ...row, lower: -Infinity },
      ]
    : Number.isFinite(row.lower) || Number.isFinite(row.upper)
      ? [row]
      : []

/** The least objective; undefined where the exact simplex found no optimum in its time. */
export function exactOptimum(all: LinearProgram): Fraction | undefined {
  const program = { ...all, rows: all.rows.flatMap(oneBound) }
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-exact-'))
  try {
    const [model, out] = [join(folder, 'model'), join(folder, 'out')]
    writeFileSync(model, mps(program))
    const flags = ['--freemps', model, '--exact', '--tmlim', '60', '-w', out]
    if (spawnSync('glpsol', flags, { stdio: 'ignore' }).status !== 0)
      throw new Error('glpsol could not read the model')
    const solution = readFileSync(out, 'utf8')
    if (!/^s bas \d+ \d+ f f /m.test(solution)) return undefined
    const status = (which: 'i' | 'j') =>
      [...solution.matchAll(new RegExp(`^${which} \\d+ (\\w) `, 'gm'))].map(([, at]) => at ?? '')
    // the objective may stand as a row before them
    return valueOf(program, status('i').slice(-program.rows.length), status('j'))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The objective at the point where every row and column that is not in the basis stands at its bound. */
function valueOf(
  { columns, rows, objective }: LinearProgram,
  ofRows: readonly string[],
  ofColumns: readonly string[],
): Fraction {
  const bound = ({ lower, upper }: { lower: number; upper: number }, at: string) =>
    whole(at === 'u' ? upper : at === 'f' ? 0 : lower)
  const basic = columns.flatMap((_, j) => (ofColumns[j] === 'b' ? [j] : []))
  const place = new Map(basic.map((j, k) => [j, k]))
  const fixed = columns.map((column, j) =>
    ofColumns[j] === 'b' ? 0n : bound(column, ofColumns[j] ?? ''),
  )
  /** Coefficients of the basic columns, and what the others leave of the right side; 2^-300 and 2^-600. */
  const equation = (terms: readonly (readonly [number, number])[], right: bigint): bigint[] => {
    const line = new Array<bigint>(basic.length + 1).fill(0n)
    line[basic.length] = right << places
    for (const [j, a] of terms) {
      const k = place.get(j)
      if (k === undefined)
        line[basic.length] = (line[basic.length] ?? 0n) - whole(a) * (fixed[j] ?? 0n)
      else line[k] = (line[k] ?? 0n) + whole(a)
    }
    return line
  }
  const tight = rows.flatMap((row, i) =>
    ofRows[i] === 'b' ? [] : [equation(row.terms, bound(row, ofRows[i] ?? ''))],
  )
  if (tight.length !== basic.length) throw new Error('no basis')
  const { values, over } = solved(tight.map(primitive))
  let [part, rest] = [0n, 0n]
  objective.forEach((cost, j) => {
    const k = place.get(j)
    if (k === undefined) rest += whole(cost) * (fixed[j] ?? 0n)
    else part += whole(cost) * (values[k] ?? 0n)
  })
  // values are in 2^-300, a cost too: both come to 2^-600
  const sign = over < 0n ? -1n : 1n
  return { part: sign * (part + rest * over), over: (sign * over) << (2n * places) }
}

/** A row without the powers of two that all of it has. */
function primitive(line: readonly bigint[]): bigint[] {
  let all = 0n
  for (const one of line) all |= one < 0n ? -one : one
  if (all === 0n) return [...line]
  let shift = 0n
  while (((all >> shift) & 1n) === 0n) shift++
  return line.map((one) => one >> shift)
}

/** Solves a square system without fractions (Bareiss 1968): each value is values[k] / over. */
function solved(lines: bigint[][]): { values: bigint[]; over: bigint } {
  const n = lines.length
  let before = 1n
  for (let k = 0; k < n; k++) {
    const pivot = lines.findIndex((line, i) => i >= k && line[k] !== 0n)
    const [top, other] = [lines[k], lines[pivot]]
    if (!top || !other) throw new Error('the basis is singular')
    ;[lines[k], lines[pivot]] = [other, top]
    const chosen = other[k] ?? 1n
    lines.forEach((line, i) => {
      if (i === k) return
      const by = line[k] ?? 0n
      for (let j = 0; j <= n; j++)
        line[j] = (chosen * (line[j] ?? 0n) - by * (other[j] ?? 0n)) / before
    })
    before = chosen
  }
  return { values: lines.map((line) => line[n] ?? 0n), over: before }
}
