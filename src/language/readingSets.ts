import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import { slopeSign } from '../mechanics/units'
import { fineText, lengthText } from './amounts'
import { inSentence } from './names'
import { showsNought, towardSide } from './sides'
import { tidy } from './tidy'

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

/** Offset and slope of the right machine's axis against the left one's, in words. Offsets in um, slopes in mrad. */
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
    ...(showsNought(offset.z, train)
      ? []
      : [`${fineText(Math.abs(offset.z), train.units)} ${offset.z > 0 ? 'high' : 'low'}`]),
    ...(showsNought(offset.y, train)
      ? []
      : [`${fineText(Math.abs(offset.y), train.units)} ${towardSide(train, offset.y)}`]),
    ...(shows(slope.z)
      ? [`${slope.z > 0 ? 'rising' : 'falling'} ${tilt(slope.z)} to the right`]
      : []),
    ...(shows(slope.y) ? [`running ${tilt(slope.y)} ${towardSide(train, slope.y)}`] : []),
  ]
  const subject = inSentence(right)
  return parts.length === 0 ? `${subject} in line` : `${subject} ${parts.join(', ')}`
}

/** Offset (um) or slope (mrad) of an answer without a solver's last digits. */
export const toldWays = ({ y, z }: { y: number; z: number }) => ({ y: tidy(y), z: tidy(z) })
