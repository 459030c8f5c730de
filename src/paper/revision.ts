import { fnv32, pointsOf } from '../document/fingerprint'
import type { Chapter } from './page'

/**
 * A short mark of what a sheet says, such as "7C31-A04E": two sheets with the same mark say the same,
 * word by word and digit by digit, whatever the paper they are cut to; drawings follow from those and do not count, nor does
 * the code, which names how far the work is.
 */
export function revisionOf(chapters: readonly Chapter[]): string {
  const said = JSON.stringify(chapters, (key, value: unknown) =>
    key === 'figure' || key === 'figures' || isCode(value) ? undefined : value,
  )
  const mark = fnv32(pointsOf(said)).toUpperCase()
  return `${mark.slice(0, 4)}-${mark.slice(4)}`
}

const isCode = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'code'
