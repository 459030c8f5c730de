import { shareAsked } from '../language/askedShare'
import { counted } from '../language/names'
import type { CertificateAnswer } from '../engine/plan/certificateAnswer'
import type { Train } from '../mechanics/train'

/** Most digits of a percent that are told: as many as a double holds of a share, less its last ones. */
const mostDecimals = 8

/** Rounded down, as all that is said of it is, and with as many digits as it takes to see that it is over what was asked. */
function percentDown(least: number, asked: number): string {
  for (let decimals = 1; ; decimals++) {
    const step = 10 ** decimals
    const down = Math.floor(least * 100 * step) / step
    if (down > asked * 100 || decimals === mostDecimals) return down.toFixed(decimals)
  }
}

/** What shows that a train is impossible, in sentences; the share is rounded down, as all that is said of it is. */
export function certificateSentences(train: Train, certificate: CertificateAnswer): string[] {
  const { accepted, least, limits, checkedBy, why } = certificate
  if (!accepted || least === null)
    return [
      `That it is impossible rests on the floor that the solver found: the certificate was not accepted, ${why ?? 'for no reason'}.`,
    ]
  const percent = percentDown(least, train.plan.share)
  const kept = train.plan.guard > 0 || train.plan.worst ? ', what is kept free of it counted' : ''
  return [
    `Whatever is moved within the limits uses ${percent} % of some tolerance, or more${kept}; ${shareAsked(train.plan)}.`,
    `It follows from ${counted(limits.length, 'limit', 'limits')} alone. Checked by: ${checkedBy}.`,
  ]
}
