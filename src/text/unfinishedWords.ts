import type { PlanAnswer } from '../engine/fieldwork/answer'
import { unfinishedOf, type Unfinished } from '../engine/fieldwork/unfinished'

const words: Record<Unfinished, string> = {
  prices: 'What each limit is worth was not worked out: the work allowed for it ran out.',
  conflict:
    'What cannot be had together was looked for until the work allowed for it ran out: what is told of it is so, and there may be more.',
  remedies:
    'Remedies were tried until the work allowed for them ran out: what is told of each is so, and others may work that are not told.',
}

/** How to go on where standard input and output are at hand. */
const howToGoOn = 'On the command line --work 10 allows ten times the usual work.'

/** What was not finished, a sentence each; empty where all was. */
export const unfinishedWords = (unfinished: readonly Unfinished[]): string[] =>
  unfinished.map((what) => words[what])

/** The same with how to go on, as the text of an answer has it. */
export function unfinishedSentences(answer: PlanAnswer): string[] {
  const open = unfinishedWords(unfinishedOf(answer))
  return open.length === 0 ? [] : [...open, howToGoOn]
}
