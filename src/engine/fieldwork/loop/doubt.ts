import { fineText, shareText } from '../../../language/amounts'
import { capital, listed } from '../../../language/names'
import { tol } from '../../../mechanics/tolerances'
import { isAxial } from '../../../mechanics/axial'
import type { Train } from '../../../mechanics/train'
import { checksOf, type Check } from '../../../mechanics/misalignment/check'
import { sharesOf } from '../../../mechanics/misalignment/shares'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { contradicting } from './contradiction'
import { usualU, workDoubtOf } from '../../../mechanics/uncertainty/usual'
import { varianceOf, workErrors } from '../../../mechanics/uncertainty/workErrors'

/** Accept where the value is this many standard uncertainties inside the limit: 95 % one-sided, normal. */
export const guard = 1.645

/** A check of a coupling in a state, as read, with how unsure its share of full tolerance is. */
export interface Doubt {
  readonly coupling: number
  readonly state: string
  readonly what: string
  readonly share: number
  readonly u: number
}

/** Every check in every state with the standard uncertainty that the readings leave. */
export function doubtsOf(train: Train, found: readonly AsFound[]): Doubt[] {
  return sharesOf(train, found).flatMap(({ coupling: c, state, checks }) => {
    const coupling = train.couplings[c]
    const covariance = found[c]?.covariance
    if (!coupling || !covariance) return []
    return checks.map(({ what, share, limit }) => {
      const check = checksOf(coupling).find((entry) => entry.what === what)
      // a gap is measured for itself, no line tells it
      const u = check ? uOf(check, covariance) : (coupling.axial?.u ?? usualU.gap)
      return { coupling: c, state, what, share, u: u / limit }
    })
  })
}

/** Standard uncertainty of a check: the larger of sideways and up, from the covariance of `[y, sy, z, sz]`. */
function uOf({ offset, slope }: Check, covariance: readonly (readonly number[])[]): number {
  const variance = (k: number) =>
    offset ** 2 * (covariance[k]?.[k] ?? 0) +
    2 * offset * slope * (covariance[k]?.[k + 1] ?? 0) +
    slope ** 2 * (covariance[k + 1]?.[k + 1] ?? 0)
  return Math.sqrt(Math.max(0, variance(0), variance(2)))
}

/** What the readings alone say: "in" is within the share asked for, and inside full tolerance by more than its doubt. */
export interface Verdict {
  readonly verdict: 'in' | 'over the share' | 'contradicting' | 'not sure' | 'out'
  readonly words: string
}

/** Where readings put a train beside its limits in every state; shares are of full tolerance. */
export interface StatesJudged {
  readonly verdict: Verdict['verdict']
  /** The check that is nearest to its limit with its doubt, or past it. */
  readonly worst: Doubt
  /** Names of its coupling, or of the gap of that, and of its state. */
  readonly name: string
  readonly state: string
  /** How unsure its share is: a guard of 1.645 standard uncertainties. */
  readonly doubt: number
  /** Names of the couplings whose readings contradict each other. */
  readonly apart: readonly string[]
}

/**
 * Decides on full tolerance with a guard of 1.645 standard uncertainties on either side of the limit
 * (the rule of decision D1 among the published values: accepted, rejected, undecided). Readings that contradict each
 * other decide nothing but that; inside full tolerance and over the share asked for is a case of its own. Whether
 * the work is done hangs on more than this. Undefined without a coupling.
 */
export function judgeStates(train: Train, found: readonly AsFound[]): StatesJudged | undefined {
  const doubts = doubtsOf(train, found)
  const inside = ({ share, u }: Doubt) => share + guard * u
  const worst = doubts.reduce<Doubt | undefined>(
    (a, b) => (a && inside(a) >= inside(b) ? a : b),
    undefined,
  )
  if (!worst) return undefined
  const apart = contradicting(train, found).map((c) => train.couplings[c]?.name ?? '')
  const most = Math.max(...doubts.map(({ share }) => share))
  const verdict = () => {
    if (apart.length > 0) return 'contradicting'
    if (doubts.some(({ share, u }) => share - guard * u > 1)) return 'out'
    if (inside(worst) > 1) return 'not sure'
    return most > train.plan.share + tol.share ? 'over the share' : 'in'
  }
  const name = train.couplings[worst.coupling]?.name ?? ''
  return {
    ...{ verdict: verdict(), worst, apart, doubt: guard * worst.u },
    name: isAxial(worst.what) ? `the gap of ${name}` : name,
    state: train.states.find(({ id }) => id === worst.state)?.name ?? worst.state,
  }
}

/** That judgment of a train that was read when the work was over. */
export function verdictOf(train: Train, found: readonly AsFound[]): Verdict {
  const judged = judgeStates(train, found)
  if (!judged) return { verdict: 'in', words: 'No coupling to judge.' }
  const { verdict, worst, name, state, doubt, apart } = judged
  const reads = `${name} uses ${shareText(worst.share)} of its full tolerance (${state}), give or take ${shareText(doubt)}`
  const words = {
    contradicting: `Not done: the readings of ${listed(apart)} contradict each other by more than they are unsure. Read again, with bracket and stem tight, before anything else. As they are, ${reads}.`,
    out: `Not done: ${reads}.`,
    'not sure': `Not sure: ${reads}. Read again, or plan again from here.`,
    'over the share': `Inside full tolerance, over the ${shareText(train.plan.share)} asked for: ${reads}.`,
    in: capital(`${reads}.`),
  }
  return { verdict, words: words[verdict] }
}

/** How to go on from where the train stands. */
export interface NextRound {
  /** Share of tolerance to plan at. */
  readonly share: number
  /** Standard uncertainty, as a share of tolerance, of what a further round will come to. */
  readonly u: number
  readonly words: string
}

/**
 * The share of tolerance to plan the next round at: the one asked for, or less where readings and work
 * are too unsure for it, so that the next reading can say "done"; what can just be reached where
 * neither can be had.
 * @param floor of the train as it stands, from an answer at any share
 */
export function nextRound(
  train: Train,
  found: readonly AsFound[],
  floor: number | null,
): NextRound {
  const work = workVariances(train)
  const u = Math.max(
    0,
    ...doubtsOf(train, found).map((doubt) => {
      // how well a gap is measured asks nothing of shims and slides
      if (isAxial(doubt.what)) return 0
      const coupling = train.couplings[doubt.coupling]
      const check = coupling && checksOf(coupling).find((entry) => entry.what === doubt.what)
      const factor = train.states.find(({ id }) => id === doubt.state)?.factor ?? 1
      const done = check
        ? Math.sqrt(work[doubt.coupling]?.(check) ?? 0) / (check.limit * factor)
        : 0
      // the next reading is as unsure as this one, and both count
      return Math.sqrt(2 * doubt.u * doubt.u + done * done)
    }),
  )
  const asked = train.plan.share
  const wanted = Math.max(0.05, Math.min(asked, 1 - guard * u))
  const reached = (floor ?? 0) * aboveFloor
  const share = Math.min(1, Math.max(wanted, reached))
  const { shim, slide } = workDoubtOf(train.plan.sure)
  const rest = `readings, shims (${fineText(shim, train.units)}) and slides (${fineText(slide, train.units)}) may take the rest`
  return {
    share,
    u,
    words:
      share > asked
        ? `Planned at ${shareText(share)} of tolerance: from here no move reaches the ${shareText(asked)} asked for.`
        : share < asked
          ? `Planned at ${shareText(share)} of tolerance rather than ${shareText(asked)}: ${rest}.`
          : `Planned at ${shareText(asked)} of tolerance, as asked for.`,
  }
}

/** Room over the least that can be reached: at the floor itself the plan has no choice left. */
const aboveFloor = 1.03

/**
 * Whether another round is worth its errors: a train inside full tolerance as read is left alone where
 * the plan betters it by less than one standard uncertainty of what the round will come to.
 * @param standing and `planned`: shares of tolerance, as `u` is
 */
export const worthMoving = (standing: number, planned: number, { u }: NextRound): boolean =>
  standing > 1 || standing - planned > u

/** Variance of a check of each coupling by the errors of shims and slides of all bodies that may move. */
function workVariances(train: Train): ((check: Check) => number)[] {
  const errors = workErrors(train, (b) => {
    const body = train.bodies[b]
    const free = body !== undefined && !body.held
    return { shims: free && body.may.rise, slides: free && body.may.slide }
  })
  return errors.map(
    (of) => (check: Check) =>
      Math.max(
        varianceOf(of, (d) => check.offset * d.y + check.slope * d.sy),
        varianceOf(of, (d) => check.offset * d.z + check.slope * d.sz),
      ),
  )
}
