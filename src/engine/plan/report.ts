import { toFine, toLength } from '../../mechanics/units'
import type { Coupling, Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { expectedSets } from '../../mechanics/readings/expected'
import type { Motion } from '../../mechanics/motion'
import { couplingMotions } from '../../mechanics/misalignment/couplingMotion'
import { addMisalignments } from '../../mechanics/misalignment/stateShift'
import {
  sharesOf,
  type CheckResult,
  type CouplingResult,
} from '../../mechanics/misalignment/shares'
import type {
  AsFoundAnswer,
  BodyAnswer,
  CheckAnswer,
  CouplingAnswer,
  ExpectedAnswer,
  FootAnswer,
  Totals,
} from './answer'
import { tidy } from '../../language/tidy'
import { footMove, totalsOf } from './totals'

/** Writes results in the document's units. */
export function totalsAnswer(train: Train, motions: readonly Motion[]): Totals {
  const { shim, side, axial } = totalsOf(train, motions)
  const fine = (value: number) => tidy(toFine(value, train.units))
  return { shim: fine(shim), side: fine(side), axial: fine(axial) }
}

export function bodiesAnswer(train: Train, motions: readonly Motion[]): BodyAnswer[] {
  const fine = (value: number) => tidy(toFine(value, train.units))
  return train.bodies.map((body, b) => {
    const { tx = 0, ty = 0, tz = 0, sy = 0, sz = 0, roll = 0 } = motions[b] ?? {}
    return {
      id: body.id,
      held: body.held,
      move: {
        tx: fine(tx),
        ty: fine(ty),
        tz: fine(tz),
        sy: tidy(sy),
        sz: tidy(sz),
        roll: tidy(roll),
      },
    }
  })
}

export function feetAnswer(train: Train, motions: readonly Motion[]): FootAnswer[] {
  const fine = (value: number) => tidy(toFine(value, train.units))
  return train.bodies.flatMap((body, b) =>
    body.feet.map((foot) => {
      const motion = motions[b]
      const move = motion ? footMove(body, motion, foot) : { shim: 0, side: 0, axial: 0 }
      const { hole, pack } = foot
      const centre = hole && { x: hole.x + move.axial, y: hole.y + move.side }
      return {
        body: body.id,
        foot: foot.id,
        shim: fine(move.shim),
        side: fine(move.side),
        axial: fine(move.axial),
        ...(pack && { packAfter: fine(pack.now + move.shim) }),
        ...(hole &&
          centre && {
            boltAt: {
              x: fine(-centre.x),
              y: fine(-centre.y),
              room: fine(hole.clearance / 2 - Math.hypot(centre.x, centre.y)),
            },
          }),
      }
    }),
  )
}

export function couplingsAnswer(
  train: Train,
  found: readonly AsFound[],
  motions: readonly Motion[],
): CouplingAnswer[] {
  const before = sharesOf(train, found)
  return sharesOf(train, found, couplingMotions(train, motions)).map((after, i) => {
    const coupling = train.couplings[after.coupling]
    const was = before[i]
    if (!coupling || !was) throw new RangeError('coupling results out of step')
    return {
      coupling: coupling.id,
      state: after.state,
      share: tidy(after.share),
      checks: after.checks.map((check) => checkAnswer(train, check)),
      asFound: {
        share: tidy(was.share),
        checks: was.checks.map((check) => checkAnswer(train, check)),
      },
    }
  })
}

/** Offsets in fine units, angles in mrad, gaps in lengths. */
function checkAnswer(train: Train, check: CheckResult): CheckAnswer {
  const convert = (value: number): number => {
    if (check.what === 'gap') return tidy(toLength(value, train.units))
    return tidy(check.what === 'offset' ? toFine(value, train.units) : value)
  }
  return {
    what: check.what,
    ...(check.y !== undefined && { y: convert(check.y) }),
    ...(check.z !== undefined && { z: convert(check.z) }),
    ...(check.x !== undefined && { x: convert(check.x) }),
    limit: convert(check.limit),
    share: tidy(check.share),
  }
}

export function asFoundAnswer(
  train: Train,
  found: readonly AsFound[],
  standing: readonly CouplingResult[],
): AsFoundAnswer[] {
  const fine = (value: number) => tidy(toFine(value, train.units))
  return train.couplings.map((coupling, c) => {
    const { line, covariance, residual } = foundOf(found, c, coupling)
    const u = (k: number) => Math.sqrt(Math.max(0, covariance[k]?.[k] ?? 0))
    return {
      coupling: coupling.id,
      at: tidy(toLength(coupling.mid, train.units)),
      offset: { y: fine(line.y), z: fine(line.z) },
      slope: { y: tidy(line.sy), z: tidy(line.sz) },
      u: { offset: { y: fine(u(0)), z: fine(u(2)) }, slope: { y: tidy(u(1)), z: tidy(u(3)) } },
      residual: tidy(residual),
      share: Object.fromEntries(
        standing
          .filter((result) => result.coupling === c)
          .map((result) => [result.state, tidy(result.share)]),
      ),
    }
  })
}

export function expectedAnswer(
  train: Train,
  found: readonly AsFound[],
  motions: readonly Motion[],
): ExpectedAnswer[] {
  const fine = (value: number) => tidy(toFine(value, train.units))
  const moved = couplingMotions(train, motions)
  return train.couplings.flatMap((coupling, c) => {
    const was = foundOf(found, c, coupling)
    const motion = moved[c]
    if (!motion) throw new RangeError('coupling motions out of step')
    const d = addMisalignments(was.line, motion.misalignment)
    return expectedSets(coupling, was, d, motion.gap).map((set, i) =>
      set.kind === 'line'
        ? {
            coupling: coupling.id,
            set: i,
            offset: { y: fine(set.offset.y), z: fine(set.offset.z) },
            slope: { y: tidy(set.slope.y), z: tidy(set.slope.z) },
          }
        : {
            coupling: coupling.id,
            set: i,
            readings: set.readings.map(({ hour, value }): [number, number] => [hour, fine(value)]),
          },
    )
  })
}

function foundOf(found: readonly AsFound[], index: number, coupling: Coupling): AsFound {
  const was = found[index]
  if (!was) throw new RangeError(`coupling ${coupling.id} was not reduced`)
  return was
}
