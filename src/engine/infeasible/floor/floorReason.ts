import { tol } from '../../../mechanics/tolerances'
import { tidy } from '../../../language/tidy'
import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import type { KeptRooms } from '../../../mechanics/uncertainty/kept'
import { bindingLimit } from '../../plan/bindingLimit'
import type { PartSolver } from '../../plan/partSolver'
import { solveParts } from '../../plan/solveParts'
import type { Partition } from '../../lp/parts'
import { standingShare } from '../../lp/standing'
import type { Solver } from '../../lp/solver'
import type { BindingLimit } from '../../plan/answer'
import { furthestApart, type Apart } from './apart'
import { floorWeights, type CouplingWeight } from './dualWeights'
import type { FloorCause, FloorKind } from './floorCause'
import { mostKept, partOf } from './keptAlone'
import { floorSentence } from './sentence'
import { statesFloor } from './statesFloor'

/** What the floor's reason is worked out from: a train, its readings and its solved parts. */
export interface FloorSetting {
  readonly train: Train
  readonly found: readonly AsFound[]
  /** Worst share of tolerance with nothing moved. */
  readonly standing: number
  readonly partition: Partition
  readonly parts: PartSolver
  /** Room kept free of its tolerances; undefined: none. */
  readonly kept: KeptRooms | undefined
  readonly solver: Solver
}

/**
 * Why no move reaches a smaller worst share. "none": one is reached that people would call nothing;
 * "kept": what is kept free of one check is as much by itself;
 * "states": the states of one coupling pull it apart, whatever is held; "still": a coupling between
 * bodies that stay; "teeth": gear couplings kept off dead straight on the sides of the plan; "limits": bolts, packs and the like; "machines": the same machines cannot serve
 * two couplings, or two states, at once.
 */
export interface FloorReason {
  readonly kind: FloorKind
  readonly floor: number
  /** Tolerances that together hold it there; their weights add up to 1. Dearest first. */
  readonly pulls: readonly {
    readonly coupling: string
    readonly state: string
    readonly what: string
    readonly weight: number
  }[]
  /** The pair of states, with kind "states": mrad, mm for a gap, um for an offset. */
  readonly apart?: {
    readonly coupling: string
    readonly states: readonly [string, string]
    readonly what: string
    readonly value: number
    readonly share: number
  }
  /** Limits that it leans on, dearest first. */
  readonly limits: readonly BindingLimit[]
  readonly sentence: string
}

/**
 * The cause of a choice's floor.
 * @param free tells the motions that the choice leaves free
 * @returns undefined where the solver stopped before the floor was known
 */
export function floorCause(
  setting: FloorSetting,
  free: (column: number) => boolean,
): FloorCause | undefined {
  const { partition, parts, train } = setting
  const { floor } = solveParts(partition, parts, train.plan.share, setting.standing, free)
  if (floor === undefined) return undefined
  if (floor <= tol.noFloor) return { kind: 'none', floor, pulls: [], props: [] }
  const kept = mostKept(train, setting.kept)
  if (kept && partOf(kept) >= floor * (1 - tol.sameFloor)) {
    const { coupling, state, what } = kept
    const meaning = { fact: 'tolerance', coupling, state, what, way: 'round' } as const
    return { kind: 'kept', floor, pulls: [{ meaning, weight: 1 }], kept, props: [] }
  }
  const still = stillPull(partition, free)
  if (still && still.share >= floor * (1 - tol.sameFloor))
    return { kind: 'still', floor, pulls: [still.pull], props: [] }
  const group = partition
    .split(free)
    .find((one) => (parts.knownFloor(one)?.bound ?? -1) >= floor * (1 - tol.sameFloor))
  const lowest = group && parts.knownFloor(group)
  if (!group || !lowest) return undefined
  const { pulls, props, teeth } = floorWeights(parts.part(group).program, lowest)
  const apart = pulledApart(setting, floor, pulls)
  if (apart) return { kind: 'states', floor, pulls, apart, props: [], group }
  if (teeth.length > 0) return { kind: 'teeth', floor, pulls, props, teeth, group }
  return { kind: props.length > 0 ? 'limits' : 'machines', floor, pulls, props, group }
}

/** The cause in words and document ids. */
export function floorReason(
  setting: FloorSetting,
  free: (column: number) => boolean,
): FloorReason | undefined {
  const cause = floorCause(setting, free)
  if (!cause) return undefined
  const { train } = setting
  const { apart } = cause
  const coupling = (c: number) => train.couplings[c]?.id ?? ''
  const state = (s: number) => train.states[s]?.id ?? ''
  return {
    kind: cause.kind,
    floor: tidy(cause.floor),
    pulls: cause.pulls.map(({ meaning, weight }) => ({
      coupling: coupling(meaning.coupling),
      state: state(meaning.state),
      what: meaning.what,
      weight: weight,
    })),
    ...(apart && {
      apart: {
        coupling: coupling(apart.coupling),
        states: [state(apart.states[0]), state(apart.states[1])] as const,
        what: apart.what,
        value: apart.value,
        share: tidy(apart.share),
      },
    }),
    limits: cause.props.map((prop) => bindingLimit(train, prop)),
    sentence: floorSentence(train, cause),
  }
}

/** The worst coupling between bodies that stay. */
function stillPull(
  partition: Partition,
  free: (column: number) => boolean,
): { share: number; pull: CouplingWeight } | undefined {
  const { rows, circles } = partition.still(free)
  const all = [
    ...rows.map((row) => ({ share: standingShare([row], []), meaning: row.meaning })),
    ...circles.flatMap((c) => {
      const circle = partition.program.circles[c]
      return circle ? [{ share: standingShare([], [circle]), meaning: circle.meaning }] : []
    }),
  ]
  const worst = all.reduce<(typeof all)[number] | undefined>(
    (a, b) => (a === undefined || b.share > a.share ? b : a),
    undefined,
  )
  if (worst?.meaning.fact !== 'tolerance') return undefined
  return { share: worst.share, pull: { meaning: worst.meaning, weight: 1 } }
}

/** The coupling whose states alone hold the floor where it is, if one does. */
function pulledApart(
  setting: FloorSetting,
  floor: number,
  pulls: readonly CouplingWeight[],
): Apart | undefined {
  const { train, found, solver, kept } = setting
  for (const c of new Set(pulls.map(({ meaning }) => meaning.coupling))) {
    const line = found[c]
    const own = line && statesFloor(train, c, line, solver, kept)
    if (own !== undefined && own >= floor * (1 - tol.sameFloor))
      return furthestApart(train, c, kept)
  }
  return undefined
}
