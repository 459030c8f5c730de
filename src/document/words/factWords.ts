import type { RecordFacts } from '../work'

/** What each fact of the record is called, wherever it is asked for, printed or written down. */
export const factWords: Readonly<Record<keyof RecordFacts, string>> = {
  workOrder: 'work order',
  tag: 'tag',
  temperatures: 'temperatures of air, oil and base',
  dials: 'dials: numbers, calibrated when',
  bracket: 'brackets: sag as measured',
  micrometers: 'micrometers: numbers, calibrated when',
  torque: 'torque and wrench',
  runOut: 'run-out',
  gaps: 'gaps and end float',
  dowels: 'dowels',
  guards: 'guards',
  readBy: 'read by',
  checkedBy: 'checked by',
  acceptedBy: 'accepted for operations by',
  acceptance: 'accepted because',
}

/** In the order in which they are asked for. */
export const factKeys = Object.keys(factWords) as (keyof RecordFacts)[]
