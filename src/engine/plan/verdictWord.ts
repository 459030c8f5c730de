import type { CheckAnswer } from './answer'

/**
 * What all checks of a coupling in a state show with what a guard or intervals keep free (ISO 14253-1): "shown to be in",
 * "shown to be out", else "not shown to be in"; empty where nothing is kept free.
 */
export function verdictWord(checks: readonly CheckAnswer[]): string {
  const verdicts = checks.flatMap(({ verdict }) => verdict ?? [])
  if (verdicts.length === 0) return ''
  if (verdicts.includes('out')) return 'shown to be out'
  return verdicts.every((verdict) => verdict === 'in') ? 'shown to be in' : 'not shown to be in'
}
