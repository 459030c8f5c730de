import { isUnderWay } from '../../document/edits/unfinished'
import { readTrainText } from '../../document/readTrain'
import { harmlessLine } from '../../language/harmless'

/** Something kept that is no train: what it was called, what is wrong, and its text as it is. */
export interface Damaged {
  readonly name: string
  readonly why: string
  readonly text: string
}

/** Thrown where a kept text is to come to the sheet and is no train; the message says what is wrong. */
export class DamagedError extends Error {}

/**
 * What is wrong with a kept text that no sheet can show; undefined for a train, also one that is
 * refused for now: wrong values and open places are kept as they were typed.
 */
export function damageOf(text: unknown): string | undefined {
  if (typeof text !== 'string') return 'no text is kept of it'
  if (isUnderWay(parsed(text))) return undefined
  const read = readTrainText(text)
  const [first] = read.ok ? [] : read.refused
  if (!first) return undefined
  return harmlessLine(first.at === '' ? first.why : `${first.at}: ${first.why}`)
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
