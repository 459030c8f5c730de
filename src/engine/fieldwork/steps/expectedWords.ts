import type { ExpectedAnswer } from '../../plan/answer'
import type { StepAnswer } from './answer'
import type { Train } from '../../../mechanics/train'
import { signedDigits } from '../../../language/amounts'
import { fineSign } from '../../../mechanics/units'
import { tidy } from '../../../language/tidy'
import { lineInWords, toldWays } from '../../../language/readingSets'
import { capital } from '../../../language/names'

/** What a coupling should show at a stop point, from zero at the first hour read. */
export interface ExpectedCoupling {
  readonly coupling: string
  readonly name: string
  readonly sets: readonly ExpectedSetWords[]
  /** "Not to be judged yet: the motor still has to move up to 0.30 mm."; undefined where it can be. */
  readonly notYet?: string
}

export interface ExpectedSetWords {
  /** Index in the coupling's sets as found. */
  readonly set: number
  /** Hour and digits in the document's fine unit, with their sign; none for a line. */
  readonly readings: readonly (readonly [hour: number, digits: string])[]
  /** A line in words, of a set that gives one. */
  readonly line?: string
}

/** What the couplings should show after a step, where somebody stops to read; only of sets that count. */
export function expectedAfter(train: Train, step: StepAnswer): ExpectedCoupling[] {
  if (step.hold === undefined && step.kind !== 'read') return []
  return train.couplings.flatMap((coupling) => {
    const sets = step.expected
      .filter((entry) => entry.coupling === coupling.id)
      .flatMap((entry) => setAfter(train, entry) ?? [])
    if (sets.length === 0) return []
    const judged = step.judge.find((entry) => entry.coupling === coupling.id)
    return [
      {
        coupling: coupling.id,
        name: coupling.name,
        sets,
        ...(judged?.judge === 'not yet' && { notYet: `Not to be judged yet: ${judged.why}.` }),
      },
    ]
  })
}

function setAfter(train: Train, entry: ExpectedAnswer): ExpectedSetWords | undefined {
  const coupling = train.couplings.find(({ id }) => id === entry.coupling)
  const found = coupling?.found[entry.set]
  if (!coupling || found?.used !== true) return undefined
  if (!('readings' in entry)) {
    return {
      set: entry.set,
      readings: [],
      line: lineInWords(train, coupling, toldWays(entry.offset), toldWays(entry.slope)),
    }
  }
  return {
    set: entry.set,
    readings: entry.readings.map(([hour, value]) => {
      const digits = signedDigits(tidy(value), train.units)
      // feelers have no sign
      return [hour, found.kind === 'gap' ? digits.replace(/^\W/, '') : digits] as const
    }),
  }
}

/** The same in a line a coupling: "Motor to pump, in um: set 1 at 12 0, at 3 +20, at 6 −85." */
export const expectedLine = (train: Train, { name, sets, notYet }: ExpectedCoupling): string =>
  `${capital(name)}, in ${fineSign[train.units.fine]}: ${sets.map(setLine).join('; ')}.${notYet === undefined ? '' : ` ${notYet}`}`

const setLine = ({ set, readings, line }: ExpectedSetWords): string =>
  `set ${set + 1} ${line ?? readings.map(([hour, digits]) => `at ${hour} ${digits}`).join(', ')}`
