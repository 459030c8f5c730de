/**
 * Calls of GLPK itself, which go by numbers and can go on with a problem. Those of its package go by names, make every problem
 * anew and throw it away again, which takes longer than solving one of the planner's smaller programs.
 */
export interface GlpkCalls {
  readonly memory: WebAssembly.Memory
  readonly malloc: (bytes: number) => number
  readonly free: (at: number) => void
  readonly createProblem: () => number
  readonly deleteProblem: (problem: number) => void
  readonly addRows: (problem: number, count: number) => number
  readonly addColumns: (problem: number, count: number) => number
  readonly rowBounds: SetBounds
  readonly columnBounds: SetBounds
  readonly setCost: (problem: number, column: number, cost: number) => void
  /** Entries 1 to `count` of the arrays at these places; what was there before is forgotten, the basis is not. */
  readonly loadMatrix: (problem: number, count: number, i: number, j: number, a: number) => void
  readonly sortMatrix: (problem: number) => void
  /** Place of the parameters of the simplex, to be freed. */
  readonly parameters: (steps: number, messages: number, ms: number, presolve: number) => number
  readonly simplex: (problem: number, parameters: number) => number
  readonly status: (problem: number) => number
  readonly objective: (problem: number) => number
  readonly columnValue: (problem: number, column: number) => number
  readonly rowDual: (problem: number, row: number) => number
}

type SetBounds = (
  problem: number,
  index: number,
  type: number,
  lower: number,
  upper: number,
) => void

/** Under what the package exports them: names are shortened when it is built, so that another version may have others. */
const exported = {
  memory: 'l',
  malloc: 'X',
  free: 'Y',
  createProblem: 'o',
  deleteProblem: 'A',
  addRows: 'r',
  addColumns: 's',
  rowBounds: 'v',
  columnBounds: 'w',
  setCost: 'x',
  loadMatrix: 'y',
  sortMatrix: 'z',
  parameters: 'W',
  simplex: 'I',
  status: 'J',
  objective: 'K',
  columnValue: 'N',
  rowDual: 'M',
} as const satisfies Record<keyof GlpkCalls, string>

/** The version that these names are of. */
const version = { call: 'V', text: '5.0' }

/**
 * The calls of an instance that was just made.
 * @returns undefined where it does not export them, or is of another version
 */
export function callsOf({ exports }: WebAssembly.Instance): GlpkCalls | undefined {
  const calls: Record<string, WebAssembly.ExportValue | undefined> = {}
  for (const [name, letter] of Object.entries(exported)) calls[name] = exports[letter]
  const { memory, ...functions } = calls
  if (!(memory instanceof WebAssembly.Memory)) return undefined
  if (!Object.values(functions).every((call) => typeof call === 'function')) return undefined
  return versionOf(exports, memory) === version.text ? (calls as unknown as GlpkCalls) : undefined
}

function versionOf(exports: WebAssembly.Exports, memory: WebAssembly.Memory): string {
  const call = exports[version.call]
  if (typeof call !== 'function') return ''
  const at = Number((call as () => unknown)())
  const text = new Uint8Array(memory.buffer, at, version.text.length + 1)
  return text.at(-1) === 0 ? String.fromCharCode(...text.subarray(0, -1)) : ''
}
