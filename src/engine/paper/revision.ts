import type { PaperJob } from './job'

/**
 * A short mark of the numbers a sheet was made from, such as "7C31-A04E": two sheets with the same
 * mark carry the same train and the same plan. What was written down of the work does not count.
 * FNV-1a, 32 bits (Fowler, Noll, Vo; from memory).
 */
export function revisionOf({ document, answer }: PaperJob): string {
  const numbers = { ...document, record: undefined }
  const mark = fnv(JSON.stringify([numbers, answer]))
    .toString(16)
    .toUpperCase()
    .padStart(8, '0')
  return `${mark.slice(0, 4)}-${mark.slice(4)}`
}

function fnv(text: string): number {
  let hash = 0x811c9dc5
  for (const unit of text) hash = Math.imul(hash ^ (unit.codePointAt(0) ?? 0), 0x01000193)
  return hash >>> 0
}
