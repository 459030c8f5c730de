import { fineText } from '../../../language/amounts'
import { listed } from '../../../language/names'
import type { Train } from '../../../mechanics/train'
import type { FittedCause, JudgedCauses } from './causes'
import { causeWords } from './causeWords'
import type { CauseKind } from './hypotheses'

/** One cause of a difference, with what it leaves over. */
export interface CauseAnswer {
  kind: CauseKind
  coupling?: string
  body?: string
  /** Index in the coupling's sets; the hour of one value. */
  set?: number
  hour?: number
  words: string
  /** Root mean square of what it leaves over, in standard uncertainties: about 1 where it explains all. */
  left: number
  /** How many times less likely than the likeliest; 1 for that one. */
  odds: number
}

/** What a difference between measured and expected readings means. */
export interface DifferenceMeaning {
  kind: 'within doubt' | 'differs' | 'causes' | 'sets contradict' | 'unexplained'
  words: string
  /** Causes that cannot be told apart, the likeliest first; none within doubt. */
  causes: CauseAnswer[]
}

/** More causes than this are counted, not told. */
const mostTold = 4

/**
 * The differences and their causes in words.
 * @param most largest difference of any reading, its zero taken off (um)
 */
export function meaningOf(train: Train, judged: JudgedCauses, most: number): DifferenceMeaning {
  if (!judged.differs)
    return {
      kind: 'within doubt',
      words: `Within what readings and shims can differ by: at most ${fineText(most, train.units)}.`,
      causes: [],
    }
  const causes = judged.causes.map((fitted) => causeAnswer(train, fitted))
  const [first, ...others] = causes
  const explained = judged.causes.some(({ explains }) => explains)
  const apart = judged.contradict.map((c) => train.couplings[c]?.name ?? '')
  const lead =
    apart.length > 0
      ? `The readings of ${listed(apart)} contradict each other, whatever line is taken: read again, bracket and stem tight, before anything else.`
      : differsWords(train, most)
  if (!first) return { kind: 'unexplained', words: lead, causes }
  const told = others.slice(0, mostTold - 1)
  const more = others.length - told.length
  const rest =
    told.length === 0
      ? ''
      : ` Cannot be told from it: ${told.map(causeText).join('; ')}${more > 0 ? `; and ${more} more` : ''}.`
  return {
    kind: apart.length > 0 ? 'sets contradict' : explained ? 'causes' : 'unexplained',
    words: `${lead} ${explained ? 'Most likely' : 'No single cause explains it; the nearest'}: ${causeText(first)}.${rest}`,
    causes,
  }
}

/** The same of one coupling by itself, where nothing is said of causes. */
export const differenceAt = (train: Train, differs: boolean, most: number): DifferenceMeaning =>
  differs
    ? { kind: 'differs', words: differsWords(train, most), causes: [] }
    : meaningOf(train, { differs, contradict: [], causes: [] }, most)

const differsWords = (train: Train, most: number): string =>
  `Differs by up to ${fineText(most, train.units)}, more than readings and work can.`

const causeText = ({ words, left }: CauseAnswer): string =>
  `${words} (leaves ${left.toFixed(1)} times their doubt over)`

function causeAnswer(train: Train, fitted: FittedCause): CauseAnswer {
  const { kind, coupling, body, set, hour } = fitted.cause
  const c = coupling === undefined ? undefined : train.couplings[coupling]
  const b = body === undefined ? undefined : train.bodies[body]
  return {
    kind,
    ...(c && { coupling: c.id }),
    ...(b && { body: b.id }),
    ...(set !== undefined && { set }),
    ...(hour !== undefined && { hour }),
    words: causeWords(train, fitted),
    left: fitted.left,
    odds: fitted.odds,
  }
}
