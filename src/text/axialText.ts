import { axialSigns, axialTable } from '../engine/plan/axialTable'
import type { AxialAnswer } from '../engine/plan/axialAnswer'
import type { Train } from '../mechanics/train'
import { heading, paragraph, table } from './layout'

/** The train along its shafts, machine by machine and coupling by coupling from left to right. */
export function axialText(train: Train, axial: AxialAnswer | undefined): string[] {
  if (!axial) return []
  const { members, rows } = axialTable(train, axial)
  return [
    ...heading('ALONG THE TRAIN', 'gaps between shaft ends, from left to right'),
    ...members.flatMap(({ name }, k) => {
      const own = rows.flatMap(({ head, cells }) => {
        const said = cells[k] ?? ''
        return said === '' ? [] : [[head, said]]
      })
      return [
        ...paragraph(name, '  ', 2),
        ...(own.length === 0 ? [] : table([{ head: '' }, { head: '' }], own, 4)),
      ]
    }),
    ...paragraph(axialSigns, '  ', 2),
  ]
}
