import type { TrainDocument } from '../../../document/schema'
import { workRecordOf, type WorkDone } from '../../../document/work'
import type { Train } from '../../../mechanics/train'
import { newReadings, standingReadings } from './standingReadings'
import { entryOf, isStepDone, stepsDone } from './stepsDone'
import type { ReadyItem } from '../ready/answer'
import { workCards, type WorkCard } from '../steps/cards'
import type { Instruction } from '../steps/instructions'
import { workList, type WorkItem } from '../workList'

/** How far one step is, card by card. */
export interface StepSoFar {
  readonly instruction: Instruction
  readonly isDone: boolean
  /** What is ticked, with what was written down of it, in the order of the cards. */
  readonly ticked: readonly { readonly card: WorkCard; readonly entry: WorkDone }[]
  readonly open: readonly WorkCard[]
}

/** The job as it stands: the whole list, and each step by its cards. */
export interface WorkSoFar {
  readonly list: readonly WorkItem[]
  readonly steps: readonly StepSoFar[]
}

/**
 * What is done of a job and what is not, from what its record has: the one source of the list on the sheet and of the
 * page that one shift leaves to the next.
 * @param ready what must be in before anything moves
 * @param instructions the steps of the plan; none where there is no plan
 */
export function workSoFar(
  { record }: TrainDocument,
  train: Train,
  ready: readonly ReadyItem[],
  instructions: readonly Instruction[],
): WorkSoFar {
  const { work = [], again = [], pages = [] } = workRecordOf(record) ?? {}
  const cards = workCards(train, instructions)
  const done = stepsDone(cards, work, again)
  const steps = instructions.map(({ step }) => step)
  const { counting } = standingReadings(train, steps, work, again)
  const sets = train.couplings.flatMap(({ found }) => found.filter(({ used }) => used))
  return {
    list: workList({
      ready,
      instructions,
      isDone: (step) => isStepDone(done, step),
      again: {
        read: counting.flatMap(({ entry }) => newReadings(entry)).length,
        of: sets.length,
      },
      pages: pages.map(({ kind }) => kind),
    }),
    steps: instructions.map((instruction) => {
      const own = cards.filter((card) => card.instruction.id === instruction.id)
      const entries = own.map((card) => ({ card, entry: entryOf(card, work) }))
      return {
        instruction,
        isDone: isStepDone(done, instruction.id),
        ticked: entries.flatMap(({ card, entry }) =>
          entry?.done === true ? [{ card, entry }] : [],
        ),
        open: entries.flatMap(({ card, entry }) => (entry?.done === true ? [] : [card])),
      }
    }),
  }
}
