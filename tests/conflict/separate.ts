import type { ConflictLimit, ConflictMember } from '../../src/engine/infeasible/conflict/answer'
import { footLimitList } from '../second/footLimits'
import { addBody } from '../second/limits'
import { metric } from '../second/metric'
import { loosen } from '../second/model'
import { movers } from '../second/motion'
import { emptyProgram } from '../second/program'
import { misalignment } from '../second/reading'
import { loadSolver, Stages } from '../second/solver'
import { addChecks, couplingChecks } from '../second/tolerance'
import { statesOf, type Body, type Foot, type Restraint, type Train } from '../second/train'

/**
 * The smallest worst share of a train that must respect these members of a conflict and nothing else,
 * by the second builder and another solver: the document is edited, and only the couplings named are
 * checked, in the states named.
 * @param loose with every circle as wide as a plan may take it
 */
export async function leastShareOf(
  document: Train,
  members: readonly ConflictMember[],
  { loose = false } = {},
): Promise<number> {
  const highs = await loadSolver()
  const train = metric(keeping(document, members))
  const program = emptyProgram()
  const all = movers(program, train)
  for (const mover of all.values()) addBody(program, mover, train.plan)
  const checks = train.couplings
    .flatMap((c) => couplingChecks(train, c, misalignment(c), statesOf(train), all))
    .filter(({ coupling, state }) =>
      members.some(
        ({ limit }) =>
          limit.kind === 'coupling' && limit.coupling === coupling && limit.state === state,
      ),
    )
  addChecks(program, checks)
  if (loose) loosen(program)
  const stages = new Stages(highs, program)
  try {
    const worst = { constant: 0, by: new Map([[program.worst, 1]]) }
    const least = stages.least(worst)
    if (!least) throw new Error('the smallest worst share came back infeasible')
    return least.objective
  } finally {
    stages.dispose()
  }
}

/** The document with only these members left of what limits and holds its bodies. */
function keeping(document: Train, members: readonly ConflictMember[]): Train {
  const has = (asked: (limit: ConflictLimit) => boolean) =>
    members.some(({ limit }) => asked(limit))
  const keepBody = <B extends Body>(body: B): B => {
    const id = body.id
    const stays =
      body.feet.length === 0 || has((limit) => limit.kind === 'held' && limit.body === id)
    return {
      ...body,
      held: stays,
      anchored: stays ? body.anchored : undefined,
      tilt: has((limit) => limit.kind === 'tilt' && limit.body === id) ? body.tilt : undefined,
      feet: body.feet.map((foot) =>
        keepFoot(foot, (name) =>
          has(
            (limit) =>
              limit.kind === 'foot' &&
              limit.limit === name &&
              limit.body === id &&
              limit.foot === foot.id,
          ),
        ),
      ),
      restraints: body.restraints?.map((restraint) =>
        keepRestraint(restraint, (way) =>
          has(
            (limit) =>
              limit.kind === 'restraint' &&
              limit.body === id &&
              limit.restraint === restraint.id &&
              limit.way === way,
          ),
        ),
      ),
    }
  }
  return {
    ...document,
    machines: document.machines.map(keepBody),
    skids: document.skids?.map(keepBody),
  }
}

function keepFoot(foot: Foot, has: (limit: string) => boolean): Foot {
  const { id, x, y } = foot
  const kept: Foot = { id, x, y, free: { shim: true, side: true } }
  for (const { name, keep } of footLimitList) if (has(name)) keep(foot, kept)
  return kept
}

function keepRestraint(
  restraint: Restraint,
  has: (way: 'axial' | 'side' | 'rise') => boolean,
): Restraint {
  const { id, x, y, z, axial, side, rise } = restraint
  return {
    id,
    x,
    y,
    z,
    axial: has('axial') ? axial : undefined,
    side: has('side') ? side : undefined,
    rise: has('rise') ? rise : undefined,
  }
}
