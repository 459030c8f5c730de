import type { membersJson } from '../../src/json/reasonsJson'
import type { Foot, Restraint, Train } from '../second/train'

/** A member of a conflict as a program reads it. */
export type Member = ReturnType<typeof membersJson>[number]

/** The same limit given so much that nothing could need more of it. */
export const farMore = (member: Member): Member => ({
  ...member,
  alone: 1e5,
  checks: (['planes', 'offset', 'angle', 'gap', 'stretch', 'float'] as const).map((what) => ({
    what,
    lacks: null,
    alone: 1e5,
    unit: '',
  })),
})

/** The file with one limit larger by `times` what the member is said to need, as somebody would enter it. */
export function loosened(document: Train, { limit, part, alone, checks }: Member, times: number) {
  const changed = structuredClone(document)
  const more = (alone ?? 0) * times
  if (limit === 'tolerance') {
    for (const coupling of changed.couplings) {
      if (coupling.id !== part.coupling) continue
      const { tolerance, axial } = coupling
      for (const { what, alone: by } of checks ?? []) {
        const added = (by ?? 0) * times
        if (what === 'gap') {
          if (axial) axial.tolerance += added
        } else if (what === 'stretch' || what === 'float') {
          const carried = axial?.rotors?.left?.centre === undefined ? 'right' : 'left'
          const range = what === 'stretch' ? axial?.stretch : axial?.rotors?.[carried]?.float
          if (range) [range[0], range[1]] = [range[0] - added, range[1] + added]
        } else {
          const key = what === 'planes' ? 'flex' : what
          const limit = tolerance[key]
          if (limit !== undefined) tolerance[key] = limit + added
        }
      }
    }
    return changed
  }
  for (const body of [...changed.machines, ...(changed.skids ?? [])]) {
    if (body.id !== part.body) continue
    if (limit === 'tilt') body.tilt = (body.tilt ?? 0) + more
    for (const foot of body.feet) if (foot.id === part.foot) widen(foot, limit, more)
    for (const point of body.restraints ?? [])
      if (point.id === part.restraint) stretch(point, part.way, more)
  }
  return changed
}

export function widen(foot: Foot, limit: string, more: number): void {
  const { pack, hole } = foot
  if (limit === 'minimum pack' && pack) pack.min = (pack.min ?? 0) - more
  if (limit === 'maximum pack' && pack?.max !== undefined) pack.max += more
  if (limit === 'lift' && foot.lift !== undefined) foot.lift += more
  if (limit === 'hole' && hole) hole.clearance += 2 * more
  if (limit === 'shim key') foot.free = { ...foot.free, shim: true }
  if (limit === 'side key') foot.free = { ...foot.free, side: true }
}

function stretch(point: Restraint, way: string | undefined, more: number): void {
  if (way !== 'axial' && way !== 'side' && way !== 'rise') return
  const room = point[way]
  if (room) point[way] = [room[0] - more, room[1] + more]
}
