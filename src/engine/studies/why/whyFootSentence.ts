import { tol } from '../../../mechanics/tolerances'
import { shareText, toldText } from '../../../language/amounts'
import { costWord } from '../../../language/costWord'
import { keptInWords } from '../../../language/keptWords'
import { shimText } from '../../../language/recipes'
import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { showsNought, towardSide } from '../../../language/sides'
import { capital, inSentence, listed } from '../../../language/names'
import { limitWords } from '../../plan/limitWords'
import type { AskedMove } from './footRow'
import type { Holder } from './holders'

/** Why a foot moves as far as it does. */
export interface WhyFoot {
  body: string
  foot: string
  way: AskedMove
  /** Shim change or slide of the least plan. */
  move: Micrometres
  /** The same rounded to the shims of the store, where that is what people work by. */
  rounded?: Micrometres
  /** How much less was tried: a shim step, or all of the move where that is less. */
  step: Micrometres
  /** What holds it there, hardest first: couplings in their states, and limits. */
  holders: Holder[]
  /** Smallest worst share with the foot moved a step less and no more moved in all; with its place. */
  worstShare: number | null
  worstAt: { coupling: string; state: string } | null
  /** Worst share of the plan. */
  planShare: number
  /** Least cost with the foot moved a step less, within the share asked for; null where there is none. */
  cost: Micrometres | null
  planCost: Micrometres
  sentence: string
}

/** Most holders named in the sentence. */
const most = 4

/** Two shares with as many decimals as it takes to tell them apart, two at most. */
function apart(one: number, other: number): [string, string] {
  const percent = (share: number, decimals: number) => `${(share * 100).toFixed(decimals)} %`
  let decimals = 0
  while (decimals < 2 && percent(one, decimals) === percent(other, decimals)) decimals++
  return [percent(one, decimals), percent(other, decimals)]
}

/** Why a foot moves as far as it does, as people say it. */
export function whyFootSentence(train: Train, why: Omit<WhyFoot, 'sentence'>): string {
  const body = train.bodies.find(({ id }) => id === why.body)
  const place = `foot ${why.foot} of ${inSentence(body?.name ?? '')}`
  const size = toldText(Math.abs(why.move), train.units)
  const does =
    why.way === 'shim'
      ? `${why.move > 0 ? 'gets' : 'loses'} ${size} of shim`
      : `slides ${size} ${towardSide(train, why.move)}`
  const step = toldText(why.step, train.units)
  return [
    why.rounded === undefined
      ? `${capital(place)} ${does}.`
      : `Before rounding to the shims of the store ${place} ${does} (after it: ${after(train, why.way, why.rounded)}).`,
    shareSentence(train, why, step),
    costSentence(train, why),
    holderSentence(train, why),
  ]
    .filter((part) => part !== '')
    .join(' ')
}

/** What the rounded plan does there, worded as on the foot's card. */
function after(train: Train, way: AskedMove, rounded: number): string {
  const by = tidy(rounded)
  if (way === 'shim') return shimText(train, by)
  return showsNought(by, train)
    ? 'no slide'
    : `${toldText(Math.abs(by), train.units)} ${towardSide(train, by)}`
}

function shareSentence(train: Train, why: Omit<WhyFoot, 'sentence'>, step: string): string {
  if (why.worstShare === null) return ''
  const less = `With ${step} less and no more ${costWord(train)} in all`
  if (why.worstShare <= why.planShare + tol.readsAlike)
    return `${less}, the tightest coupling would still use ${shareText(why.worstShare)}.`
  const [then, now] = apart(why.worstShare, why.planShare)
  const at = why.worstAt
  const name = train.couplings.find(({ id }) => id === at?.coupling)?.name ?? ''
  const state = train.states.find(({ id }) => id === at?.state)?.name ?? ''
  return `${less}, the tightest coupling would use ${then} of its tolerance${keptInWords(train) === '' ? '' : ', with what is kept free of it,'} instead of ${now} (${name}, ${state}).`
}

function costSentence(train: Train, { cost, planCost }: Omit<WhyFoot, 'sentence'>): string {
  const asked = shareText(train.plan.share)
  if (cost === null) return `No plan then keeps to ${asked}.`
  const more = cost - planCost
  return more <= tol.sameCost * planCost
    ? `To keep to ${asked} would take no more ${costWord(train)}.`
    : `To keep to ${asked} would take ${toldText(more, train.units)} more ${costWord(train)} in all.`
}

function holderSentence(train: Train, { holders }: Omit<WhyFoot, 'sentence'>): string {
  if (holders.length === 0) return ''
  const named = holders.slice(0, most).map((holder) => {
    const { limit, where } = limitWords(train, holder)
    return `${where} (${limit})`
  })
  const rest = holders.length - named.length
  return `What holds it there: ${listed(rest > 0 ? [...named, `${rest} more`] : named)}.`
}
