import { fixed, sum, type Affine } from './affine'
import { footLimitList } from './footLimits'
import { carry, ownCarry, type Mover } from './motion'
import { addSize, type Family, type Program } from './program'
import type { LeftOut } from './terms'
import type { Foot, Plan, Restraint, Room } from './train'

const sameRow = 1e-6 // mm

/** A limit that nothing can move adds no row. */
function bound(
  program: Program,
  family: Family,
  expression: Affine,
  low: number,
  high: number,
  also: string[] = [],
): void {
  if (expression.by.size > 0) program.rows.push({ family, also, expression, low, high })
}

/** How far the shim under a foot is changed by the body's own motion. */
export function shimAt(mover: Mover, f: Foot, leaveOut?: LeftOut): Affine {
  const y = leaveOut === 'roll lifts the feet' ? 0 : (f.y ?? 0)
  return ownCarry(mover, { x: f.x, y, z: 0 }).z
}

function bandLimits(program: Program, mover: Mover, f: Foot, leaveOut: LeftOut): void {
  const own = ownCarry(mover, { x: f.x, y: f.y ?? 0, z: 0 })
  const ways = { y: own.y, z: shimAt(mover, f, leaveOut) }
  for (const { term, band } of footLimitList) {
    const kept = leaveOut === term ? undefined : band?.(f)
    if (!kept) continue
    // a limit passed as found that was not let stand moves the foot back within it
    const out = kept.stands && leaveOut === 'standing pack' ? beyond(f) : 0
    bound(program, kept.family, ways[kept.way], kept.low + out, kept.high + out)
  }
}

/** How far a pack stands outside its limits, + under its minimum. */
function beyond({ pack }: Foot): number {
  const { now = 0, min = 0, max = Infinity } = pack ?? {}
  return now < min ? min - now : now > max ? max - now : 0
}

function holeLimit(
  program: Program,
  mover: Mover,
  f: Foot,
  plan: Plan | undefined,
  leaveOut: LeftOut,
): void {
  if (!f.hole || leaveOut === 'hole') return
  const { x, y } = ownCarry(mover, { x: f.x, y: f.y ?? 0, z: 0 })
  const centred = leaveOut === 'hole centre'
  const hx = centred ? 0 : (f.hole.x ?? 0)
  const hy = centred ? 0 : (f.hole.y ?? 0)
  const reserve = leaveOut === 'reserve' ? 0 : (plan?.reserve ?? 0)
  const room = f.hole.clearance / 2 - reserve
  const off = Math.hypot(hx, hy)
  const touches = off > room && leaveOut !== 'standing hole'
  const radius = touches ? off : Math.max(0, room)
  const a = leaveOut === 'yaw carries the feet along' ? fixed(hx) : sum([1, x], [1, fixed(hx)])
  const b = sum([1, y], [1, fixed(hy)])
  const family = touches ? 'standing hole' : reserve > 0 ? 'reserve' : 'hole'
  if (radius < 1e-9) {
    bound(program, family, a, 0, 0)
    bound(program, family, b, 0, 0)
  } else if (a.by.size + b.by.size > 0) {
    // a bolt that touches slides along the edge, where very little past it lets it go far
    const slack = touches ? 1e-8 : 1e-5
    program.circles.push({ family, also: [], a, b, radius: fixed(radius), slack })
  }
}

function restraintLimits(program: Program, mover: Mover, r: Restraint, leaveOut: LeftOut): void {
  const y = leaveOut === 'restraint off centre' ? 0 : (r.y ?? 0)
  const point = { x: r.x, y, z: r.z }
  const part = leaveOut === 'restraint of the skid part'
  const moved = part ? ownCarry(mover, point) : carry(mover, point)
  const limit = (family: Family & LeftOut, expression: Affine, room: Room | undefined) => {
    if (!room || leaveOut === family) return
    bound(program, family, expression, room[0], room[1], mover.under ? ['skid restraint'] : [])
  }
  limit('restraint axial', moved.x, r.axial)
  limit('restraint side', moved.y, r.side)
  limit('restraint rise', moved.z, r.rise)
}

/** Feet that stand at one x slide as one: the first of each row. */
export function footRows(feet: Foot[]): Foot[] {
  return feet.filter((f, i) => !feet.slice(0, i).some((g) => Math.abs(g.x - f.x) <= sameRow))
}

/** Adds what limits one body and what moving it costs. */
export function addBody(
  program: Program,
  mover: Mover,
  plan: Plan | undefined,
  leaveOut?: LeftOut,
): void {
  const { body, own, under } = mover
  for (const f of body.feet) {
    bandLimits(program, mover, f, leaveOut)
    holeLimit(program, mover, f, plan, leaveOut)
  }
  for (const r of body.restraints ?? []) restraintLimits(program, mover, r, leaveOut)
  if (body.tilt !== undefined && leaveOut !== 'tilt') {
    const whole = under && leaveOut !== 'tilt of the skid part'
    const tilt = whole ? sum([1, own.sz], [1, under.own.sz]) : own.sz
    bound(program, 'tilt', tilt, -body.tilt, body.tilt, under ? ['skid tilt'] : [])
  }
  const weight = leaveOut === 'body weight' ? 1 : (body.weight ?? 1)
  const w = plan?.weights ?? {}
  const shimPrice = weight * (leaveOut === 'shim weight' ? 1 : (w.shim ?? 1))
  const sidePrice = weight * (leaveOut === 'side weight' ? 1 : (w.side ?? 1))
  const axialPrice = weight * (leaveOut === 'axial weight' ? 1 : (w.axial ?? 1))
  for (const f of body.feet) addSize(program, shimAt(mover, f, leaveOut), shimPrice)
  const rows = leaveOut === 'foot row counts once' ? body.feet : footRows(body.feet)
  for (const f of rows)
    addSize(program, ownCarry(mover, { x: f.x, y: f.y ?? 0, z: 0 }).y, sidePrice)
  addSize(program, own.tx, leaveOut === 'axial cost' ? 0 : axialPrice)
}
