import type { TrainDocument } from '../schema'
import type { Refusal } from '../refusal'
import { pathFromPlace, valueAt } from '../place'

/**
 * Why a place of a document on the sheet cannot be planned. Where one half of a pair stands without the
 * other, the missing half is asked for, and told that both may be empty.
 */
export function faultWords(document: TrainDocument, { at, why }: Refusal): string {
  const path = pathFromPlace(at)
  const [key, list] = [path.at(-1), path.at(-2)]
  const missing = (valueAt(document, path) ?? undefined) === undefined
  if (!missing) return why
  if (list === 'axial' || list === 'side' || list === 'rise')
    return key === 0
      ? 'the low end is missing: give it, 0 for not at all, or empty the high end too'
      : 'the high end is missing: give it, 0 for not at all, or empty the low end too'
  if (list === 'gaps')
    return 'this corner is missing: give the gaps under all four, or empty the others too'
  if (key === 'z' && path.at(-3) === 'axis')
    return `the height at the ${list === 'left' ? 'left' : 'right'} end is missing: give it, or say that the machine has one axis`
  return why
}
