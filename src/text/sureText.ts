import { chanceText, likeChance } from '../language/chanceText'
import type { Train } from '../mechanics/train'
import type { AssumedAnswer, SureAnswer } from '../engine/chance/answer'
import { buySentence, outsideTheModel, sureSentence } from '../engine/chance/sentence'
import { unitSign } from '../document/unitSign'
import { inUnits } from '../json/inUnits'
import { heading, paragraph, table } from './layout'

/** How sure a plan is, what that hangs on, and what was assumed for it. */
export function sureText(train: Train, sure: SureAnswer): string[] {
  const { all, reread, asFound, bolts, half, double } = sure
  const lines = [
    sureSentence(train, sure),
    ...(all && reread
      ? [
          `Read again afterwards and trimmed until the readings show the plan: ${chanceText(reread)}. As found: ${chanceText(asFound)}.`,
        ]
      : []),
    ...(all && half !== undefined && double !== undefined
      ? [
          `With every uncertainty half as large: ${likeChance(half, all)}; twice as large: ${likeChance(double, all)}.`,
        ]
      : []),
    ...(bolts ? [`That no bolt meets the edge of its hole: ${chanceText(bolts)}.`] : []),
  ]
  return [
    ...heading('HOW SURE', `${sure.draws} draws, seed ${sure.seed}`),
    ...lines.flatMap((line) => paragraph(line, '  ')),
    ...weakText(train, sure),
    ...buysText(train, sure),
    ...paragraph(outsideTheModel, '  '),
    ...assumedText(train, sure.assumed ?? []),
  ]
}

/** Couplings and states that are out most often, worst first. */
function weakText(train: Train, { couplings, all }: SureAnswer): string[] {
  if (!all) return []
  const weak = [...couplings]
    .filter(({ chance }) => chance < 0.995)
    .sort((a, b) => a.chance - b.chance)
    .slice(0, 5)
  if (weak.length === 0) return []
  const name = (id: string) => train.couplings.find((one) => one.id === id)?.name ?? id
  const state = (id: string) => train.states.find((one) => one.id === id)?.name ?? id
  return [
    '',
    ...table(
      [{ head: 'each alone' }, { head: 'state' }, { head: 'in', align: 'right' }],
      weak.map((one) => [name(one.coupling), state(one.state), likeChance(one.chance, all)]),
    ),
  ]
}

function buysText(train: Train, sure: SureAnswer): string[] {
  const told = (sure.buys ?? []).flatMap((buy) => buySentence(train, buy, sure) ?? []).slice(0, 5)
  if (told.length === 0) return []
  return [
    '',
    ...paragraph('What would add most (times are common practice):', '  '),
    ...told.flatMap((line) => paragraph(line, '    ')),
    '',
  ]
}

function assumedText(train: Train, assumed: readonly AssumedAnswer[]): string[] {
  if (assumed.length === 0) return []
  return [
    ...heading('ASSUMED', 'usual values for uncertainties that were not entered'),
    ...assumed.flatMap((one) => paragraph(`${one.what}: ${assumedValue(train, one)}`, '  ')),
  ]
}

/** The value that stands for one that was left out, with its unit. */
export const assumedValue = ({ units }: Train, one: AssumedAnswer): string =>
  one.quantity === undefined
    ? one.value
    : `${rounded(inUnits(one.value, one.quantity, units))} ${unitSign(one.quantity, units)}`

const rounded = (value: number): string => String(Number(value.toPrecision(3)))
