import type { StepsJson } from '../../src/json/stepsJson'
import {
  bodiesOf,
  slopeScale,
  standingOf,
  worstPassed,
  type BodyFile,
  type Move,
  type TrainFile,
} from './contract'

/** Looks taken along each piece of a move. */
const looks = 7

export interface Followed {
  /** Most that a limit was passed by anywhere on the way (fine units). */
  readonly by: number
  readonly what: string
  readonly step: string
  /** Where all bodies stand at the end. */
  readonly standing: ReadonlyMap<string, Move>
  /** Most that what the steps tell the feet differs from where the steps say the bodies stand. */
  readonly untold: number
}

/**
 * Follows the steps as a mechanic does: pose by pose, looking at every limit of the file along the way, and comparing
 * what the feet are told. A foot on a jack is not on its pack, so no most pack bounds it there.
 */
export function followed(file: TrainFile, { steps }: StepsJson): Followed {
  const standing = new Map<string, Move>()
  let worst = { by: 0, what: '', step: '' }
  let untold = 0
  for (const step of steps) {
    const body = bodiesOf(file).find(({ id }) => id === step.body)
    const after = step.standing.find(({ id }) => id === step.body)?.move
    if (!body || !after || step.feet.length === 0) continue
    const before = standingOf(standing, body.id)
    for (const [k, row] of step.feet.entries()) {
      const foot = body.feet[k]
      if (!foot || foot.id !== row.foot) throw new Error(`feet of ${step.id} out of step`)
      const told = [row.axial, row.side, row.shim]
      const moved = difference(file, body, before, after, foot)
      for (const [way, value] of told.entries())
        if (value !== undefined) untold = Math.max(untold, Math.abs(value - (moved[way] ?? 0)))
    }
    const pieces = step.poses.slice(1).map(({ move }) => move)
    const lifted = step.feet.some(({ shim }) => shim !== undefined) ? ['maximum pack'] : []
    let from = before
    for (const [k, to] of pieces.entries()) {
      for (let i = 1; i <= looks; i++) {
        standing.set(body.id, between(from, to, i / looks))
        const there = k === pieces.length - 1 && i === looks
        const passed = worstPassed(file, standing, there ? [] : lifted)
        if (passed.by > worst.by) worst = { ...passed, step: step.id }
      }
      from = to
    }
    standing.set(body.id, after)
  }
  return { ...worst, standing, untold }
}

const names = ['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const
const between = (a: Move, b: Move, share: number): Move =>
  Object.fromEntries(names.map((n) => [n, a[n] + (b[n] - a[n]) * share])) as unknown as Move

function difference(
  file: TrainFile,
  body: BodyFile,
  a: Move,
  b: Move,
  { x, y = 0 }: { x: number; y?: number | undefined },
): [number, number, number] {
  const k = slopeScale(file)
  const x0 = body.feet.reduce((sum, foot) => sum + foot.x, 0) / body.feet.length
  const d = between(a, b, 1)
  const by = Object.fromEntries(names.map((n) => [n, d[n] - a[n]])) as unknown as Move
  return [
    by.tx - k * by.sy * y,
    by.ty + k * by.sy * (x - x0),
    by.tz + k * (by.sz * (x - x0) + by.roll * y),
  ]
}

/** How a part of a move, other steps and then the rest go: most that a limit is passed by after the part and on the way. */
export function withStop(
  file: TrainFile,
  { steps }: StepsJson,
  id: string,
  stop: { part: number; then: readonly string[] },
): { by: number; what: string } {
  const moving = steps.filter(({ feet }) => feet.length > 0)
  const standing = new Map<string, Move>()
  const deltas = new Map<string, { body: string; from: Move; to: Move }>()
  const before = new Map<string, Move>()
  for (const step of moving) {
    if (step.id === id) for (const [body, move] of standing) before.set(body, move)
    const to = step.standing[0]?.move
    if (!to) throw new Error(`${step.id} stands nowhere`)
    deltas.set(step.id, { body: step.body, from: standingOf(standing, step.body), to })
    standing.set(step.body, to)
  }
  const now = before
  let worst = { by: 0, what: '' }
  const go = (step: string, part: number) => {
    const delta = deltas.get(step)
    if (!delta) throw new Error(`no step ${step}`)
    const start = standingOf(now, delta.body)
    const way = Object.fromEntries(
      names.map((n) => [n, start[n] + (delta.to[n] - delta.from[n]) * part]),
    ) as unknown as Move
    for (let i = 1; i <= looks; i++) {
      now.set(delta.body, between(start, way, i / looks))
      const passed = worstPassed(file, now)
      if (passed.by > worst.by) worst = passed
    }
  }
  go(id, stop.part)
  for (const step of stop.then) go(step, 1)
  go(id, 1 - stop.part)
  return worst
}
