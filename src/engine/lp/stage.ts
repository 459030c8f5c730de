import type { LinearProgram } from './solver'
import { tangentRow } from './cuts'
import { shareColumn, type Cut, type Program, type Row } from './program'

/**
 * The three questions asked of one program: the smallest worst share that any move reaches; the
 * least cost within a share; the smallest worst share at (nearly) that cost.
 */
export type Stage =
  | { readonly ask: 'floor' }
  | { readonly ask: 'cost'; readonly share: number }
  | { readonly ask: 'margin'; readonly share: number; readonly cost: number }

/**
 * Weight of the share in the objective. The simplex stops at reduced costs of about 1e-7; a heavy
 * share makes that a ten-thousand-millionth of a share, so that dual bounds keep their digits.
 */
export const shareWeight = 1000

/** Rows of a stage in order, with the names under which they are exported. */
export function stageRows(program: Program, stage: Stage, cuts: readonly Cut[]): Row[] {
  const count = new Map<number, number>()
  const tangents = cuts.map((cut) => {
    const next = (count.get(cut.circle) ?? 0) + 1
    count.set(cut.circle, next)
    const row = tangentRow(program, cut)
    return { ...row, name: `${row.name} tangent ${next}` }
  })
  return rowsWith(program, stage, tangents)
}

const rowsWith = (program: Program, stage: Stage, tangents: readonly Row[]): Row[] => [
  ...program.limits,
  ...tangents.filter(({ terms }) => terms.length > 0),
  ...(stage.ask === 'floor' ? [] : program.displacements),
]

/** The linear program of a stage; its rows are `stageRows`, then the cap on cost where one is set. */
export const stageProgram = (program: Program, stage: Stage, cuts: readonly Cut[]): LinearProgram =>
  stageOf(program, stage)(cuts)

/** The same, waiting for its cuts, which may be asked for with more and more of them. */
export function stageOf(program: Program, stage: Stage): (cuts: readonly Cut[]) => LinearProgram {
  const all = stage.ask === 'floor' ? program.columns.slice(0, program.firstMove) : program.columns
  const share = stage.ask === 'floor' ? Infinity : stage.share
  const cost = all.flatMap((column, c) => (column.cost === 0 ? [] : [[c, column.cost] as const]))
  const columns = all.map(({ lower, upper }, c) => ({
    lower,
    upper: c === shareColumn ? share : upper,
  }))
  const cap =
    stage.ask === 'margin' && cost.length > 0
      ? [{ terms: cost, lower: -Infinity, upper: stage.cost }]
      : []
  const objective = all.map((column, c) =>
    stage.ask === 'cost' ? column.cost : c === shareColumn ? shareWeight : 0,
  )
  return (cuts) => ({
    columns,
    rows: [
      ...rowsWith(
        program,
        stage,
        cuts.map((cut) => tangentRow(program, cut)),
      ),
      ...cap,
    ],
    objective,
  })
}
