import { tol } from '../../mechanics/tolerances'
import { fineText, shareText } from '../../language/amounts'
import type { Body, Train } from '../../mechanics/train'
import type { Motion } from '../../mechanics/motion'
import { towardSide } from '../../language/sides'
import type { Finding } from './answer'
import { noRoomAt } from './sentence'
import { hasTeeth, rolledShafts, toothCheck } from './rollWords'
import { footMove } from './totals'

/**
 * Marks at which a plan deserves a second look. Common practice, no source: site procedure and the
 * makers' drawings govern.
 */
const marks = {
  /** Move of a machine with restrained points, as a piped casing has (um). */
  pipedMove: 1000,
  /** Rise of a foot: shims in stages, blocks beside the jacks (um). */
  lift: 2000,
  /** Room left between bolt and hole (um). */
  room: 300,
}

/**
 * What to look at twice before a plan is carried out.
 * @param motions own motions (um, mrad)
 * @param worstShare of tolerance, after the plan
 */
export function planCautions(
  train: Train,
  motions: readonly Motion[],
  worstShare: number,
): Finding[] {
  const out = train.bodies.flatMap((body, b) => {
    const motion = motions[b]
    return motion ? ofBody(train, body, motion) : []
  })
  if (noRoomAt(worstShare))
    out.push({
      where: 'plan.share',
      what: `no room for error: the tightest coupling uses ${shareText(worstShare)} of its tolerance`,
    })
  return out
}

function ofBody(train: Train, body: Body, motion: Motion): Finding[] {
  const { units } = train
  const out: Finding[] = []
  const moves = body.feet.map((foot) => footMove(body, motion, foot))
  const largest = (sizes: readonly number[]) => Math.max(0, ...sizes)
  const moved = largest(moves.map(({ shim, side }) => Math.hypot(shim, side)))
  if (body.restraints.length > 0 && moved > marks.pipedMove)
    out.push({
      where: body.place,
      what: `${body.name} moves ${fineText(moved, units)} with its piping: prove pipe strain again, flange by flange`,
    })
  const lift = largest(moves.map(({ shim }) => shim))
  if (lift > marks.lift)
    out.push({
      where: body.place,
      what: `${body.name} rises ${fineText(lift, units)}: lift in stages, a block beside each jack, no hand between foot and base`,
    })
  body.feet.forEach((foot, f) => {
    const move = moves[f]
    if (!foot.hole || !move || Math.hypot(move.axial, move.side) < 0.1) return
    const room =
      foot.hole.clearance / 2 - Math.hypot(foot.hole.x + move.axial, foot.hole.y + move.side)
    if (room < marks.room)
      out.push({
        where: `${foot.place}.hole`,
        what: `${body.name} foot ${foot.id} keeps only ${fineText(Math.max(0, room), units)} between bolt and hole: measure it before the slide`,
      })
  })
  if (hasTeeth(body) && Math.abs(motion.roll) > tol.noRoll)
    out.push({
      where: body.place,
      what: `${body.name} is rolled by ${Math.abs(motion.roll).toFixed(3)} mrad, its feet ${towardSide(train, motion.roll)} up: that carries ${rolledShafts(train, body, motion.roll)}; ${toothCheck}`,
    })
  return out
}
