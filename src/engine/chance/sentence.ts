import { chanceText, likeChance, percentAsked } from '../../language/chanceText'
import { shareText, toldText } from '../../language/amounts'
import { capital, inSentence } from '../../language/names'
import { keepsOff } from '../../mechanics/misalignment/gearTeeth'
import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import { surveysAnswer } from '../plan/surveysAnswer'
import type { BuyAnswer, SureAnswer, SureStage, WantedAnswer } from './answer'
import type { Chance } from './interval'

/** The chance that people read: of the plan as rounded where it is, with how it came to its share. */
export function displayedSure({ plan, rounded }: NonNullable<SureStage['sure']>): SureAnswer {
  if (!rounded) return plan
  return { ...rounded, ...(plan.wanted && { wanted: plan.wanted }) }
}

/** A group of errors that adds less than this to the chance if it were exact is not what it hangs on. */
const worthTelling = 0.03

/** The chance of a plan in one sentence, with what it hangs on; of a train without a plan, as it stands. */
export function sureSentence(train: Train, sure: SureAnswer): string {
  const { all, asFound, wanted } = sure
  const given = 'if the stated uncertainties are right'
  if (!all)
    return `As it stands, ${chanceText(asFound)} that every state is in, ${given}.${contradicted(train)}`
  const first = sure.buys?.find(({ what }) => what !== 'a closer plan')
  const hangs =
    first && first.exact - all.chance >= worthTelling
      ? `; ${buyNoun(train, first)} is what it hangs on most`
      : ''
  const lead = /^\d/.test(chanceText(all)) ? `About ${chanceText(all)}` : capital(chanceText(all))
  // moving may be worth less than leaving alone
  const better =
    asFound.chance - all.chance >= worthTelling
      ? ` As found, with nothing moved, it is ${chanceText(asFound)}.`
      : ''
  const chance = `${lead} that every state is in at the first run, ${given}${hangs}.${better}${contradicted(train)}`
  return wanted ? `${chance}${wantedSaid(all, wanted)}` : chance
}

/** Where the lines are fitted to a survey that contradicts what else is known: that is no error which is drawn. */
function contradicted(train: Train): string {
  if (!train.surveys.some(({ used, joins }) => used && joins)) return ''
  const { surveys = [], surveysTogether } = surveysAnswer(train)
  const agree = surveys.every((one) => !one.joins || one.agree)
  return agree && surveysTogether?.agree !== false
    ? ''
    : ' A survey that the lines are fitted to contradicts what else is known: no chance counts that.'
}

/** What came of a chance that was asked for; nothing where the plan has it at the share asked for. */
function wantedSaid(all: Chance, { chance, reached, share, asked, looked }: WantedAnswer): string {
  const percent = percentAsked(chance)
  if (all.chance >= chance || chanceText(all) === percent)
    return share < asked
      ? ` For the ${percent} asked for it keeps to ${shareText(share)} of tolerance.`
      : ''
  if (looked === false)
    return ` Whether another tolerance used reaches the ${percent} asked for is not known: looking for one took more work than is allowed.`
  // the plan was chosen before it was rounded
  return reached
    ? ` The ${percent} asked for is reached at ${shareText(share)} of tolerance, but not once it is rounded to shims.`
    : ` The ${percent} asked for is not reached at ${shareText(asked)} of tolerance or less; this is the best, at ${shareText(share)}.`
}

/** What a group of errors is called in a sentence. */
function buyNoun(train: Train, { what, where }: Pick<BuyAnswer, 'what' | 'where'>): string {
  const coupling = () => train.couplings.find(({ id }) => id === where)?.name ?? where
  switch (what) {
    case 'readings':
      return `what was read at ${coupling()}`
    case 'brackets':
      return `the sag of the brackets at ${coupling()}`
    case 'growth':
      return `the growth of ${inSentence(train.machines.find(({ id }) => id === where)?.name ?? where)}`
    case 'survey':
      return inSentence(train.surveys.find(({ id }) => id === where)?.name ?? where)
    case 'work':
      return 'the work itself'
    case 'places of feet':
      return 'where the feet stand along the train'
    case 'a closer plan':
      return 'a closer plan'
  }
}

/** What one does to be half as unsure, and about how long that takes (minutes); common practice, no source. */
const acts: Record<Exclude<BuyAnswer['what'], 'a closer plan'>, (noun: string) => string> = {
  readings: (noun) => `Be twice as sure of ${noun}, and of where it was read, about 40 minutes`,
  brackets: (noun) => `Measure ${noun} on a stiff bar, about 20 minutes`,
  growth: (noun) => `Measure ${noun} on the run, some 4 hours`,
  survey: (noun) => `Be twice as sure of the places in ${noun}, about 2 hours`,
  work: () => 'Work with shims measured by micrometer and dials on every foot, about 60 minutes',
  'places of feet': () => 'Tape the places of the feet anew, about 20 minutes',
}

/** What a buy would do to the chance, as a sentence; undefined where it adds less than two points. */
export function buySentence(
  train: Train,
  buy: BuyAnswer,
  { all }: Pick<SureAnswer, 'all'>,
): string | undefined {
  if (!all || Math.max(buy.exact, buy.halved ?? 0) - all.chance < 0.02) return undefined
  const told = (chance: number) => likeChance(chance, all)
  if (buy.what === 'a closer plan')
    return (buy.cost ?? 0) > tol.sameCost
      ? `A closer plan, ${toldText(buy.cost ?? 0, train.units)} more to move: ${told(buy.exact)}.`
      : `A closer plan, which costs no more by the weights of the moves: ${told(buy.exact)}.`
  const act = acts[buy.what](buyNoun(train, buy))
  const [half, exact] = [told(buy.halved ?? buy.exact), told(buy.exact)]
  return half === exact
    ? `${act}: ${exact}.`
    : `${act}: ${half} where that halves what is unsure, ${exact} were it known exactly.`
}

/** What no chance here counts. */
export const outsideTheModel = (train: Train): string =>
  `Not counted: roll from unequal shims, rotor float in face readings, pipe strain, readings that fit badly${
    keepsOff(train) ? ', whether the teeth of gear couplings keep the least angle' : ''
  }.`
