import { sideWay } from '../../language/toothWords'
import {
  runningLine,
  runsIn,
  slidingSpeed,
  toothAngle,
  toothMeshes,
  type ToothMesh,
} from '../../mechanics/misalignment/gearTeeth'
import type { GearCoupling } from '../../mechanics/gearCoupling'
import { couplingMotions } from '../../mechanics/misalignment/couplingMotion'
import { addMisalignments } from '../../mechanics/misalignment/stateShift'
import type { Motion } from '../../mechanics/motion'
import type { AsFound } from '../../mechanics/readings/asFound'
import type { Misalignment } from '../../mechanics/readings/equation'
import type { Train } from '../../mechanics/train'
import { tol } from '../../mechanics/tolerances'
import type { StandingAnswer } from './answer'
import type { TeethAnswer, TeethFigures } from './teethAnswer'

/**
 * How the teeth of every gear coupling run in every state in which it runs, as found and as moved.
 * @param motions own motions of the bodies (um, mrad); none: as found alone
 */
export function teethOf(
  train: Train,
  found: readonly AsFound[],
  motions?: readonly Motion[],
): TeethAnswer[] {
  if (train.couplings.every(({ gear }) => gear === undefined)) return []
  const moved = motions && couplingMotions(train, motions)
  return train.couplings.flatMap((coupling, c) => {
    const { gear } = coupling
    const line = found[c]?.line
    if (!gear || !line) return []
    const by = moved?.[c]?.misalignment
    return train.states
      .filter(({ id }) => runsIn(coupling, id))
      .flatMap(({ id: state }) => {
        const running = runningLine(train, coupling, state, line)
        return toothMeshes(coupling).map((mesh): TeethAnswer => {
          const side = gear.sides.find((one) => one.state === state && one.place === mesh.place)
          return {
            coupling: coupling.id,
            state,
            place: mesh.place,
            ...(gear.least !== undefined && { least: gear.least }),
            ...(gear.sliding !== undefined && { limit: gear.sliding }),
            asFound: figuresOf(gear, mesh, running),
            ...(by && { planned: figuresOf(gear, mesh, addMisalignments(running, by)) }),
            ...(side && { side: sideWay(side) }),
          }
        })
      })
  })
}

/** The same as part of an answer; nothing where no coupling has teeth. */
export function teethAnswer(
  train: Train,
  found: readonly AsFound[],
  motions?: readonly Motion[],
): Pick<StandingAnswer, 'teeth'> {
  const teeth = teethOf(train, found, motions)
  return teeth.length === 0 ? {} : { teeth }
}

function figuresOf(gear: GearCoupling, mesh: ToothMesh, d: Misalignment): TeethFigures {
  const angle = toothAngle(mesh, d)
  const size = Math.hypot(angle.y, angle.z)
  const { least, pitch, speed, sliding } = gear
  const slides =
    pitch === undefined || speed === undefined ? undefined : slidingSpeed(size, pitch, speed)
  return {
    angle,
    size,
    ...(least !== undefined && size < least * (1 - tol.onShare) && { tooStraight: true as const }),
    ...(slides !== undefined && { sliding: slides }),
    ...(slides !== undefined &&
      sliding !== undefined &&
      slides > sliding * (1 + tol.onShare) && { tooFast: true as const }),
  }
}
