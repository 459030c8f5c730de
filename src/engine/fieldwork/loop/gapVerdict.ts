import { millimetresPer } from '../../../mechanics/units'
import { capital } from '../../../language/names'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { sharesOf } from '../../../mechanics/misalignment/shares'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'
import { usualU } from '../../../mechanics/uncertainty/usual'
import { tol } from '../../../mechanics/tolerances'
import { isAxial } from '../../../mechanics/axial'
import type { Train } from '../../../mechanics/train'
import type { StepAnswer } from '../steps/answer'
import { guard } from './doubt'
import { motionsAfter, verdictWords, type StopVerdict } from './stopVerdict'

/**
 * What a gap between shaft ends, measured cold at a stop point, says of its tolerance in every state at once, decided as
 * the readings of a line are: with the growth along the train of that state, with the moves still to come as planned,
 * and with a guard for how unsure one measuring is.
 * @param at index of the step at whose stop point it was measured
 * @param gap in the length unit of the document
 * @returns undefined where no gap is asked for
 */
export function gapVerdict(
  train: Train,
  steps: readonly StepAnswer[],
  at: number,
  id: string,
  gap: number,
): StopVerdict | undefined {
  const c = train.couplings.findIndex((entry) => entry.id === id)
  const coupling = train.couplings[c]
  if (!coupling?.axial) return undefined
  const opened = (count: number) =>
    couplingMotions(train, motionsAfter(train, steps, count))[c]?.gap ?? 0
  const still = opened(steps.length) - opened(at + 1)
  const found = gap * millimetresPer[train.units.length] + still / 1000
  const one = { ...train, couplings: [{ ...coupling, axial: { ...coupling.axial, found } }] }
  const checks = sharesOf(one, foundLines(one)).flatMap(({ state, checks: all }) =>
    all.flatMap((check) => (isAxial(check.what) ? [{ state, ...check }] : [])),
  )
  const [first, ...rest] = checks
  if (!first) return undefined
  const { u = usualU.gap } = coupling.axial
  const doubtOf = ({ limit }: typeof first) => (guard * u) / limit
  const inside = (check: typeof first) => check.share + doubtOf(check)
  const worst = rest.reduce((a, b) => (inside(b) > inside(a) ? b : a), first)
  const doubt = doubtOf(worst)
  const decided = () => {
    if (checks.some((check) => check.share - doubtOf(check) > 1)) return 'out'
    if (inside(worst) > 1) return 'not sure'
    return checks.some(({ share }) => share > train.plan.share + tol.share)
      ? 'over the share'
      : 'in'
  }
  const verdict = decided()
  const words = verdictWords(train, {
    ...{ verdict, worst, doubt, apart: [] },
    name: `the gap of ${coupling.name}`,
    state: train.states.find((state) => state.id === worst.state)?.name ?? worst.state,
  })
  const lead = Math.abs(still) > tol.unseen ? 'with the moves to come, as planned: ' : ''
  return { coupling: id, verdict, words: capital(`${lead}${words}`) }
}
