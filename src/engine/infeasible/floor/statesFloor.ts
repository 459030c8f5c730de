import { tol } from '../../../mechanics/tolerances'
import { axialChecks } from '../../../mechanics/axial'
import { judgedStates } from '../../../mechanics/engaged'
import type { Coupling, Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { checksOf, checkValue } from '../../../mechanics/misalignment/check'
import { addMisalignments, stateShift } from '../../../mechanics/misalignment/stateShift'
import type { KeptRooms } from '../../../mechanics/uncertainty/kept'
import { keptFree } from '../../lp/rows/keptFree'
import { leastShare } from '../../lp/leastShare'
import { firstCuts } from '../../lp/cuts'
import { constant, type Affine } from '../../lp/affine'
import {
  programUnit,
  shareColumn,
  type Circle,
  type Column,
  type Meaning,
  type Program,
  type Row,
} from '../../lp/program'
import type { Solver } from '../../lp/solver'

/**
 * The smallest worst share of one coupling when its machines could be put anywhere at all: what the
 * states alone, by pulling it different ways, leave. No shim can buy it back.
 * @param kept room kept free of its tolerances
 * @returns undefined when the solver stopped
 */
export function statesFloor(
  train: Train,
  index: number,
  found: AsFound,
  solver: Solver,
  kept: KeptRooms | undefined,
): number | undefined {
  const coupling = train.couplings[index]
  if (!coupling) throw new RangeError(`no coupling ${index}`)
  const program = freeCoupling(train, coupling, index, found, kept)
  const least = leastShare(program, { ask: 'floor' }, firstCuts(program), solver)
  return least.kind === 'optimal' ? least.bound : undefined
}

const unknowns = ['y', 'sy', 'z', 'sz', 'gap'] as const

/** A program whose only motions are those of the coupling's line and gap. */
function freeCoupling(
  train: Train,
  coupling: Coupling,
  index: number,
  found: AsFound,
  kept: KeptRooms | undefined,
): Program {
  // slopes are measured by what they do over the span, so that all columns are lengths
  const span = Math.max(1, coupling.q - coupling.p, ...checksOf(coupling).map((c) => c.lever))
  const columns: Column[] = [
    { name: 'share', lower: 0, upper: Infinity, cost: 0, meaning: { part: 'share' } },
    ...unknowns.map((name): Column => ({
      name,
      lower: -Infinity,
      upper: Infinity,
      cost: 0,
      meaning: { part: 'room' },
    })),
  ]
  const column = (name: (typeof unknowns)[number]) => 1 + unknowns.indexOf(name)
  const limits: Row[] = []
  const circles: Circle[] = []
  for (const { state, s } of judgedStates(train, coupling)) {
    const shift = stateShift(train, coupling, state.id)
    const standing = addMisalignments(found.line, shift.misalignment)
    for (const check of checksOf(coupling)) {
      const size = (check.lever * check.limit * state.factor) / programUnit
      const now = checkValue(check, standing)
      const way = (axis: 'y' | 'z'): Affine => ({
        constant: (now[axis] * check.lever) / programUnit,
        terms: new Map(
          (
            [
              [column(axis), check.offset * check.lever],
              [column(`s${axis}`), (check.slope * check.lever) / span],
            ] as const
          ).filter(([, a]) => a !== 0),
        ),
      })
      const meaning = (round: 'round' | 'y' | 'z'): Meaning => ({
        fact: 'tolerance',
        coupling: index,
        state: s,
        what: check.what,
        way: round,
      })
      if (coupling.tolerance.shape === 'round')
        circles.push({
          name: `${check.what} ${state.id}`,
          u: way('y'),
          w: way('z'),
          radius: { constant: 0, terms: new Map([[shareColumn, size]]) },
          slack: tol.roundSlack * size,
          meaning: meaning('round'),
        })
      else
        for (const axis of ['y', 'z'] as const)
          limits.push(...within(way(axis), size, meaning(axis)))
    }
    if (coupling.axial) {
      const { found: gap, want } = coupling.axial
      for (const { what, middle, limit } of axialChecks(coupling.axial, state.factor)) {
        const now = constant(((gap - want - middle) * 1000 + shift.gap) / programUnit)
        const error: Affine = { ...now, terms: new Map([[column('gap'), 1]]) }
        const meaning = { fact: 'tolerance', coupling: index, state: s, what, way: 'x' } as const
        limits.push(...within(error, (limit * 1000) / programUnit, meaning))
      }
    }
  }
  const free = keptFree(train, kept)
  return {
    columns,
    firstMove: columns.length,
    limits: limits.map(free.row),
    displacements: [],
    circles: circles.map(free.circle),
  }
}

const within = (error: Affine, size: number, meaning: Meaning): Row[] =>
  ([1, -1] as const).map((sign) => ({
    name: `${meaning.fact} ${sign}`,
    terms: [
      ...[...error.terms].map(([column, a]) => [column, sign * a] as const),
      [shareColumn, -size] as const,
    ],
    lower: -Infinity,
    upper: -sign * error.constant,
    meaning,
  }))
