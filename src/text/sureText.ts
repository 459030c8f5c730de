import type { SureAnswer } from '../engine/chance/answer'
import { outsideTheModel } from '../engine/chance/sentence'
import type { Train } from '../mechanics/train'
import { heading, paragraph, table } from './layout'
import { sureParts } from './sureParts'

/** How sure a plan is, what that hangs on, and what was assumed for it. */
export function sureText(train: Train, sure: SureAnswer): string[] {
  const { sentence, lines, weak, buys, assumed } = sureParts(train, sure)
  return [
    ...heading('HOW SURE', `${sure.draws} draws, seed ${sure.seed}`),
    ...[sentence, ...lines].flatMap((line) => paragraph(line, '  ')),
    ...(weak.length === 0
      ? []
      : [
          '',
          ...table(
            [{ head: 'each alone' }, { head: 'state' }, { head: 'in', align: 'right' }],
            weak.map(({ coupling, state, chance }) => [coupling, state, chance]),
          ),
        ]),
    ...(buys.length === 0
      ? []
      : [
          '',
          ...paragraph('What would add most (times are common practice):', '  '),
          ...buys.flatMap((line) => paragraph(line, '    ')),
        ]),
    '',
    ...paragraph(outsideTheModel(train), '  '),
    ...(assumed.length === 0
      ? []
      : [
          ...heading('ASSUMED', 'usual uncertainties, where none were entered'),
          ...assumed.flatMap(({ what, value }) => paragraph(`${what}: ${value}`, '  ')),
        ]),
  ]
}
