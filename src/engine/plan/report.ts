import { tidy } from '../../language/tidy'
import type { Coupling, Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { expectedSets } from '../../mechanics/readings/expected'
import { noMotion, type Motion } from '../../mechanics/motion'
import { bandAround, setDoubts } from '../../mechanics/misalignment/bands'
import { workErrors, workedBy } from '../../mechanics/uncertainty/workErrors'
import { keptRooms } from '../../mechanics/uncertainty/kept'
import { roomsOf, verdictsOf, type CheckVerdict } from '../../mechanics/uncertainty/verdict'
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
} from './answer'
import { footMove } from './totals'

/** What is told of motions, by ids. Shares lose the last digits, so that noise decides no comparison of them. */
export function bodiesAnswer(train: Train, motions: readonly Motion[]): BodyAnswer[] {
  return train.bodies.map((body, b) => {
    const { tx, ty, tz, sy, sz, roll } = motions[b] ?? noMotion
    return { id: body.id, held: body.held, move: { tx, ty, tz, sy, sz, roll } }
  })
}

export function feetAnswer(train: Train, motions: readonly Motion[]): FootAnswer[] {
  return train.bodies.flatMap((body, b) =>
    body.feet.map((foot) => {
      const motion = motions[b]
      const move = motion ? footMove(body, motion, foot) : { shim: 0, side: 0, axial: 0 }
      const { hole, pack } = foot
      const centre = hole && { x: hole.x + move.axial, y: hole.y + move.side }
      return {
        body: body.id,
        foot: foot.id,
        ...move,
        ...(pack && { packAfter: pack.now + move.shim }),
        ...(hole &&
          centre && {
            boltAt: {
              x: -centre.x,
              y: -centre.y,
              room: hole.clearance / 2 - Math.hypot(centre.x, centre.y),
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
  const kept = keptRooms(train)
  const before = sharesOf(train, found)
  const checksAnswer = (result: CouplingResult): CheckAnswer[] => {
    const verdicts = verdictsOf(train, result, kept)
    const rooms = roomsOf(train, result, kept)
    return result.checks.map((check, i) => ({
      ...checkAnswer(check, verdicts?.[i]),
      ...(rooms?.[i] && { kept: rooms[i] }),
    }))
  }
  return sharesOf(train, found, couplingMotions(train, motions)).map((after, i) => {
    const coupling = train.couplings[after.coupling]
    const was = before[i]
    if (!coupling || !was) throw new RangeError('coupling results out of step')
    return {
      coupling: coupling.id,
      state: after.state,
      share: tidy(after.share),
      checks: checksAnswer(after),
      asFound: { share: tidy(was.share), checks: checksAnswer(was) },
    }
  })
}

const checkAnswer = (
  { what, x, y, z, limit, share }: CheckResult,
  verdict: CheckVerdict | undefined,
): CheckAnswer => ({
  what,
  ...(y !== undefined && { y }),
  ...(z !== undefined && { z }),
  ...(x !== undefined && { x }),
  limit,
  share: tidy(share),
  ...(verdict && { verdict }),
})

export function asFoundAnswer(
  train: Train,
  found: readonly AsFound[],
  standing: readonly CouplingResult[],
): AsFoundAnswer[] {
  return train.couplings.map((coupling, c) => {
    const { line, covariance, ofValues = covariance, residual } = foundOf(found, c, coupling)
    const u = (k: number) => Math.sqrt(Math.max(0, ofValues[k]?.[k] ?? 0))
    return {
      coupling: coupling.id,
      at: coupling.mid,
      offset: { y: line.y, z: line.z },
      slope: { y: line.sy, z: line.sz },
      u: { offset: { y: u(0), z: u(2) }, slope: { y: u(1), z: u(3) } },
      residual,
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
  const moved = couplingMotions(train, motions)
  const errors = workErrors(train, workedBy(train, motions))
  return train.couplings.flatMap((coupling, c) => {
    const was = foundOf(found, c, coupling)
    const motion = moved[c]
    if (!motion) throw new RangeError('coupling motions out of step')
    const d = addMisalignments(was.line, motion.misalignment)
    const doubts = setDoubts(coupling, was, errors[c] ?? [])
    return expectedSets(coupling, was, d, motion.gap).map((set, i): ExpectedAnswer => {
      const doubt = doubts[i]
      const at = { coupling: coupling.id, set: i }
      if (set.kind === 'line') {
        const { offset, slope } = set
        return {
          ...at,
          offset: { y: offset.y, z: offset.z },
          slope: { y: slope.y, z: slope.z },
          ...(doubt?.kind === 'line' && {
            good: {
              offset: waysAround(offset, doubt.offset),
              slope: waysAround(slope, doubt.slope),
            },
          }),
        }
      }
      return {
        ...at,
        readings: set.readings.map(({ hour, value }): [number, number] => [hour, value]),
        ...(doubt?.kind === 'sweep' && {
          good: set.readings.map(({ value }, k) => bandAround(value, doubt.readings[k] ?? 0)),
        }),
      }
    })
  })
}

interface Sides {
  readonly y: number
  readonly z: number
}

const waysAround = (value: Sides, u: Sides) => ({
  y: bandAround(value.y, u.y),
  z: bandAround(value.z, u.z),
})

function foundOf(found: readonly AsFound[], index: number, coupling: Coupling): AsFound {
  const was = found[index]
  if (!was) throw new RangeError(`coupling ${coupling.id} was not reduced`)
  return was
}
