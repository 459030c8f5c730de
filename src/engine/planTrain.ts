import { toFine } from './units/units'
import { readTrain } from './train/readTrain'
import type { Train } from './train/model'
import { asFound } from './readings/asFound'
import { sharesOf, worstShare } from './misalignment/shares'
import { buildProgram } from './program/buildProgram'
import { programUnit } from './program/program'
import { noMotion, type Motion } from './motion/motion'
import { prove, type Proof } from './proof/prove'
import { withReasons } from './explain/reasons'
import type { Solver } from './solver/solver'
import type { BindingAnswer, PlanAnswer, ProofAnswer, Refused } from './plan/answer'
import { bindingOf } from './plan/binding'
import { cautionsOf } from './plan/cautions'
import { findingsOf } from './plan/findings'
import { notEnteredOf } from './plan/notEntered'
import { tidy } from './plan/numbers'
import * as report from './plan/report'
import { solvePlan } from './plan/solvePlan'

/**
 * Plans a train file: reads it, reduces its readings, writes down every limit, asks for the least
 * move, and judges what comes back by other code before it is called a plan.
 * @param input a parsed train file of any shape
 * @param reasons whether an impossible answer carries its conflict and its remedies [true]
 * @param prices whether a plan carries what each limit that binds is worth, which takes as long again [true]
 * @returns the answer in the document's units, or why the document is refused; never throws on input
 */
export function planTrain(
  input: unknown,
  solver: Solver,
  { reasons = true, prices = true }: { readonly reasons?: boolean; readonly prices?: boolean } = {},
): PlanAnswer | Refused {
  const read = readTrain(input)
  if (!read.ok) return { refused: [...read.refused] }
  const answer = planRead(read.train, solver, { prices })
  return reasons ? withReasons(read, answer, solver) : answer
}

/** Plans a train that was read; an impossible one without its reasons, for answers at once. */
export function planRead(
  train: Train,
  solver: Solver,
  { prices = true }: { readonly prices?: boolean } = {},
): PlanAnswer {
  const found = train.couplings.map(asFound)
  const standing = sharesOf(train, found)
  const program = buildProgram(train, found)
  const solved = solvePlan(train, program, worstShare(standing), solver)
  const known = {
    name: train.name,
    share: train.plan.share,
    held: train.bodies.filter(({ held }) => held).map(({ id }) => id),
    asFound: report.asFoundAnswer(train, found, standing),
    standingShare: tidy(worstShare(standing)),
    floor: solved.floor === undefined ? null : tidy(solved.floor),
    findings: findingsOf(train, found),
    notEntered: notEnteredOf(train),
  }
  switch (solved.status) {
    case 'stopped':
      return { status: 'stopped', why: solved.why, ...known }
    case 'impossible':
      return { status: 'impossible', ...known }
    case 'in-tolerance':
      return planned(
        'in-tolerance',
        train.bodies.map(() => noMotion),
        0,
        [],
      )
    case 'planned':
      return planned(
        'planned',
        solved.motions,
        solved.least.bound * programUnit,
        prices ? bindingOf(train, solved.parts, solver) : [],
      )
  }

  function planned(
    status: 'planned' | 'in-tolerance',
    motions: readonly Motion[],
    bound: number,
    binding: BindingAnswer[],
  ): PlanAnswer {
    const lines = found.map(({ line }) => line)
    const proof = prove(train, lines, motions, train.plan.share, bound)
    if (!proof.sound)
      return {
        status: 'unproven',
        why: proof.faults.join('; '),
        ...known,
        proof: proofAnswer(train, proof),
      }
    return {
      status,
      ...known,
      findings: [...known.findings, ...cautionsOf(train, motions, proof.worstShare)],
      cost: tidy(toFine(proof.cost, train.units)),
      total: report.totalsAnswer(train, motions),
      bodies: report.bodiesAnswer(train, motions),
      feet: report.feetAnswer(train, motions),
      couplings: report.couplingsAnswer(train, found, motions),
      worstShare: tidy(proof.worstShare),
      binding,
      expected: report.expectedAnswer(train, found, motions),
      proof: proofAnswer(train, proof),
    }
  }
}

function proofAnswer(train: Train, proof: Proof): ProofAnswer {
  const fine = (value: number) => tidy(toFine(value, train.units))
  return {
    bound: fine(proof.bound),
    gap: fine(proof.gap),
    worstViolation: fine(proof.worstViolation),
    checkedBy:
      'every limit measured again on the moved bodies; bound recomputed from the duals of the least-cost program',
  }
}
