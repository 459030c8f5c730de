import { describe, expect, it } from 'vitest'
import { floorCause } from '../../src/engine/infeasible/floor/floorReason'
import { choiceOf } from '../../src/engine/studies/holds/choice'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { lackOf } from '../../src/engine/studies/holds/lack'
import { planRead } from '../planned'
import type { Body, Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'
import { example, holding } from './choice'

const solver = await glpkSolver()

/** The train with more room (um) at the limits of these bodies and kinds. */
function roomier(train: Train, kinds: ReadonlySet<string>, room: number): Train {
  const widen = (body: Body, b: number): Body => ({
    ...body,
    feet: body.feet.map((foot) => ({
      ...foot,
      ...(foot.hole &&
        kinds.has(`hole ${b}`) && {
          hole: { ...foot.hole, clearance: foot.hole.clearance + 2 * room },
        }),
      ...(foot.pack &&
        kinds.has(`pack ${b}`) && { pack: { ...foot.pack, min: foot.pack.min - room } }),
    })),
    restraints: body.restraints.map((restraint) => {
      const wide = { ...restraint }
      for (const way of ['side', 'rise', 'axial'] as const) {
        const range = restraint[way]
        if (range && kinds.has(`restraint ${b} ${way}`))
          wide[way] = [range[0] - room, range[1] + room]
      }
      return wide
    }),
  })
  const bodies = train.bodies.map(widen)
  return { ...train, bodies, machines: bodies.slice(0, train.machines.length) }
}

describe('the room that an impossible choice lacks', () => {
  it.each([
    ['bolt-bound-gearbox', ['gear']],
    ['bolt-bound-gearbox', ['high-stage']],
    ['base-bound-motor', ['fluid-drive']],
    ['base-bound-motor', ['gear']],
    ['skid-as-one', ['bedplate']],
    ['skid-as-one', ['turbine', 'gear', 'bedplate']],
  ])('%s holding %j: it is enough, and not too much', (name, held) => {
    const train = holding(example(name), held)
    const holds = new HoldSolver(train, solver)
    const index = new Set(train.bodies.flatMap(({ id }, b) => (held.includes(id) ? [b] : [])))
    const cause = floorCause(holds, holds.free(choiceOf(train, index)))
    expect(cause?.kind).toBe('limits')
    const lack = cause && lackOf(holds, cause)
    expect(lack?.amount).toBeGreaterThan(1)
    const kinds = new Set(
      lack?.props.map(({ meaning }) =>
        meaning.fact === 'restraint'
          ? `restraint ${meaning.body} ${meaning.way}`
          : `${meaning.fact} ${meaning.body}`,
      ),
    )
    const status = (part: number) =>
      planRead(roomier(train, kinds, (lack?.amount ?? NaN) * part), solver, { prices: false })
        .status
    expect(status(0)).toBe('impossible')
    expect(status(1.0001)).toBe('planned')
    expect(status(0.98)).toBe('impossible')
  })
})
