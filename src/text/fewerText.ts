import type { Holds, RankedHold } from '../engine/studies/holds/holdRows'
import { fewerDisturbed } from '../engine/studies/holds/fewerDisturbed'
import { toldNought, toldText } from '../language/amounts'
import { costWord } from '../language/costWord'
import { counted, inSentence, listed } from '../language/names'
import type { Train } from '../mechanics/train'

/** What a list of choices leaves out; empty where nothing. */
const compared = ({ couplings }: Train): string =>
  couplings.some(({ gear }) => gear?.least !== undefined)
    ? 'Choices are compared without the least angle of gear couplings, which the plan itself keeps.'
    : ''

/** What is said under a list of choices. */
export const fewerText = (train: Train, holds: Holds): string =>
  [fewerSaid(train, holds), compared(train)].filter((words) => words !== '').join(' ')

/**
 * What disturbing fewer machines than the first choice would take, number by number, or that nothing does; empty where
 * there is no plan, or none that moves more than one machine.
 */
function fewerSaid(train: Train, { rows, complete }: Holds): string {
  const [first] = rows
  const count = first?.disturbed.length ?? 0
  if (first?.cost === undefined || count < 2) return ''
  const fewer = fewerDisturbed(rows)
  if (fewer.length === 0)
    return `${complete ? 'No choice that works' : 'None of the choices told'} disturbs fewer than ${count} machines.`
  const { cost } = first
  return fewer
    .map(
      (row) =>
        `Disturbing ${counted(row.disturbed.length, 'machine', 'machines')} in place of ${count} takes ${toldText(row.cost, train.units)} of ${costWord(train)}, ${against(train, row.cost - cost)}: ${movedWords(train, row)}.`,
    )
    .join(' ')
}

const movedWords = (train: Train, { disturbed, held }: RankedHold): string =>
  `${namesOf(train, disturbed)} ${disturbed.length === 1 ? 'moves' : 'move'}, with ${held.length === 0 ? 'nothing' : namesOf(train, held)} fixed`

const namesOf = (train: Train, ids: readonly string[]): string =>
  listed(train.bodies.filter(({ id }) => ids.includes(id)).map(({ name }) => inSentence(name)))

/** Against the moves of the first choice (um). */
const against = (train: Train, more: number): string =>
  toldNought(more, train.units)
    ? 'as much as the first choice'
    : `${toldText(Math.abs(more), train.units)} ${more > 0 ? 'more' : 'less'} than the first choice`
