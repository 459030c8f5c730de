import { tol } from '../../../mechanics/tolerances'
import { keptRooms } from '../../../mechanics/uncertainty/kept'
import { keptShares } from '../../../mechanics/uncertainty/verdict'
import { tidy } from '../../../language/tidy'
import { once } from '../../../mechanics/once'
import { limitExcesses, placeSaid } from '../../proof/limitsKept'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { sharesOf, worstShare, type CouplingResult } from '../../../mechanics/misalignment/shares'
import type { MovesAnswer, PlanFigures, StandingAnswer } from '../../plan/answer'
import { statorsAnswer } from '../../plan/statorAnswer'
import { axialAnswer } from '../../plan/axialRow'
import { teethOf } from '../../plan/teeth'
import { hasMoves } from '../../plan/moves'
import * as report from '../../plan/report'
import { totalsOf } from '../../plan/totals'
import { costOf } from '../../proof/prove'
import type { AsFound } from '../../../mechanics/readings/asFound'
import type { Sentence } from '../../plan/sentence'
import { inSentence } from '../../../language/names'
import type { Train } from '../../../mechanics/train'
import { fineText, shareText, toldText } from '../../../language/amounts'
import type { Micrometres } from '../../../mechanics/units'
import { handMotions, type HandPlan } from './handPlan'

/**
 * A hand plan worked out as a plan is, and how it compares: a status of its own, drawn and never told to
 * programs.
 */
export interface HandAnswer extends Readonly<StandingAnswer>, Readonly<MovesAnswer> {
  readonly status: 'by hand'
  /** Couplings that use more than was asked for, each in its worst state, the worst first, in words. */
  readonly out: readonly string[]
  /** Limits that it passes, in words. */
  readonly passed: readonly string[]
  /** What it costs more than the least; undefined where there is no plan to compare with. */
  readonly more: Micrometres | undefined
  readonly sentence: Sentence
}

/** Passed by less than this (um) nobody can see or measure. */
const worthSaying = 0.05

/**
 * Works out what a hand plan does to every coupling, foot and limit, and what it costs: each part when it is
 * first looked at, since a hand that drags asks for some of it at every frame.
 * @param found every coupling's line as its readings give it
 */
export function handAnswer(
  train: Train,
  found: readonly AsFound[],
  hand: HandPlan,
  best: PlanFigures,
): HandAnswer {
  const motions = handMotions(train, hand)
  const cost = once(() => costOf(train, motions))
  const shares = once(() => sharesOf(train, found, couplingMotions(train, motions)))
  const worst = once(() => tidy(worstShare(shares())))
  /** Shares with what is kept free of each tolerance counted. */
  const withKept = once(() => keptShares(train, shares(), keptRooms(train)))
  const total = once(() => totalsOf(train, motions))
  const bodies = once(() => report.bodiesAnswer(train, motions))
  const feet = once(() => report.feetAnswer(train, motions))
  const couplings = once(() => report.couplingsAnswer(train, found, motions))
  const expected = once(() => report.expectedAnswer(train, found, motions))
  const passed = once(() =>
    limitExcesses(train, motions)
      .filter(({ by }) => by > worthSaying)
      .map(
        (one) =>
          `${placeSaid(train, one, ({ name }) => inSentence(name))} passed by ${fineText(one.by, train.units)}`,
      ),
  )
  const out = once(() => outOf(train, shares(), withKept(), best.share))
  const { name, share, guard, held, asFound, standingShare, floor, findings, notEntered } = best
  const least = hasMoves(best) ? best.cost : undefined
  const more = once(() => (least === undefined ? undefined : tidy(tidy(cost()) - tidy(least))))
  const sentence = once(() => sentenceOf(train, answer, tidy(Math.max(...withKept())), least))
  const answer: HandAnswer = {
    status: 'by hand',
    ...{ name, share, held, asFound, standingShare, floor, findings, notEntered },
    ...(guard !== undefined && { guard }),
    ...(best.worst && { worst: best.worst }),
    ...(best.standingKept !== undefined && { standingKept: best.standingKept }),
    ...(best.teeth && { teeth: teethOf(train, found, motions) }),
    ...axialAnswer(train, motions),
    ...statorsAnswer(train, motions),
    ...(best.surveys && { surveys: best.surveys }),
    ...(best.surveysTogether && { surveysTogether: best.surveysTogether }),
    get cost() {
      return cost()
    },
    get total() {
      return total()
    },
    get bodies() {
      return bodies()
    },
    get feet() {
      return feet()
    },
    get couplings() {
      return couplings()
    },
    get expected() {
      return expected()
    },
    get worstShare() {
      return worst()
    },
    get out() {
      return out()
    },
    get passed() {
      return passed()
    },
    get more() {
      return more()
    },
    get sentence() {
      return sentence()
    },
  }
  return answer
}

/** A coupling in a state with the share that it needs, what is kept free counted. */
type Needing = CouplingResult & { readonly needs: number }

/** "motor to gear, hot summer: 112 % of its tolerance", a coupling a line. */
function outOf(
  train: Train,
  shares: readonly CouplingResult[],
  withKept: readonly number[],
  asked: number,
): string[] {
  const all = shares.map((one, i): Needing => ({ ...one, needs: withKept[i] ?? one.share }))
  return train.couplings
    .flatMap((coupling, c) => {
      const worst = all
        .filter((one) => one.coupling === c)
        .reduce<Needing | undefined>((a, b) => (a && a.needs >= b.needs ? a : b), undefined)
      return worst && worst.needs > asked + tol.share ? [{ coupling, worst }] : []
    })
    .sort((a, b) => b.worst.needs - a.worst.needs)
    .map(({ coupling, worst: { state, share, needs } }) => {
      const name = train.states.find(({ id }) => id === state)?.name ?? state
      const more = needs > share ? `, ${shareText(needs)} with what is kept free of it` : ''
      return `${coupling.name}, ${name}: ${shareText(share)} of its tolerance${more}`
    })
}

function sentenceOf(
  train: Train,
  {
    cost,
    worstShare: worst,
    share,
    passed: { length: passed },
    more,
  }: Omit<HandAnswer, 'sentence'>,
  withKept: number,
  least: number | undefined,
): Sentence {
  const over = withKept > share + tol.share
  const kept =
    over && withKept > worst ? `, ${shareText(withKept)} with what is kept free of it` : ''
  const reach = `the tightest coupling uses ${shareText(worst)} of its tolerance${kept}${
    over ? `, more than the ${shareText(share)} asked for` : ''
  }`
  const limits =
    passed === 0
      ? 'every other limit is kept'
      : `${passed === 1 ? 'one limit is' : `${passed} limits are`} passed`
  return {
    headline: over || passed > 0 ? 'Put by hand: this does not hold.' : 'Put by hand: this holds.',
    moves: `It costs ${toldText(cost, train.units)}; ${reach}; ${limits}.`,
    proof:
      more === undefined || least === undefined
        ? 'There is no plan to compare it with.'
        : `The best plan costs ${toldText(least, train.units)}: by hand it is ${toldText(Math.abs(more), train.units)} ${more < 0 ? 'less, which no plan that keeps every limit can be' : 'more'}.`,
  }
}
