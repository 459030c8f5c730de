import type { ExpectedAnswer } from '../../plan/answer'
import type { StepAnswer } from './answer'
import type { Coupling, Train } from '../../../mechanics/train'
import type { Band } from '../../../mechanics/misalignment/bands'
import { fineText, slopeText } from '../../../language/amounts'
import { fineSign } from '../../../mechanics/units'
import { lineInWords, toldWays } from '../../../language/readingSets'
import { capital } from '../../../language/names'
import { stopReadings, type StopGroup } from './stopReadings'

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
  /**
   * Hour and digits in the document's fine unit, with their sign, and from where to where they are good, "+19 to +43",
   * empty at a dial's own 0; none for a line.
   */
  readonly readings: readonly (readonly [hour: number, digits: string, good: string])[]
  /** A line in words, of a set that gives one. */
  readonly line?: string
}

/** What the couplings should show after a step, where somebody stops to read; only of sets that count. */
export function expectedAfter(train: Train, step: StepAnswer): ExpectedCoupling[] {
  const groups = stopReadings(train, step)
  return train.couplings.flatMap((coupling) => {
    const own = groups.filter((group) => group.coupling === coupling.id && group.set !== undefined)
    const [first] = own
    if (!first) return []
    const sets = own.map((group) => setWords(train, coupling, step, group))
    const { notYet } = first
    return [{ coupling: coupling.id, name: coupling.name, sets, ...(notYet !== '' && { notYet }) }]
  })
}

function setWords(
  train: Train,
  coupling: Coupling,
  { expected }: StepAnswer,
  { set = 0, readings }: StopGroup,
): ExpectedSetWords {
  const entry = expected.find((one) => one.coupling === coupling.id && one.set === set)
  if (entry && 'offset' in entry)
    return {
      ...{ set, readings: [] },
      line: `${lineInWords(train, coupling, toldWays(entry.offset), toldWays(entry.slope))}${lineGood(train, entry)}`,
    }
  return {
    set,
    readings: readings.flatMap(({ at, should, good }) =>
      at.kind === 'hour' ? [[at.hour, should, good] as const] : [],
    ),
  }
}

/** " (good within 31 um and 0.12 mrad of that)": the wider of sideways and up. */
function lineGood(train: Train, entry: Extract<ExpectedAnswer, { offset: unknown }>): string {
  if (!entry.good) return ''
  const half = ({ y, z }: { y: Band; z: Band }) => Math.max(y[1] - y[0], z[1] - z[0]) / 2
  const { offset, slope } = entry.good
  return ` (good within ${fineText(half(offset), train.units)} and ${slopeText(half(slope), train.units)} of that)`
}

/** What expected readings are, once on every face that shows them. */
export const expectedAre =
  "Expected readings are the model's: what today's readings leave over beside their own line is not in them. Good is where 19 of 20 come to, by the uncertainty of readings, shims and slides."

/** The same in a line a coupling: "Motor to pump, in um: set 1 at 12: 0, at 3: +20, at 6: −85." */
export const expectedLine = (train: Train, { name, sets, notYet }: ExpectedCoupling): string =>
  `${capital(name)}, in ${fineSign[train.units.fine]}${sets.some(({ readings }) => readings.length > 0) ? ', good from and to in brackets' : ''}: ${sets.map(setLine).join('; ')}.${notYet === undefined ? '' : ` ${notYet}`}`

const setLine = ({ set, readings, line }: ExpectedSetWords): string =>
  `set ${set + 1} ${line ?? readings.map(([hour, digits, good]) => `at ${hour}: ${digits}${good === '' ? '' : ` (${good})`}`).join(', ')}`
