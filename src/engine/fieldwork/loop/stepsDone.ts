import type { ReadAgain, WorkDone } from '../../../document/work'
import { counted } from '../../../language/names'
import type { WorkCard } from '../steps/cards'
import { newReadings } from './standingReadings'

/**
 * How far a step is: "ticked" on each of its cards; "read past", not all of it ticked, yet its stop point or a later one
 * was read, which nobody does before; else "open".
 */
type StepProgress = 'ticked' | 'read past' | 'open'

/** How far the work is, step by step: the one count that every face tells. */
export interface StepsDone {
  readonly progress: ReadonlyMap<string, StepProgress>
  readonly done: number
  readonly of: number
}

export function stepsDone(
  cards: readonly WorkCard[],
  work: readonly WorkDone[],
  again: readonly ReadAgain[],
): StepsDone {
  const ids = [...new Set(cards.map(({ instruction }) => instruction.id))]
  const readTo = cards.findLast((card) => isRead(card, again))
  const last = readTo ? ids.indexOf(readTo.instruction.id) : -1
  const progress = new Map(
    ids.map((id, i): [string, StepProgress] => {
      const own = cards.filter(({ instruction }) => instruction.id === id)
      const ticked = own.every((card) => entryOf(card, work)?.done === true)
      return [id, ticked ? 'ticked' : i <= last ? 'read past' : 'open']
    }),
  )
  const done = ids.filter((id) => isStepDone({ progress }, id)).length
  return { progress, done, of: ids.length }
}

/** Whether a step counts as done. */
export const isStepDone = ({ progress }: Pick<StepsDone, 'progress'>, step: string): boolean =>
  (progress.get(step) ?? 'open') !== 'open'

/** "4 of 6 steps done". */
export const stepsDoneText = ({ done, of }: Pick<StepsDone, 'done' | 'of'>): string =>
  `${done} of ${counted(of, 'step', 'steps')} done`

/** What was written down of a card; of feet that slide together each has the same. */
export function entryOf(card: WorkCard, work: readonly WorkDone[]): WorkDone | undefined {
  const foot = card.kind === 'foot' ? card.feet[0] : undefined
  return work.find((entry) => entry.step === card.instruction.id && entry.foot === foot)
}

/** Whether something was written down of a card; of feet that slide together each has a line of its own. */
export const isOfCard = (card: WorkCard, { step, foot }: WorkDone): boolean =>
  step === card.instruction.id &&
  (card.kind === 'foot' ? foot !== undefined && card.feet.includes(foot) : foot === undefined)

/** Whether every set of a stop point was read there, whole. */
function isRead(card: WorkCard, again: readonly ReadAgain[]): boolean {
  if (card.kind !== 'read') return false
  const sets = card.groups.filter(({ set }) => set !== undefined)
  return (
    sets.length > 0 &&
    sets.every(({ coupling, set }) =>
      again.some(
        (entry) =>
          entry.step === card.instruction.id &&
          entry.coupling === coupling &&
          entry.set === set &&
          newReadings(entry).length > 0,
      ),
    )
  )
}
