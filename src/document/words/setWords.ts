import type { CouplingDocument, TrainDocument } from '../schema'
import type { DocumentUnits } from '../../mechanics/units'
import { hourName } from '../../language/hours'
import { endNames } from './lineSaid'
import { fineSaid, lengthSaid } from '../said'
import type { DraftSet } from '../edits/readingPresets'

const other = { left: 'right', right: 'left' } as const
type Side = keyof typeof other

const sideOf = (value: unknown): Side | undefined =>
  value === 'left' || value === 'right' ? value : undefined

/** What a set is called over its table: "Set 2: rim of the gearbox, stem at x 1015 mm". */
export function setTitle(
  document: TrainDocument,
  coupling: CouplingDocument,
  set: DraftSet,
  index: number,
  units: DocumentUnits,
): string {
  const names = endNames(document, coupling)
  const text = (field: string, before: string) => {
    const value = set[field]
    return typeof value === 'number' ? `, ${before} ${lengthSaid(value, units)}` : ''
  }
  const rides = sideOf(set['rides']) ?? 'right'
  const kinds: Record<string, () => string> = {
    rim: () => `rim of ${names[rides]}${text('at', 'stem at x')}`,
    face: () =>
      `${set['face'] === 'back' ? 'back' : 'front'} of the face of ${names[rides]}${text('diameter', 'on a circle of')}`,
    gap: () => `gap between the faces${text('diameter', 'on a circle of')}`,
    spool: () =>
      `face at the ${sideOf(set['end']) ?? 'left'} end of the spacer${text('diameter', 'on a circle of')}`,
    line: () => `offsets and slopes${text('at', 'at x')}`,
  }
  return `Set ${index + 1}: ${kinds[String(set['kind'])]?.() ?? 'readings'}`
}

/** Where the dial stands, in words: which shaft the stem touches and where the bracket is. */
export function setUp(document: TrainDocument, coupling: CouplingDocument, set: DraftSet): string {
  const names = endNames(document, coupling)
  const rides = sideOf(set['rides']) ?? 'right'
  const onOther = `the bracket is on ${names[other[rides]]}`
  switch (set['kind']) {
    case 'rim':
      return `The stem rides the rim of ${names[rides]} and points at its axis; ${onOther}.`
    case 'face':
      return set['face'] === 'back'
        ? `The stem rides the back of the face of ${names[rides]}, the side that looks away from ${names[other[rides]]}; ${onOther}.`
        : `The stem rides the front of the face of ${names[rides]}, the side that looks at ${names[other[rides]]}; ${onOther}.`
    case 'spool': {
      const end = sideOf(set['end']) ?? 'left'
      return `The stem rides a face between the spacer and ${names[end]}, on the one that looks at the other; the bracket is on that other.`
    }
    case 'gap':
      return 'A feeler or taper gauge between the faces: the gap itself, wider is more.'
    default:
      return `${names.right} against ${names.left}: + is up, and + is ${hourName(document, 3)}.`
  }
}

/** One value of a set in words, with its sign: "stem pushed in 0.3 mm at the bottom". */
export function readingSaid(
  document: TrainDocument,
  kind: unknown,
  hour: number | undefined,
  value: number,
  units: DocumentUnits,
): string {
  const name = hour === undefined ? 'there' : hourName(document, hour)
  const where = /^(top|bottom)$/.test(name)
    ? `at the ${name}`
    : /o'clock$/.test(name) && !name.startsWith('to')
      ? `at ${name}`
      : name
  if (kind === 'gap') return `gap of ${fineSaid(value, units)} ${where}`
  if (value === 0) return `the dial shows 0 ${where}`
  return `stem ${value > 0 ? 'pushed in' : 'let out'} ${fineSaid(value, units)} ${where}`
}
