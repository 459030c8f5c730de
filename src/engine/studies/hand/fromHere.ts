import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { addMisalignments } from '../../../mechanics/misalignment/stateShift'
import { withoutSides } from '../../../mechanics/misalignment/gearTeeth'
import { noMotion } from '../../../mechanics/motion'
import { PlanRun } from '../../plan/planRun'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'
import { keptRooms } from '../../../mechanics/uncertainty/kept'
import type { Solver } from '../../lp/solver'
import type { Coupling, Train } from '../../../mechanics/train'
import { handMotions, type HandPlan } from './handPlan'

export type FromHere =
  | { readonly ok: true; readonly hand: HandPlan }
  /** With what was put by hand where it is, nothing comes below this share; undefined: not known. */
  | { readonly ok: false; readonly floor: number | undefined }

/**
 * Leaves the machines that were put by hand where they are, and moves the others by the least that
 * then meets the share: the same planner on a train whose touched bodies stand there and are held.
 */
export function bestFromHere(train: Train, hand: HandPlan, solver: Solver): FromHere {
  const touched = new Set(hand.touched)
  const placed = handMotions(train, hand).map((motion, b) =>
    touched.has(train.bodies[b]?.id ?? '') ? motion : noMotion,
  )
  const moved = couplingMotions(train, placed)
  const found = foundLines(train).map((was, c) => {
    const motion = moved[c]?.misalignment
    return motion ? { ...was, line: addMisalignments(was.line, motion) } : was
  })
  const hold = <T extends Train['bodies'][number]>(body: T): T =>
    touched.has(body.id) ? { ...body, held: true } : body
  const there: Train = {
    ...withoutSides(train),
    bodies: train.bodies.map(hold),
    machines: train.machines.map(hold),
    couplings: withoutSides(train).couplings.map((coupling, c): Coupling => {
      const { axial } = coupling
      const opened = (moved[c]?.gap ?? 0) / 1000
      return axial ? { ...coupling, axial: { ...axial, found: axial.found + opened } } : coupling
    }),
  }
  const kept = keptRooms(train)
  const run = new PlanRun(there, solver, { lines: found, rooms: kept })
  const solved = run.solved()
  if (solved.status === 'impossible' || solved.status === 'stopped')
    return { ok: false, floor: solved.floor }
  const motions = run.motions()
  return {
    ok: true,
    hand: {
      touched: hand.touched,
      motions: Object.fromEntries(
        train.bodies.map(({ id }, b) => [
          id,
          (touched.has(id) ? placed[b] : motions[b]) ?? noMotion,
        ]),
      ),
    },
  }
}
