import type { Body } from '../mechanics/train'

/** Names that are plain trade words and may stand in a sentence with a small letter. */
const plainWords = new Set([
  ...['motor', 'turbine', 'gearbox', 'gear', 'compressor', 'pump', 'fan', 'generator', 'blower'],
  ...['expander', 'engine', 'machine', 'skid', 'bedplate', 'driver', 'booster', 'exciter'],
])

/**
 * A body's name inside a sentence: "Low-stage compressor" becomes "the low-stage compressor"; tags
 * ("K-101"), initials ("LP compressor") and names of one word that is no trade word stay as typed.
 */
export function inSentence(name: string): string {
  const trimmed = name.trim()
  const words = trimmed.split(/\s+/)
  const first = words[0] ?? ''
  if (/^the$/i.test(first)) return `the ${words.slice(1).join(' ')}`
  if (/\d/.test(first)) return trimmed
  const sentenceCase =
    /^\p{Lu}[\p{Ll}-]+$/u.test(first) &&
    (words.length > 1
      ? words.slice(1).every((word) => !/^\p{Lu}\p{Ll}/u.test(word))
      : plainWords.has(first.toLowerCase()))
  const body = sentenceCase ? trimmed.charAt(0).toLowerCase() + trimmed.slice(1) : trimmed
  return `the ${body}`
}

/** "a", "a and b", "a, b and c"; or with "or". */
export function listed(parts: readonly string[], joint: 'and' | 'or' = 'and'): string {
  const last = parts.at(-1) ?? ''
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} ${joint} ${last}`
}

/** Those of some ids by their names, as they stand in a sentence, in the order of the train. */
export const namesOfThose = (
  bodies: readonly Pick<Body, 'id' | 'name'>[],
  ids: Iterable<string>,
): string[] => {
  const those = new Set(ids)
  return bodies.filter(({ id }) => those.has(id)).map(({ name }) => inSentence(name))
}

/** "Fixed: the gear and the motor", "Nothing is fixed". */
export function fixedText(
  bodies: readonly Pick<Body, 'id' | 'name'>[],
  ids: Iterable<string>,
): string {
  const names = namesOfThose(bodies, ids)
  return names.length === 0 ? 'Nothing is fixed' : `Fixed: ${listed(names)}`
}

/** Bodies named when there is one, counted when there are more: "3 machines", "2 machines and the skid". */
export function bodiesInWords(bodies: readonly Body[]): string {
  const only = bodies[0]
  if (bodies.length === 1 && only) return inSentence(only.name)
  const machines = bodies.filter(({ kind }) => kind === 'machine')
  const skids = bodies.filter(({ kind }) => kind === 'skid')
  return listed(
    [partInWords(machines, 'machines'), partInWords(skids, 'skids')].filter((part) => part !== ''),
  )
}

function partInWords(bodies: readonly Body[], many: string): string {
  const only = bodies[0]
  if (!only) return ''
  return bodies.length === 1 ? inSentence(only.name) : `${bodies.length} ${many}`
}

/** A count with its noun: "1 choice", "3 choices". */
export const counted = (count: number, one: string, many: string): string =>
  `${count} ${count === 1 ? one : many}`

/** The text with a capital first letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
