import type { TrainDocument } from '../schema'
import type { Refusal } from '../refusal'
import { pathFromPlace, valueAt } from '../place'

/** Of lists that are too short, in the words of the sheet. */
function listWords(key: string, length: number): string | undefined {
  if (key === 'machines' && length < 2)
    return 'a train has two machines or more: add machines and the couplings between them'
  if (length > 0) return undefined
  if (key === 'feet') return 'there is no foot here: add one, or say why it is anchored'
  if (key === 'stock') return 'no shim is listed: add a thickness, or go without a list of shims'
  if (key === 'readings') return 'nothing is read here: add an hour, or take the set out'
  return undefined
}

/**
 * Why a place of a document on the sheet cannot be planned. Where one half of a pair stands without the
 * other, the missing half is asked for, and told that both may be empty.
 */
export function faultWords(document: TrainDocument, { at, why }: Refusal): string {
  const path = pathFromPlace(at)
  const [key, list] = [path.at(-1), path.at(-2)]
  const value = valueAt(document, path) ?? undefined
  if (key === 'tolerance' && path.length === 3)
    return 'no tolerance is entered: enter the angle at each plane, or an offset and an angle over all'
  if (Array.isArray(value)) return listWords(String(key), value.length) ?? why
  if (value !== undefined) return why
  if (['axial', 'side', 'rise', 'stretch', 'float'].includes(String(list)))
    return key === 0
      ? 'the low end is missing: give it, 0 for not at all, or empty the high end too'
      : 'the high end is missing: give it, 0 for not at all, or empty the low end too'
  if (list === 'gaps')
    return 'this corner is missing: give the gaps under all four, or empty the others too'
  if (key === 'z' && path.at(-3) === 'axis')
    return `the height at the ${list === 'left' ? 'left' : 'right'} end is missing: give it, or say that the machine has one axis`
  return why
}
