import type { Train } from '../mechanics/train'
import { listed } from './names'
import { tidy } from './tidy'

type Planned = Pick<Train, 'plan'>

/** A number of standard uncertainties: "1.6 standard uncertainties", "1 standard uncertainty". */
const uncertainties = (k: number): string =>
  `${tidy(k)} standard ${tidy(k) === 1 ? 'uncertainty' : 'uncertainties'}`

/** What a plan keeps free of every limit: "1.6 standard uncertainties and the intervals of growth"; empty: nothing. */
export const keptInWords = ({ plan: { guard, worst } }: Planned): string =>
  listed([
    ...(guard > 0 ? [uncertainties(guard)] : []),
    ...(worst ? ['the intervals of growth'] : []),
  ])

/** The same as a clause behind a share that was asked for: ", with 1.6 standard uncertainties kept free of every limit". */
export function keptClause(train: Planned): string {
  const kept = keptInWords(train)
  return kept === '' ? '' : `, with ${kept} kept free of every limit`
}

/** The same as a sentence of a plan's facts, with a space before it; empty where nothing is kept. */
export function keptSentence({ plan: { guard, worst } }: Planned): string {
  const free = guard > 0 ? ` Kept free of every limit: ${uncertainties(guard)}.` : ''
  return worst ? `${free} It holds for every value within the intervals of growth.` : free
}

/**
 * Share and guard both reserve: "70 % of tolerance is asked for and 1.6 standard uncertainties are kept free of it as well".
 * @param asked the first half of that
 */
export const bothReserve = ({ plan: { guard } }: Planned, asked: string): string =>
  `${asked} and ${uncertainties(guard)} ${tidy(guard) === 1 ? 'is' : 'are'} kept free of it as well`
