import type { Finding, NotEntered } from '../engine/plan/answer'
import { heading, paragraph } from './layout'

/** What stands in every answer that a person may act on. */
export const caution =
  'Planning aid. Isolate, lock, try to start. Site procedure comes first; the responsible engineer decides and signs.'

export function findingsText(findings: readonly Finding[]): string[] {
  if (findings.length === 0) return []
  return [
    ...heading('FINDINGS', 'worth another look'),
    ...findings.flatMap(({ where, what }) => paragraph(`${what} (${where})`, '  - ')),
  ]
}

export function notEnteredText(notEntered: readonly NotEntered[]): string[] {
  if (notEntered.length === 0) return [...heading('NOT ENTERED', 'nothing was missing')]
  return [
    ...heading('NOT ENTERED', 'and what was done instead'),
    ...notEntered.flatMap(({ what, instead }) => paragraph(`${what}; ${instead}`, '  - ')),
  ]
}

export const cautionText = (): string[] => ['', ...paragraph(caution)]
