import type { DocumentUnits } from '../../mechanics/units'
import { fineSaid } from '../said'

/**
 * Sag of a bracket as it is written down: the reading of a stiff bar at the bottom after 0 at the top
 * ("whole"), or half of that drop with the sign turned ("half"). The train file keeps the half:
 * sag = (reading at 12 - reading at 6) / 2.
 */
export type SagWritten = 'whole' | 'half'

/** What a number typed is multiplied by to be what the file keeps. */
export const sagFactor: Record<SagWritten, number> = { whole: -0.5, half: 1 }

/** The half (document's fine unit) from what was written down. */
export const sagFrom = (written: SagWritten, value: number): number =>
  value * sagFactor[written] || 0

/** A sag that is kept (document's fine unit), said both ways so that neither can be taken for the other. */
export function sagWords(
  sag: number,
  units: DocumentUnits,
): { readonly bar: string; readonly half: string } {
  if (sag === 0)
    return {
      bar: 'no sag: a stiff bar reads 0 at the bottom after 0 at the top',
      half: 'no sag',
    }
  const bar = -2 * sag
  return {
    bar: `a stiff bar reads ${bar < 0 ? '−' : '+'}${fineSaid(bar, units)} at the bottom after 0 at the top`,
    half: `half of that with the sign turned, ${sag < 0 ? '−' : '+'}${fineSaid(sag, units)}`,
  }
}

/** A rim bracket droops: its bar reads less at the bottom. One that reads more is worth a second look. */
export const sagDoubt = (kind: string, sag: number): string | undefined =>
  kind === 'rim' && sag < 0
    ? 'On a rim a bracket that droops reads − at the bottom. This one reads +: is the sign right?'
    : undefined
