import type { DocumentUnits } from '../../mechanics/units'
import type { MaterialCatalogue } from '../catalogues'

/** A material as it would be written into a growth point, in 1e-6 per degree of the document. */
export interface MaterialRow {
  readonly id: string
  readonly name: string
  /** One of the dozen that most machines stand on, told for short and in the degrees of the sheet; else undefined. */
  readonly usual?: string
  readonly expansion: number
  /** Written as the material, with its source. */
  readonly material: string
}

/** Mean of a range of published values, to the tenth they are printed in. */
const one = (value: number | readonly [number, number]): number =>
  typeof value === 'number' ? value : Number(((value[0] + value[1]) / 2).toFixed(2))

/** ", 21 to 93 °C": a printed range ("70 to 200 F") in the degrees of the sheet, whole ones; empty without a range. */
function rangeIn(range: string | undefined, degrees: DocumentUnits['temperature']): string {
  const [, from, to, printed] = /^(\d+) to (\d+) ([CF])$/.exec(range ?? '') ?? []
  if (from === undefined || to === undefined) return ''
  const turned = (text: string): number => {
    const value = Number(text)
    if (printed === degrees) return value
    return Math.round(degrees === 'C' ? ((value - 32) * 5) / 9 : (value * 9) / 5 + 32)
  }
  return `, ${turned(from)} to ${turned(to)} °${degrees}`
}

/** Materials with their published coefficient per degree of the document; a range gives its middle. */
export const materialRows = (catalogue: MaterialCatalogue, units: DocumentUnits): MaterialRow[] =>
  catalogue.rows.map((row, i) => {
    const printed = units.temperature === 'F' ? row.perF : row.perC
    const expansion = one(printed)
    const range = row.range === undefined ? '' : `, ${row.range}`
    const middle = typeof printed === 'number' ? '' : `, middle of ${printed.join(' to ')}`
    return {
      id: String(i),
      name: `${row.material}${range}: ${expansion} (${row.source})`,
      ...(row.usual !== undefined && {
        usual: `${row.usual}${rangeIn(row.range, units.temperature)}: ${expansion}`,
      }),
      expansion,
      material: `${row.material}${range}${middle}; ${row.source} (${row.certainty})`,
    }
  })
