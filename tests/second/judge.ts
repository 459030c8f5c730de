import { valueOf, type Affine } from './affine'
import { farthest } from './farthest'
import { build, type Built } from './model'
import type { Six } from './motion'
import type { Moves } from './solve'
import { keptShareOf, shareOf } from './share'
import { fineFactor, type Train } from './train'

/** What the second builder finds of a plan that somebody else made. */
export interface Judgement {
  /** Cost of the moves, in the document's fine units. */
  cost: number
  worstShare: number
  /** The same with what the guard and intervals of growth keep free of each tolerance. */
  keptShare: number
  /** Most that a limit other than a tolerance is passed by (um; tilt in mrad). */
  violation: number
  /** The limit that is passed most. */
  where: string
  /** Most that a body moves in a way it is not free to (um, mrad). */
  unfree: number
}

/** The columns that these moves mean; what no column can express is returned as unfree. */
function columnsOf(built: Built, bodies: Record<string, Moves>, fine: number) {
  const columns = built.program.cost.map(() => 0)
  let unfree = 0
  for (const [id, mover] of built.movers) {
    const move = bodies[id]
    if (!move) throw new Error(`no moves of ${id}`)
    for (const name of Object.keys(mover.own) as (keyof Six)[]) {
      const wanted = move[name] * (['tx', 'ty', 'tz'].includes(name) ? fine : 1)
      const [entry] = mover.own[name].by
      if (entry) columns[entry[0]] = wanted / entry[1]
      else unfree = Math.max(unfree, Math.abs(wanted))
    }
  }
  for (const { of, up, down } of built.program.sizes) {
    const value = valueOf(of, columns)
    columns[up] = Math.max(0, value)
    columns[down] = Math.max(0, -value)
  }
  return { columns, unfree }
}

/** Judges body moves (document units) by every limit of the second builder's program. */
export function judge(document: Train, bodies: Record<string, Moves>): Judgement {
  const built = build(document)
  const { program, checks } = built
  const fine = fineFactor(document)
  const { columns, unfree } = columnsOf(built, bodies, fine)
  const at = (part: Affine) => valueOf(part, columns)
  const worstShare = Math.max(0, ...checks.map((check) => shareOf(check, columns)))
  const keptShare = Math.max(0, ...checks.map((check) => keptShareOf(check, columns)))
  columns[program.worst] = keptShare
  let [violation, where] = [0, 'nothing']
  const passed = (family: string, by: number) => {
    if (by > violation) [violation, where] = [by, family]
  }
  for (const { family, expression, low, high } of program.rows) {
    passed(family, Math.max(low - at(expression), at(expression) - high))
  }
  for (const { family, a, b, radius, reserve } of program.circles) {
    passed(family, farthest(at(a), at(b), reserve).by - at(radius))
  }
  const cost = program.cost.reduce((sum, price, i) => sum + price * (columns[i] ?? 0), 0)
  return { cost: cost / fine, worstShare, keptShare, violation, where, unfree }
}
