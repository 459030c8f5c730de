import type { PlanAnswer } from '../engine/fieldwork/answer'
import { unfinishedOf, type Unfinished } from '../engine/fieldwork/unfinished'

/** Said of a list of choices whose work ran out. */
export const choicesOpen =
  'The work allowed for the choices ran out: what is told of each is so, and one that is not told may be better.'

/** Said where the trade-off would be drawn. */
export const curveOpen =
  'What margin costs was not worked out: the work allowed for the trade-off ran out.'

const words: Record<Unfinished, string> = {
  plan: 'No plan was found within the work allowed, which says nothing of whether there is one.',
  'closer plans':
    'Closer plans along the trade-off were not all looked at: the work allowed for them ran out.',
  prices: 'What each limit is worth was not worked out: the work allowed for it ran out.',
  conflict:
    'What cannot be had together was looked for until the work allowed for it ran out: what is told of it is so, and there may be more.',
  remedies:
    'Remedies were tried until the work allowed for them ran out: what is told of each is so, and others may work that are not told.',
}

/** How to go on where standard input and output are at hand. */
export const howToGoOn =
  'On the command line --work N allows N times the usual work: --work 10 where nothing was given, more than was given where something was.'

/** What was not finished, a sentence each; empty where all was. */
export const unfinishedWords = (unfinished: readonly Unfinished[]): string[] =>
  unfinished.map((what) => words[what])

/** The same with how to go on, as the text of an answer has it. */
export function unfinishedSentences(answer: PlanAnswer): string[] {
  const open = unfinishedWords(unfinishedOf(answer))
  return open.length === 0 ? [] : [...open, howToGoOn]
}
