import type { Refusal } from '../refusal'
import { pathFromPlace, valueAt, type Path } from '../place'

/** Figures that a train under way may lack: the sheet asks for each where it stands. */
const figures = new Set<string | number>([
  ...['x', 'z', 'axis', 'plane', 'at', 'diameter', 'now', 'clearance', 'step'],
  ...['height', 'expansion', 'from', 'to'],
  ...['after', 'time'],
])
const ofGap = new Set<string | number>(['found', 'want', 'tolerance'])

/**
 * Whether a document is a train under way and nothing worse: every reason why it is refused is a figure
 * that is not there yet, or a list that is still too short.
 */
export function isUnfinished(document: unknown, refused: readonly Refusal[]): boolean {
  return refused.length > 0 && refused.every(({ at }) => isOpen(document, pathFromPlace(at)))
}

function isOpen(document: unknown, path: Path): boolean {
  const value = valueAt(document, path) ?? undefined
  const [key, above] = [path.at(-1) ?? '', path.at(-2)]
  if (value === undefined)
    return (
      figures.has(key) ||
      (above === 'axis' && (key === 'left' || key === 'right')) ||
      (above === 'axial' && ofGap.has(key)) ||
      isNumberOfList(document, path)
    )
  if (key === 'machines') return path.length === 1 && Array.isArray(value)
  if (key === 'tolerance') return path.length === 3 && path[0] === 'couplings'
  // no feet, no shims, no readings yet, or too few of them
  const list = key === 'feet' || key === 'stock' || key === 'found' || key === 'readings'
  return list && Array.isArray(value) && (key === 'found' || value.length === 0)
}

/** One place of a list of numbers: half of a range, a corner, a reading, a shim. */
const isNumberOfList = (document: unknown, path: Path): boolean =>
  typeof path.at(-1) === 'number' && Array.isArray(valueAt(document, path.slice(0, -1)))

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/**
 * Whether a value has what every train on a sheet has from its first moment, whatever else is wrong or
 * missing: its units, and lists of machines and couplings.
 */
export const isUnderWay = (value: unknown): boolean =>
  isGroup(value) &&
  isGroup(value['units']) &&
  [value['machines'], value['couplings']].every(
    (list) => Array.isArray(list) && list.every(isGroup),
  )
