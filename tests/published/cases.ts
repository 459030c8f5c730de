import { readFileSync } from 'node:fs'

/** One printed (or constructed) example: what goes in, what the source says comes out. */
export interface Case {
  readonly id: string
  readonly source: string
  readonly certainty: string
  readonly units: string
  readonly input: unknown
  readonly expected: unknown
  readonly printed?: Record<string, unknown>
  readonly tolerance: number
  readonly note?: string
}

export function casesOf(theme: string): readonly Case[] {
  const file = new URL(`../../shared/cases/${theme}.json`, import.meta.url)
  return (JSON.parse(readFileSync(file, 'utf8')) as { cases: Case[] }).cases
}

/** One case, with its input and expected numbers in the shape that the test states. */
export function caseOf<T extends { input: unknown; expected: unknown }>(
  theme: string,
  id: string,
): Case & { input: T['input']; expected: T['expected'] } {
  const found = casesOf(theme).find((entry) => entry.id === id)
  if (found === undefined) throw new Error(`no case ${id} in ${theme}`)
  return found
}
