import type { DocumentUnits } from '../mechanics/units'
import type { ReadyAnswer } from '../engine/fieldwork/ready/answer'
import { line } from './planJson'
import { written, type MeasuresOf } from './written'

const shaft = { x: 'length', value: 'fine' } as const
const shafts = { left: shaft, right: shaft } as const

const readiness: MeasuresOf<ReadyAnswer> = {
  softFoot: {
    limit: 'fine',
    feet: { rise: 'fine', gap: 'fine' },
    shims: { shim: 'fine', exact: 'fine' },
    total: 'fine',
    leaves: 'fine',
    unexplained: 'fine',
    moves: line,
  },
  strain: {
    limit: 'fine',
    flanges: { y: 'fine', z: 'fine' },
    total: { y: 'fine', z: 'fine' },
  },
  closure: {
    set: 'as it is',
    value: 'fine',
    limit: 'fine',
    doubt: { x: 'length', rise: 'fine', side: 'fine' },
  },
  signs: { sets: { set: 'as it is' }, picture: { rise: shafts, side: shafts } },
}

/** Whether a plan may be carried out, in the document's units. */
export const readyJson = (ready: ReadyAnswer, units: DocumentUnits): ReadyAnswer =>
  written(ready, readiness, units)
