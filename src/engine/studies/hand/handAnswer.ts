import { tol } from '../../../mechanics/tolerances'
import { tidy } from '../../../language/tidy'
import { once } from '../../../mechanics/once'
import { limitExcesses, placeSaid } from '../../proof/limitsKept'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { sharesOf, worstShare } from '../../../mechanics/misalignment/shares'
import type { PlanFigures } from '../../plan/answer'
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

/** A hand plan worked out as a plan is, and how it compares. */
export interface HandAnswer {
  readonly answer: PlanFigures
  readonly sentence: Sentence
  /** Limits that it passes, in words. */
  readonly passed: readonly string[]
  /** What it costs more than the least; undefined where there is no plan to compare with. */
  readonly more: Micrometres | undefined
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
  const worst = once(() =>
    tidy(worstShare(sharesOf(train, found, couplingMotions(train, motions)))),
  )
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
  const answer: PlanFigures = {
    name: best.name,
    share: best.share,
    held: best.held,
    asFound: best.asFound,
    standingShare: best.standingShare,
    floor: best.floor,
    findings: best.findings,
    notEntered: best.notEntered,
    status: 'planned',
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
    binding: [],
  }
  const least = best.cost
  const more = once(() => (least === undefined ? undefined : tidy(tidy(cost()) - tidy(least))))
  const sentence = once(() => sentenceOf(train, answer, passed().length, more(), least))
  return {
    answer,
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
}

function sentenceOf(
  train: Train,
  { cost = 0, worstShare: worst = 0, share }: PlanFigures,
  passed: number,
  more: number | undefined,
  least: number | undefined,
): Sentence {
  const over = worst > share + tol.share
  const reach = `the tightest coupling uses ${shareText(worst)} of its tolerance${
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
