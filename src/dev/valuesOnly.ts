import type { Plugin } from 'vite'

/** What the table of deciding numbers says of each for whoever reads the sources. */
const words = /,\s*(?:unit|means|why): '(?:[^'\\]|\\.)*'/g

/** The source of the table without them. */
export const withoutWords = (source: string): string => source.replace(words, '')

/**
 * Leaves the units, meanings and reasons of the deciding numbers out of the built app: it works with their values alone,
 * and the page of the numbers is made from the sources.
 */
export function valuesOnly(): Plugin {
  return {
    name: 'holdfast-values-only',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      return id.endsWith('/mechanics/tolerances.ts') ? withoutWords(code) : undefined
    },
  }
}
