import { harmlessLine } from '../language/harmless'

/** One reason why a document is refused: where, and what is wrong, found and right. */
export interface Refusal {
  /** Place in the document, such as `couplings[1].found[0].readings[2]`; "" is the document itself. */
  readonly at: string
  /** One sentence: what is wrong, the value found, what would be right. */
  readonly why: string
}

/** Writes a path of keys and indices as people read it. */
export const placeOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((place, key) => {
    if (typeof key === 'number') return `${place}[${key}]`
    const name = String(key)
    if (!/^[A-Za-z_$][\w$]*$/.test(name)) return `${place}[${JSON.stringify(name)}]`
    return place === '' ? name : `${place}.${name}`
  }, '')

/** Shows any value in a message in plain words, shortened so that a message stays one sentence. */
export function shown(value: unknown): string {
  if (value === undefined || value === null) return 'nothing'
  if (typeof value === 'number' || typeof value === 'boolean') return String(value)
  if (typeof value === 'string') return `“${shortened(value)}”`
  if (Array.isArray(value)) return listShown(value)
  const names = Object.keys(value).slice(0, 60)
  return names.length === 0 ? 'an empty group' : `a group of ${shortened(names.join(', '))}`
}

/** A range is said, longer lists are counted. */
function listShown(list: readonly unknown[]): string {
  const [low, high] = list
  if (list.length === 2 && typeof low === 'number' && typeof high === 'number')
    return `${shown(low)} to ${shown(high)}`
  return list.length === 0 ? 'an empty list' : `a list of ${list.length}`
}

/** On one line, with nothing in it that hides or steers what stands around it. */
const shortened = (text: string): string =>
  harmlessLine(text.length > 60 ? `${text.slice(0, 57)}...` : text)

/** As many refusals as anybody reads at once, and how many more there are. */
const mostRefusals = 100

export const firstRefusals = (refused: readonly Refusal[]): readonly Refusal[] =>
  refused.length <= mostRefusals
    ? refused
    : [
        ...refused.slice(0, mostRefusals),
        { at: '', why: `and ${refused.length - mostRefusals} more: repair these first` },
      ]
