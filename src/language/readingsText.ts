import { fineSign, slopeSign } from '../mechanics/units'
import { lengthText } from './amounts'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import type { ExpectedAnswer, PlanAnswer } from '../engine/plan/answer'
import { sideName } from './couplingWords'
import { firm, heading, paragraph } from '../text/layout'
import { digitsOf, showsNothing, valueOf } from '../engine/plan/sentence'
import { inSentence } from './names'

/** What every set should show, cold, when the plan is done. */
export function expectedText(train: Train, answer: PlanAnswer): string[] {
  const unit = fineSign[train.units.fine]
  return [
    ...heading(
      'EXPECTED READINGS',
      `cold, when the plan is done, in ${unit}; a dial reads + when its stem is pushed in; hours as seen from the ${train.seenFrom} end`,
    ),
    ...train.couplings.flatMap((coupling) => [
      ...paragraph(coupling.name, '', 2),
      ...(answer.expected ?? [])
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
              `${hour}${firm}o'clock${firm}${signed(train, value, set.kind !== 'gap')}`,
          )
          .join(', ')
      : lineInWords(train, coupling, entry.offset, entry.slope)
  return paragraph(lead.trimStart() + words, '  ', 4)
}

/** A set by its number and kind, such as "set 2, rim of the right shaft at 1015 mm". */
export function setName(train: Train, set: ReadingSet, index: number): string {
  const text = (length: number) => lengthText(length, train.units)
  const kinds = {
    rim: () => (set.kind === 'rim' ? `rim of the ${set.rides} shaft at x ${text(set.at)}` : ''),
    face: () =>
      set.kind === 'face'
        ? `${set.face} face of the ${set.rides} shaft, diameter ${text(set.diameter)}`
        : '',
    gap: () => (set.kind === 'gap' ? `gap between the faces, diameter ${text(set.diameter)}` : ''),
    spool: () =>
      set.kind === 'spool'
        ? `face at the ${set.end} end of the spacer, diameter ${text(set.diameter)}`
        : '',
    line: () => (set.kind === 'line' ? `offset and slope at x ${text(set.at)}` : ''),
  }
  return `set ${index + 1}, ${kinds[set.kind]()}${set.used ? '' : ' (not used)'}`
}

/** Offset and slope of the right machine's axis against the left one's, in words. */
export function lineInWords(
  train: Train,
  coupling: Coupling,
  offset: { y: number; z: number },
  slope: { y: number; z: number },
): string {
  const right = train.machines[coupling.right]?.name ?? ''
  const tilt = (value: number) => `${Math.abs(value).toFixed(2)} ${slopeSign(train.units)}`
  const shows = (value: number) => /[1-9]/.test(value.toFixed(2))
  const parts = [
    ...(showsNothing(offset.z, train)
      ? []
      : [`${valueOf(Math.abs(offset.z), train)} ${offset.z > 0 ? 'high' : 'low'}`]),
    ...(showsNothing(offset.y, train)
      ? []
      : [`${valueOf(Math.abs(offset.y), train)} ${sideName(train, offset.y)}`]),
    ...(shows(slope.z)
      ? [`${slope.z > 0 ? 'rising' : 'falling'} ${tilt(slope.z)} to the right`]
      : []),
    ...(shows(slope.y) ? [`running ${tilt(slope.y)} ${sideName(train, slope.y)}`] : []),
  ]
  const subject = inSentence(right)
  return parts.length === 0 ? `${subject} in line` : `${subject} ${parts.join(', ')}`
}

function signed(train: Train, value: number, sign: boolean): string {
  if (showsNothing(value, train)) return '0'
  const digits = digitsOf(value, train)
  return sign && value > 0 ? `+${digits}` : digits
}
