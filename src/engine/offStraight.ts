import type { ToothSide } from '../mechanics/gearCoupling'
import { keepsOff, toothMeshes } from '../mechanics/misalignment/gearTeeth'
import type { Train } from '../mechanics/train'
import type { Solver } from './lp/solver'
import { PlanRun } from './plan/planRun'
import { teethOf } from './plan/teeth'
import type { TeethAnswer } from './plan/teethAnswer'

/** Most plans made for one way of choosing sides: a plan kept off straight at one mesh may straighten another. */
const mostRounds = 4

/**
 * The train with the sides on which its plan keeps gear couplings off dead straight. That an angle is at least so long is
 * no convex limit, and a linear program cannot state it. So the plan without it is made first: where that keeps every
 * least by itself there is nothing to choose, and no cheaper plan exists at all. Else the angles that are too straight are
 * kept on one side each: the one on which they lie already, planned or found, or the same one for the whole coupling; the
 * cheapest plan of these is taken, and that none is cheaper is proven for its sides alone.
 * @param work how many times the usual work each plan may take
 * @returns the train as it is where nothing is to be chosen, or where no side that was tried has a plan
 */
export function offStraight(train: Train, solver: Solver, work = 1): Train {
  if (!keepsOff(train)) return train
  const first = new PlanRun(train, solver, { work })
  const missing = tooStraight(first)
  if (missing === undefined || missing.length === 0) return train
  const tried = new Set<string>()
  let best: { train: Train; cost: number } | undefined
  for (const choose of choosers(train)) {
    const sided = keptOff(train, missing, choose, solver, work, tried)
    if (sided && (!best || sided.cost < best.cost)) best = sided
  }
  return best?.train ?? train
}

/** Meshes that the plan of a train leaves too straight; undefined where it has no proven plan. */
function tooStraight(run: PlanRun): TeethAnswer[] | undefined {
  const { status } = run.solved()
  if (status !== 'planned' && status !== 'in-tolerance') return undefined
  if (status === 'planned' && !run.proof().sound) return undefined
  return teethOf(run.train, run.found(), run.motions()).filter(
    ({ planned }) => planned?.tooStraight === true,
  )
}

/** On which side a mesh is kept. */
type Choose = (mesh: TeethAnswer) => Pick<ToothSide, 'way' | 'sign'>

function choosers(train: Train): Choose[] {
  const along = ({ y, z }: { y: number; z: number }): Pick<ToothSide, 'way' | 'sign'> =>
    Math.abs(y) > Math.abs(z)
      ? { way: 'y', sign: y < 0 ? -1 : 1 }
      : { way: 'z', sign: z < 0 ? -1 : 1 }
  /** The right machine higher, lower or to a side of the left one: opposite signs at the two planes. */
  const offset =
    (way: 'y' | 'z', sign: 1 | -1): Choose =>
    ({ coupling: id, place }) => {
      const coupling = train.couplings.find((one) => one.id === id)
      const mesh = coupling && toothMeshes(coupling).find((one) => one.place === place)
      return { way, sign: (mesh?.offset ?? 0) < 0 ? (-sign as 1 | -1) : sign }
    }
  return [
    ({ planned, asFound }) => along(planned ? planned.angle : asFound.angle),
    ({ asFound }) => along(asFound.angle),
    offset('z', 1),
    offset('z', -1),
    offset('y', 1),
    offset('y', -1),
  ]
}

/** The cheapest plan with the meshes that are too straight kept off on the sides chosen, and those that it straightens. */
function keptOff(
  train: Train,
  first: readonly TeethAnswer[],
  choose: Choose,
  solver: Solver,
  work: number,
  tried: Set<string>,
): { train: Train; cost: number } | undefined {
  const sides = new Map<string, ToothSide[]>()
  let missing: readonly TeethAnswer[] = first
  for (let round = 0; round < mostRounds; round++) {
    for (const mesh of missing) {
      const { coupling, state, place } = mesh
      sides.set(coupling, [...(sides.get(coupling) ?? []), { state, place, ...choose(mesh) }])
    }
    const sided = withSides(train, sides)
    const key = JSON.stringify([...sides])
    if (tried.has(key)) return undefined
    tried.add(key)
    const run = new PlanRun(sided, solver, { work })
    const left = tooStraight(run)
    if (left === undefined) return undefined
    if (left.length === 0) return { train: sided, cost: run.proof().cost }
    missing = left
  }
  return undefined
}

const withSides = (train: Train, sides: ReadonlyMap<string, readonly ToothSide[]>): Train => ({
  ...train,
  couplings: train.couplings.map((coupling) => {
    const own = sides.get(coupling.id)
    return own && coupling.gear ? { ...coupling, gear: { ...coupling.gear, sides: own } } : coupling
  }),
})
