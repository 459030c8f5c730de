import { fixed, sum, type Affine } from './affine'
import { build } from './model'
import { misalignment } from './reading'
import { loadSolver, Stages } from './solver'
import { couplingChecks } from './tolerance'
import { fineFactor, type Train } from './train'

/** A side on which an angle at gear teeth is kept off nought. */
export interface Side {
  coupling: string
  state: string
  place: 'left plane' | 'right plane' | 'angle'
  way: 'y' | 'z'
  sign: 1 | -1
}

/** The angle of a mesh in a state (mrad), with nothing aimed at. */
function angleOf(built: ReturnType<typeof build>, side: Side): Affine {
  const { train, movers } = built
  const c = train.couplings.find(({ id }) => id === side.coupling)
  const state = (train.states ?? [{ id: 'cold', name: 'cold' }]).find(({ id }) => id === side.state)
  if (!c || !state) throw new Error(`nothing is known of ${side.coupling} in ${side.state}`)
  const two = c.right.plane > c.left.plane
  // a tolerance of 1 mrad, so that a share is an angle
  const bare = { ...c, aim: undefined, tolerance: two ? { flex: 1 } : { angle: 1 } }
  const found = misalignment(c)
  const checks = couplingChecks(train, bare, found, [{ ...state, tolerance: 1 }], movers)
  const check = checks.find(({ what }) => what === side.place)
  const angle = side.way === 'y' ? check?.y : check?.z
  if (!angle) throw new Error(`no ${side.place} at ${side.coupling}`)
  return angle
}

/** The least cost within the share with angles kept off nought on these sides, in fine units; undefined: none. */
export async function costWithSides(
  document: Train,
  sides: readonly Side[],
): Promise<number | undefined> {
  const built = build(document)
  for (const side of sides) {
    const least = document.couplings.find(({ id }) => id === side.coupling)?.gear?.least ?? NaN
    built.program.rows.push({
      family: 'flex',
      also: [],
      expression: sum([side.sign, angleOf(built, side)], [1, fixed(-least)]),
      low: 0,
      high: Infinity,
    })
  }
  const stages = new Stages(await loadSolver(), built.program)
  try {
    const cost: Affine = { constant: 0, by: new Map() }
    built.program.cost.forEach((price, i) => {
      if (price !== 0) cost.by.set(i, price)
    })
    const worst: Affine = { constant: 0, by: new Map([[built.program.worst, 1]]) }
    const floor = stages.least(worst)
    if (!floor || floor.objective > built.share) return undefined
    stages.limitWorst(built.share)
    const cheapest = stages.least(cost)
    return cheapest && cheapest.objective / fineFactor(document)
  } finally {
    stages.dispose()
  }
}
