import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import type { Body } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import type { StepFootAnswer } from './answer'
import { endMoves, endsOf, type BodyEnd, type EndPlaces } from './endHeights'

/** What a body has to be lifted for. Heights from where the step began (um). */
export interface LiftTask {
  /** Where its ends are to stand. */
  readonly target: EndPlaces
  /** Least height of an end at which the feet of it whose packs change have room; left out where none does. */
  readonly needs: Readonly<Partial<Record<BodyEnd, Micrometres>>>
  /** Rows between the ends whose packs change: how far from the left end to the right one (0 to 1), and their least height. */
  readonly between: readonly { readonly part: number; readonly need: Micrometres }[]
  /** Most that an end may be ahead of the other, beyond what the step itself makes of it. */
  readonly stage: Micrometres
  /** Whether one end can stand on its new packs while the other is still on its old ones. */
  readonly oneByOne: boolean
  /** Whether all its feet stand in one row. */
  readonly oneRow: boolean
}

/** Height above where a foot stood at which the pack it has and the one it gets can be changed. */
export const clearOf = ({ shim = 0 }: StepFootAnswer, slip: Micrometres): Micrometres =>
  Math.max(0, shim) + slip

/** Feet whose packs a step changes. */
export const changedFeet = (feet: readonly StepFootAnswer[]): StepFootAnswer[] =>
  feet.filter(({ shim = 0 }) => Math.abs(shim) > tol.unseen)

/**
 * @param piece the step's own motion (um, mrad)
 * @param feet what each foot is told, rounded packs included
 */
export function liftTask(
  body: Body,
  piece: Motion,
  feet: readonly StepFootAnswer[],
  { stage, slip }: { readonly stage: Micrometres; readonly slip: Micrometres },
): LiftTask {
  const changed = changedFeet(feet)
  const x = endsOf(body)
  const rows = body.rows.map((row) => {
    const needs = row.feet.flatMap((f) => {
      const foot = changed.find(({ foot: id }) => id === body.feet[f]?.id)
      return foot ? [clearOf(foot, slip)] : []
    })
    return { x: row.x, ...(needs.length > 0 && { need: Math.max(...needs) }) }
  })
  const [left, right] = [rows[0]?.need, rows.length > 1 ? rows.at(-1)?.need : rows[0]?.need]
  const rolls = body.feet.some(
    (foot) => Math.abs(footMove(body, { ...noMotion, roll: piece.roll }, foot).shim) > tol.unseen,
  )
  return {
    target: endMoves(body, piece, 'shim'),
    needs: { ...(left !== undefined && { left }), ...(right !== undefined && { right }) },
    between: rows
      .slice(1, -1)
      .flatMap((row) =>
        row.need === undefined
          ? []
          : [{ part: (row.x - x.left) / (x.right - x.left), need: row.need }],
      ),
    stage,
    oneByOne: rows.length === 2 && !rolls,
    oneRow: rows.length < 2,
  }
}
