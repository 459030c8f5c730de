import type { Body, Foot, Train } from '../../../mechanics/train'
import { footMove } from '../../plan/totals'
import type { Motion } from '../../../mechanics/motion'
import { bandAround, type Band } from '../../../mechanics/misalignment/bands'
import { workDoubtOf } from '../../../mechanics/uncertainty/usual'
import type { Micrometres } from '../../../mechanics/units'
import { sideNoun, towardSide } from '../../../language/sides'
import type { DialAnswer, StepFootAnswer } from './answer'
import type { ActionKind } from './moves'

/**
 * Dials to set up for a move and what they should show at its end, after zero at its start. A dial
 * reads + when its stem is pushed in, so one that stands over a foot with its stem on it reads + as
 * the foot rises; one on the 3 o'clock side with its stem against the foot reads + as the foot comes
 * toward 3 o'clock; one to the right of a foot reads + as it comes to the right.
 * @param feet what the feet get, so that a rounded pack is what its dial shows
 */
export function dialsOf(
  train: Train,
  body: Body,
  piece: Motion,
  kind: ActionKind,
  feet: readonly StepFootAnswer[],
): DialAnswer[] {
  const on = body.skid === undefined ? 'on the base' : 'on the bedplate'
  const doubt = workDoubtOf(train.plan.sure)
  if (kind === 'vertical')
    return body.feet.map((foot) => {
      const shim = feet.find((entry) => entry.foot === foot.id)?.shim
      const shows = shim ?? footMove(body, piece, foot).shim
      return {
        foot: foot.id,
        where: `${on}, stem down on foot ${foot.id}: + is up`,
        way: 'vertical',
        shows,
        good: dialBand(shows, doubt.shim),
      }
    })
  const side = sideNoun(train, 1)
  return body.rows.flatMap((row): DialAnswer[] => {
    const feet = row.feet.flatMap((f) => body.feet[f] ?? [])
    const foot = feet.reduce((a, b) => (b.y > a.y ? b : a), feet[0] ?? { id: '', x: 0, y: 0 })
    const move = footMove(body, piece, foot)
    return kind === 'lateral'
      ? [
          {
            foot: foot.id,
            where: `${on}, on the ${side} side, stem against foot ${foot.id}: + is ${towardSide(train, 1)}`,
            way: 'lateral',
            shows: move.side,
            good: dialBand(move.side, doubt.slide),
          },
        ]
      : [
          {
            foot: foot.id,
            where: `${on}, to the right of foot ${foot.id}, stem against it: + is to the right`,
            way: 'axial',
            shows: move.axial,
            good: dialBand(move.axial, doubt.slide),
          },
        ]
  })
}

/** How unsure a dial is read at a foot (um): as a reading that nobody gave an uncertainty for; common practice, no source. */
const dialDoubt: Micrometres = 10

/** Where a dial that is zeroed before a step is good after it: its own uncertainty with that of the work beside it. */
export const dialBand = (shows: Micrometres, work: Micrometres): Band =>
  bandAround(shows, Math.hypot(dialDoubt, work))

/** A dial on each neighbour that must not follow: held ones get bumped while the next one is jacked. */
export function neighbourDials(
  train: Train,
  touched: readonly number[],
  kind: ActionKind,
): DialAnswer[] {
  const next = new Set(
    train.couplings.flatMap(({ left, right }) =>
      touched.includes(left) !== touched.includes(right)
        ? [touched.includes(left) ? right : left]
        : [],
    ),
  )
  const moved = touched.flatMap((b) => train.bodies[b]?.feet ?? [])
  return [...next].flatMap((m) => {
    const machine = train.machines[m]
    return machine && machine.feet.length > 0
      ? [
          {
            where: `${neighbourPlace(train, machine, nearest(machine, moved), kind)}: must stay`,
            way: kind,
            shows: 0,
            good: dialBand(0, 0),
          },
        ]
      : []
  })
}

/** The foot of a neighbour that is nearest to the feet that move. */
function nearest({ feet }: Body, moved: readonly Foot[]): Foot | undefined {
  const off = ({ x }: Foot) => Math.min(...moved.map((foot) => Math.abs(foot.x - x)), Infinity)
  return feet.reduce<Foot | undefined>((a, b) => (a && off(a) <= off(b) ? a : b), undefined)
}

/** "on the base, stem down on foot 2 of Motor": the same ways as the dials at the feet that move. */
function neighbourPlace(
  train: Train,
  machine: Body,
  foot: Foot | undefined,
  kind: ActionKind,
): string {
  const on = machine.skid === undefined ? 'on the base' : 'on the bedplate'
  const at = `foot ${foot?.id ?? ''} of ${machine.name}`
  if (kind === 'vertical') return `${on}, stem down on ${at}`
  return kind === 'lateral'
    ? `${on}, on the ${sideNoun(train, 1)} side, stem against ${at}`
    : `${on}, to the right of ${at}, stem against it`
}
