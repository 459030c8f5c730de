import type { RecordFacts } from '../../../document/work'
import { shareText } from '../../../language/amounts'
import { capital } from '../../../language/names'
import type { ReadyAnswer } from '../ready/answer'

/** What a page that says how a train is left needs somebody's word for. */
interface Standing {
  /** Of the tightest coupling, and the one asked for. */
  readonly standingShare: number
  readonly share: number
  readonly ready?: ReadyAnswer
}

/** Nearer than this to the share asked for, it is met: what percents show. */
const shows = 0.005

/** Everything that is over, missing, bad or waived, a sentence each; empty where nothing is. */
export function openItems({ standingShare, share, ready }: Standing): string[] {
  const over =
    standingShare > share + shows
      ? [
          `The tightest coupling uses ${shareText(standingShare)} of its tolerance, over the ${shareText(share)} asked for.`,
        ]
      : []
  if (!ready) return [...over, 'It is not known whether everything that must be in is in.']
  const items = ready.items
    .filter(({ state }) => state !== 'in')
    .map(({ words, state, by, why }) => {
      const said = capital(words.replace(/\.$/, ''))
      return state === 'waived'
        ? `${said}: accepted without, by ${by ?? ''}: ${why ?? ''}.`
        : `${said}.`
    })
  return [...over, ...items]
}

/**
 * Whether such a page may be written: with nothing open, or with words and the name of whoever accepts it so.
 * @returns what to enter, then what is open, a line each; empty where the page may be written
 */
export function acceptanceMissing(
  open: readonly string[],
  facts: RecordFacts | undefined,
): readonly string[] {
  const lacks = [
    ...((facts?.acceptance ?? '').trim() === '' ? ['why it is accepted, in words'] : []),
    ...((facts?.acceptedBy ?? '').trim() === '' ? ['who accepts it for operations'] : []),
  ]
  if (open.length === 0 || lacks.length === 0) return []
  const still = open.length === 1 ? 'one thing is open' : `${open.length} things are open`
  return [`Not written down: ${still}. Enter ${lacks.join(', and ')}.`, ...open]
}
