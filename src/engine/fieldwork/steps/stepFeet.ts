import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import { showsNought } from '../../../language/sides'
import type { Action } from './action'
import type { StepFootAnswer } from './answer'
import { inEndOrder, type FirstEnd } from './ends'
import { scaled } from './moves'
import { axialWords, changesOf, shimWords, slideWords } from './words'

/** A pack of real plates under a foot, as the plan's answer has it. */
export interface FootPack {
  readonly body: string
  readonly foot: string
  /** What goes in or out; of a body on three rows or more not quite what its plane asks for. */
  readonly change: Micrometres
  readonly packAfter?: Micrometres
  /** What comes out, and the plates of the stock that go in. */
  readonly out: readonly Micrometres[]
  readonly use: readonly Micrometres[]
}

/** What each foot is told in a step. */
export function footAnswers(
  body: Body,
  action: Action,
  before: Motion,
  packs: readonly FootPack[],
): StepFootAnswer[] {
  const piece = scaled(action.whole, action.to - action.from)
  return body.feet.map((foot): StepFootAnswer => {
    const move = footMove(body, piece, foot)
    const was = footMove(body, before, foot)
    const { hole, pack } = foot
    const room = hole && {
      room:
        hole.clearance / 2 -
        Math.hypot(hole.x + was.axial + move.axial, hole.y + was.side + move.side),
    }
    switch (action.kind) {
      case 'axial':
        return { foot: foot.id, axial: move.axial, ...room }
      case 'lateral':
        return { foot: foot.id, side: move.side, axial: move.axial, ...room }
      case 'vertical': {
        const whole = action.from === 0 && action.to === 1
        const real = whole
          ? packs.find((row) => row.body === body.id && row.foot === foot.id)
          : undefined
        if (real)
          return {
            foot: foot.id,
            shim: real.change,
            ...(pack && { packBefore: pack.now }),
            ...(real.packAfter !== undefined && { packAfter: real.packAfter }),
            ...(real.out.length > 0 && { out: [...real.out] }),
            ...(real.use.length > 0 && { use: [...real.use] }),
          }
        return {
          foot: foot.id,
          shim: move.shim,
          ...(pack && {
            packBefore: pack.now + was.shim,
            packAfter: pack.now + was.shim + move.shim,
          }),
        }
      }
    }
  })
}

/** What to do, from the end that goes first, and how it is done where anything is. */
export function stepWords(
  train: Train,
  body: Body,
  action: Action,
  feet: readonly StepFootAnswer[],
  first: FirstEnd,
  how: string,
): string {
  const ordered = inEndOrder(body, feet, first)
  switch (action.kind) {
    case 'axial':
      return axialWords(train, body, action.whole.tx * (action.to - action.from)) + how
    case 'vertical':
      return shimWords(train, body, changesOf(ordered, 'shim'), how)
    case 'lateral':
      return slideWords(train, body, changesOf(ordered, 'side'), how)
  }
}

/** Whether both ends have somewhere to go, so that one can be ahead of the other. */
export function bothEndsMove(train: Train, body: Body, { whole, kind }: Action): boolean {
  const [left, right] = [body.rows[0], body.rows.at(-1)]
  if (!left || !right || left === right) return false
  return [left, right].every(({ feet }) =>
    feet.some((f) => {
      const foot = body.feet[f]
      if (!foot) return false
      const { shim, side } = footMove(body, whole, foot)
      return !showsNought(kind === 'vertical' ? shim : side, train)
    }),
  )
}

/** Most that an end goes between two stops (um). */
export function eachPiece(feet: readonly StepFootAnswer[], action: Action, stops: number): number {
  const way = action.kind === 'vertical' ? 'shim' : 'side'
  return Math.max(0, ...feet.map((foot) => Math.abs(foot[way] ?? 0))) / stops
}
