import type { StatorAnswer } from '../engine/plan/statorAnswer'
import type { DocumentUnits } from '../mechanics/units'
import { written, type MeasuresOf } from './written'

const off = { y: 'fine', z: 'fine', part: 'plain' } as const

export const stators: MeasuresOf<StatorAnswer[]> = {
  limit: 'plain',
  gaps: {
    ...{ at: 'length', mean: 'fine', outOfRound: 'fine', found: off, planned: off },
    ...{ move: { y: 'fine', z: 'fine' }, centred: off },
  },
  feet: { shim: 'fine', side: 'fine' },
}

/** Stators in the document's units; nothing where there is none. */
export const statorsJson = (
  answer: { stators?: StatorAnswer[] },
  units: DocumentUnits,
): { stators?: StatorAnswer[] } =>
  answer.stators ? { stators: written(answer.stators, stators, units) } : {}
