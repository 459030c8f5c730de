import { shareAsked } from '../language/askedShare'
import { counted } from '../language/names'
import type { CertificateAnswer } from '../engine/plan/certificateAnswer'
import type { Train } from '../mechanics/train'

/** What shows that a train is impossible, in sentences. The least share itself is left to the best reachable, which is told beside it. */
export function certificateSentences(train: Train, certificate: CertificateAnswer): string[] {
  const { accepted, least, limits, checkedBy, why } = certificate
  if (!accepted || least === null)
    return [
      `That it is impossible rests on the best reachable that the solver found: the certificate was not accepted, ${why ?? 'for no reason'}.`,
    ]
  const kept = train.plan.guard > 0 || train.plan.worst ? ', what is kept free of it counted' : ''
  return [
    `${shareAsked(train.plan)}, and every allowed move, with the same machines fixed, uses more of some tolerance${kept}.`,
    `It follows from ${counted(limits.length, 'limit', 'limits')} alone, with these machines fixed. Checked by: ${checkedBy}.`,
  ]
}
