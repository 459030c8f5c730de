import { firm } from '../language/firmSpaces'
import { signed } from '../language/signed'
import { fineSign } from '../mechanics/units'
import type { Coupling, Train } from '../mechanics/train'
import type { ExpectedAnswer } from '../engine/plan/answer'
import { lineInWords, setName, toldWays } from '../language/readingSets'
import { heading, paragraph } from './layout'
import { toldDigits, toldNought } from '../language/amounts'

/** What every set should show, cold, when the plan is done. */
export function expectedText(train: Train, expected: readonly ExpectedAnswer[]): string[] {
  const unit = fineSign[train.units.fine]
  return [
    ...heading(
      'EXPECTED READINGS',
      `cold, when the plan is done, in ${unit}; a dial reads + when its stem is pushed in; hours as seen from the ${train.seenFrom} end`,
    ),
    ...train.couplings.flatMap((coupling) => [
      ...paragraph(coupling.name, '', 2),
      ...expected
        .filter((entry) => entry.coupling === coupling.id)
        .flatMap((entry) => setText(train, coupling, entry)),
    ]),
  ]
}

function setText(train: Train, coupling: Coupling, entry: ExpectedAnswer): string[] {
  const set = coupling.found[entry.set]
  if (!set) return []
  const lead = `  ${setName(train, set, entry.set)}: `
  const words =
    'readings' in entry
      ? entry.readings
          .map(
            ([hour, value]) =>
              `${hour}${firm}o'clock${firm}${readingText(train, value, set.kind !== 'gap')}`,
          )
          .join(', ')
      : lineInWords(train, coupling, toldWays(entry.offset), toldWays(entry.slope))
  return paragraph(lead.trimStart() + words, '  ', 4)
}

function readingText(train: Train, value: number, sign: boolean): string {
  if (toldNought(value, train.units)) return '0'
  const digits = toldDigits(value, train.units)
  return sign ? signed(digits) : digits
}
