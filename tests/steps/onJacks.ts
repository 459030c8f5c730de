import type { StepsJson } from '../../src/json/stepsJson'
import {
  bodiesOf,
  carriedBy,
  standingOf,
  worstPassed,
  type BodyFile,
  type Move,
  type TrainFile,
} from './contract'

/** What the poses of a step come to, by other code than the one that chose them (fine units). */
export interface OnJacks {
  readonly step: string
  /** Most by which a foot whose pack changes lacks the room to slip it at every pose. */
  readonly lacks: number
  /** Most that a limit is passed by at a pose on the way, the most packs apart, and which. */
  readonly by: number
  readonly what: string
  /** The same of where the step begins: what steps before it have left passed. */
  readonly stood: { readonly by: number; readonly what: string }
  /** Most that the body is pitched further than the stage beyond what the step makes of it. */
  readonly ahead: number
  /** Most that a foot is below the pack it then has. */
  readonly below: number
  /** Most that the first and the last pose lie from where the body stands before the step and after it. */
  readonly ends: number
  /** Most that a foot's told lift differs from the poses. */
  readonly told: number
}

const names = ['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const
const upOf = (file: TrainFile, body: BodyFile, move: Move, { x, y }: { x: number; y: number }) =>
  carriedBy(file, body, move, { x, y, z: 0 })[2]

/** Follows the poses of every step; a train file that names no stage or slip has those of the contract. */
export function onJacks(file: TrainFile, { steps }: StepsJson): OnJacks[] {
  const um = { um: 1, mm: 1000, mil: 25.4 }[file.units.fine]
  const { stage = 500 / um, slip = 1000 / um } = file.plan ?? {}
  const standing = new Map<string, Move>()
  return steps.flatMap((step): OnJacks[] => {
    const body = bodiesOf(file).find(({ id }) => id === step.body)
    if (!body) throw new Error(`no body ${step.body}`)
    const poses = step.poses.map(({ move }) => move)
    const [first, last] = [poses[0], poses.at(-1)]
    if (!first || !last) throw new Error(`${step.id} has no poses`)
    const before = standingOf(standing, body.id)
    const after = step.standing.find(({ id }) => id === body.id)?.move ?? before
    const ends = Math.max(
      ...names.flatMap((n) => [first[n] - before[n], last[n] - after[n]]).map(Math.abs),
    )
    const height = (move: Move, foot: { x: number; y?: number | undefined }) => {
      const at = { x: foot.x, y: foot.y ?? 0 }
      return upOf(file, body, move, at) - upOf(file, body, before, at)
    }
    let [lacks, below, told] = [0, 0, 0]
    for (const row of step.feet) {
      const foot = body.feet.find(({ id }) => id === row.foot)
      if (!foot) throw new Error(`no foot ${row.foot}`)
      const heights = poses.map((move) => height(move, foot))
      if (row.lift !== undefined)
        told = Math.max(told, Math.abs(row.lift - Math.max(0, ...heights)))
      if (row.shim === undefined || Math.abs(row.shim) * um <= 0.1) continue
      const need = Math.max(0, row.shim) + slip
      lacks = Math.max(lacks, need - Math.max(...heights))
      // until it first has room it stands on what it had, after that on what it gets
      const changed = heights.findIndex((h) => h >= need - 0.002 / um)
      heights.forEach((h, i) => {
        below = Math.max(below, (i < changed || changed < 0 ? 0 : (row.shim ?? 0)) - h)
      })
    }
    const xs = body.feet.map(({ x }) => x)
    const [low, high] = [Math.min(...xs), Math.max(...xs)]
    const lean = (move: Move) => height(move, { x: high }) - height(move, { x: low })
    const own = Math.abs(lean(last))
    const vertical = step.feet.some(({ shim }) => shim !== undefined)
    const ahead = vertical ? Math.max(0, ...poses.map((m) => Math.abs(lean(m)) - own - stage)) : 0
    let worst = { by: 0, what: '' }
    standing.set(body.id, first)
    const stood = worstPassed(file, standing, vertical ? ['maximum pack'] : [])
    for (const move of poses.slice(1, -1)) {
      standing.set(body.id, move)
      const passed = worstPassed(file, standing, vertical ? ['maximum pack'] : [])
      if (passed.by > worst.by) worst = passed
    }
    standing.set(body.id, after)
    return [{ step: step.id, lacks, below, told, ahead, ends, stood, ...worst }]
  })
}
