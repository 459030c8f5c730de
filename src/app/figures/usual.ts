import { toFine, toLength, type Micrometres, type Millimetres } from '../../mechanics/units'
import { digitsSaid } from '../../document/said'
import { useJob } from '../stores/job'

/** Usual values in the units of the document, as far as they matter: what counts where a cell is left empty. */
export function useUsual() {
  const job = useJob()
  const digits = (value: number): string => digitsSaid(Number(value.toPrecision(2)))
  const units = () => ({ ...job.units, temperature: 'C' as const })
  return {
    fine: (value: Micrometres): string => digits(toFine(value, units())),
    length: (value: Millimetres): string => digits(toLength(value, units())),
  }
}
