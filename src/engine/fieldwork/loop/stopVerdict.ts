import { shareText } from '../../../language/amounts'
import { capital, inSentence, listed } from '../../../language/names'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { addMisalignments } from '../../../mechanics/misalignment/stateShift'
import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Train } from '../../../mechanics/train'
import type { StepAnswer } from '../steps/answer'
import { lineOf, type NewReadings } from './compare'
import { judgeStates, type StatesJudged } from './doubt'

/** What the readings of one coupling, taken at a stop point, say of its tolerance in every state at once. */
export interface StopVerdict {
  /** Id. */
  readonly coupling: string
  readonly verdict: StatesJudged['verdict']
  readonly words: string
}

/**
 * Judges a coupling's new readings in every state, as those of a train that is left are judged. Where machines beside it
 * have still to be moved, the line is judged with what is still to come added as planned, and that is said. Gaps between
 * shaft ends are no reading of these sets and are left out.
 * @param steps the order of work; @param at index of the step at whose stop point it was read
 * @returns undefined where the readings leave the line open
 */
export function stopVerdict(
  train: Train,
  steps: readonly StepAnswer[],
  at: number,
  id: string,
  measured: readonly NewReadings[],
): StopVerdict | undefined {
  const c = train.couplings.findIndex((entry) => entry.id === id)
  const whole = train.couplings[c]
  if (!whole) return undefined
  const { axial, ...coupling } = whole
  const now = lineOf(
    train,
    coupling,
    measured.filter((entry) => entry.coupling === id),
  )
  if (!now) return undefined
  const later = motionsAfter(train, steps, steps.length)
  const sooner = motionsAfter(train, steps, at + 1)
  const ofCoupling = (motions: readonly Motion[]) => couplingMotions(train, motions)[c]
  const [goal, stands] = [ofCoupling(later)?.misalignment, ofCoupling(sooner)?.misalignment]
  const waits = steps[at]?.judge.some((one) => one.coupling === id && one.judge === 'not yet')
  const still = waits === true && goal && stands
  const line = still
    ? addMisalignments(addMisalignments(now.line, goal), {
        ...{ y: -stands.y, z: -stands.z, sy: -stands.sy, sz: -stands.sz },
      })
    : now.line
  const judged = judgeStates({ ...train, couplings: [coupling] }, [{ ...now, line }])
  if (!judged) return undefined
  const lead = still ? 'with the moves to come, as planned: ' : ''
  const words = `${lead}${verdictWords(train, judged)}${axial ? ' The gap between the shaft ends is not in this.' : ''}`
  return {
    coupling: id,
    verdict: judged.verdict,
    words: capital(words),
  }
}

export function verdictWords(
  train: Train,
  judged: Omit<StatesJudged, 'worst'> & { readonly worst: Pick<StatesJudged['worst'], 'share'> },
): string {
  const { verdict, worst, name, state, doubt, apart } = judged
  const place = `${inSentence(name)}, ${state}`
  const uses = `${shareText(worst.share)} of tolerance, give or take ${shareText(doubt)}`
  const asked = shareText(train.plan.share)
  // what shows as the share asked for is not told to be over it
  const over = verdict === 'over the share' && shareText(worst.share) !== asked
  switch (verdict) {
    case 'contradicting':
      return `the readings of ${listed(apart.map(inSentence))} contradict each other by more than they are unsure. Read again, with bracket and stem tight, before anything else.`
    case 'out':
      return `out at ${place}: ${uses}.`
    case 'not sure':
      return `not sure at ${place}: ${uses}. Read again.`
    case 'over the share':
    case 'in':
      return `in, in every state${over ? `, though over the ${asked} asked for` : ''}; nearest its limit at ${place}: ${uses}.`
  }
}

/** Where every body stands after so many steps, by its own motion from where it was found. */
export function motionsAfter(train: Train, steps: readonly StepAnswer[], count: number): Motion[] {
  const done = steps.slice(0, count).flatMap(({ standing }) => standing)
  return train.bodies.map(({ id }) => done.findLast((entry) => entry.id === id)?.move ?? noMotion)
}
