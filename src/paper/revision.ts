import type { Page } from './page'

/**
 * A short mark of what a sheet says, such as "7C31-A04E": two sheets with the same mark say the same,
 * word by word and digit by digit; drawings follow from those and do not count. FNV-1a, 32 bits
 * (Fowler, Noll, Vo; from memory).
 */
export function revisionOf(pages: readonly Page[]): string {
  const said = JSON.stringify(pages, (key, value: unknown) =>
    key === 'figure' || key === 'figures' ? undefined : value,
  )
  const mark = fnv(said).toString(16).toUpperCase().padStart(8, '0')
  return `${mark.slice(0, 4)}-${mark.slice(4)}`
}

function fnv(text: string): number {
  let hash = 0x811c9dc5
  for (const unit of text) hash = Math.imul(hash ^ (unit.codePointAt(0) ?? 0), 0x01000193)
  return hash >>> 0
}
