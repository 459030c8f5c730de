import type * as z from 'zod/mini'
import { placeOf, shown, type Refusal } from './refusal'
import type { trainDocument } from './schema'

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

/** Most characters of a key that is told as part of a place; no id is longer. */
const longestKey = 100

/** Turns the schema's complaints into refusals that name the place, the value and what would be right. */
export function shapeRefusals(
  error: z.core.$ZodError<z.infer<typeof trainDocument>>,
  input: unknown,
): Refusal[] {
  return error.issues.flatMap((issue) => explain(issue, issue.path, input))
}

function explain(issue: Issue, path: Path, input: unknown): Refusal[] {
  const value = valueAt(input, path)
  const at = placeOf(path)
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        at: key.length > longestKey ? at : placeOf([...path, key]),
        why: `unknown field ${shown(key)} with value ${shown(valueAt(value, [key]))}: check its spelling, or leave it out`,
      }))
    case 'invalid_type':
      return [{ at, why: wrongType(issue.expected, value) }]
    case 'invalid_value':
      return [{ at, why: wrongValue(issue.values, path, value) }]
    case 'too_small':
    case 'too_big':
      return [{ at, why: wrongSize(issue, value) }]
    case 'invalid_union':
      return explainUnion(issue, path, input)
    case 'invalid_key': {
      const key = String(path.at(-1))
      const [inner] = issue.issues
      const long = key.length > longestKey
      return [
        {
          at: long ? placeOf(path.slice(0, -1)) : at,
          why: `${shown(key)} is no id: ${key === '' ? 'it is empty' : long ? `it has ${key.length} characters, and an id has at most ${longestKey}` : (inner?.message ?? '')}`,
        },
      ]
    }
    case 'invalid_format':
    case 'not_multiple_of':
    case 'invalid_element':
    case 'custom':
      return [{ at, why: `${shown(value)} is not right here: ${issue.message}` }]
  }
}

function wrongType(expected: string, value: unknown): string {
  const wanted = articles[expected] ?? expected
  if (value === undefined) return `missing: give ${wanted}`
  if (value === null) return `empty: give ${wanted}`
  if (typeof value === 'number' && !Number.isFinite(value))
    return `this is no finite number: give ${wanted}`
  return `${shown(value)} is not ${wanted}: give ${wanted}`
}

const articles: Record<string, string> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list of two numbers',
  object: 'a group of named fields',
  record: 'a group of named fields',
}

function wrongValue(values: readonly unknown[], path: Path, value: unknown): string {
  const last = path.at(-1)
  if (last === 'version' && typeof value === 'number' && value > 1)
    return `version ${value} is newer than this program reads: it reads version 1`
  if (value === undefined) return `missing: give ${listed(values)}`
  return `${shown(value)} is not known here: give ${listed(values)}`
}

const listed = (values: readonly unknown[]): string => values.map(shown).join(' or ')

function wrongSize(
  issue: Extract<Issue, { code: 'too_small' | 'too_big' }>,
  value: unknown,
): string {
  const limit = issue.code === 'too_small' ? issue.minimum : issue.maximum
  const side =
    issue.code === 'too_small'
      ? issue.inclusive === false
        ? 'above'
        : 'at least'
      : issue.inclusive === false
        ? 'below'
        : 'at most'
  if (Array.isArray(value))
    return `the list has ${value.length} ${value.length === 1 ? 'entry' : 'entries'}: it needs ${side} ${limit}`
  if (typeof value === 'string')
    return `the text has ${value.length} characters: it needs ${side} ${limit}`
  return `${shown(value)} is out of range: it must be ${side} ${limit}`
}

/** Of the branches of a union, the one that the value most nearly is. */
function explainUnion(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  path: Path,
  input: unknown,
): Refusal[] {
  if (issue.errors.length === 0) {
    const kind = valueAt(input, [...path])
    const known = listed(['rim', 'face', 'gap', 'spool', 'line'])
    return [{ at: placeOf(path), why: `${shown(kind)} is not known here: give ${known}` }]
  }
  const branches = issue.errors.map((issues) =>
    issues.flatMap((inner) => explain(inner, [...path, ...inner.path], input)),
  )
  const value = valueAt(input, path)
  const twoAxes = isRecord(value) && ('left' in value || 'right' in value)
  return branches[twoAxes ? branches.length - 1 : 0] ?? []
}

const isRecord = (value: unknown): value is Record<PropertyKey, unknown> =>
  typeof value === 'object' && value !== null

function valueAt(input: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) => (isRecord(value) && Object.hasOwn(value, key) ? value[key] : undefined),
    input,
  )
}
