import type { DocumentUnits } from '../../mechanics/units'
import { readNumber, type NumberEntry } from './number'

export type PlatesEntry =
  | { readonly ok: true; readonly plates: readonly number[] }
  | Extract<NumberEntry, { readonly ok: false }>

/** Most plates that a file may list under one foot. */
const most = 50

/**
 * Reads the plates of a pack as people write them: "2000, 500, 2 x 50", "3000; 0.05 mm". A comma with a
 * space, a semicolon or "and" stands between plates; a comma alone is a decimal comma.
 * @returns thicknesses in the document's fine unit, or what is wrong and what would be right
 */
export function readPlates(text: string, units: DocumentUnits): PlatesEntry {
  const plates: number[] = []
  const parts = text.split(/\s*(?:;|,\s|\band\b)\s*/i).filter((part) => part.trim() !== '')
  for (const part of parts) {
    const [, count = '1', rest = part] = /^\s*(\d+)\s*[x×]\s*(.+)$/i.exec(part) ?? []
    const read = readNumber(rest, 'fine', units)
    if (!read.ok) return { ok: false, why: `“${part.trim()}”: ${read.why}` }
    if (read.value <= 0)
      return { ok: false, why: `“${part.trim()}”: a plate has a thickness above 0` }
    if (plates.length + Number(count) > most)
      return {
        ok: false,
        why: `more than ${most} plates: write the thick ones that make up the pack`,
      }
    plates.push(...new Array<number>(Number(count)).fill(read.value))
  }
  return { ok: true, plates }
}

/** Plates as they are written: "2000, 500, 2 x 50". */
export function platesText(plates: readonly number[]): string {
  const counts = new Map<number, number>()
  for (const plate of plates) counts.set(plate, (counts.get(plate) ?? 0) + 1)
  return [...counts].map(([plate, n]) => (n === 1 ? `${plate}` : `${n} x ${plate}`)).join(', ')
}
