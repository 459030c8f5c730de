import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { tidy } from '../../../language/tidy'
import type { StepAnswer } from './answer'
import { inEndOrder } from './ends'
import { shimWords } from './words'

/** A shim that makes the feet of a body plane again. */
export interface SoftShim {
  readonly body: string
  readonly foot: string
  readonly shim: Micrometres
  /** What must be read before anything else is moved; a sentence of our own where none is given. */
  readonly hold?: string
}

/**
 * A step a body for its soft feet, before everything else. Where the shafts lie after it nobody can
 * work out, so it ends with new readings.
 */
export function softFootSteps(train: Train, soft: readonly SoftShim[]): StepAnswer[] {
  return train.bodies.flatMap((body): StepAnswer[] => {
    const shims = soft.filter((row) => row.body === body.id && tidy(row.shim) !== 0)
    if (shims.length === 0) return []
    const feet = shims.map(({ foot, shim }) => {
      const pack = body.feet.find(({ id }) => id === foot)?.pack
      const now = pack?.now
      return {
        foot,
        shim,
        ...(now !== undefined && { packBefore: now, packAfter: now + shim }),
      }
    })
    return [
      {
        id: `${body.id}:soft`,
        kind: 'soft foot',
        body: body.id,
        feet,
        words: `Soft foot first. ${shimWords(
          train,
          body,
          inEndOrder(body, shims, 'left').map(({ foot, shim }) => ({ foot, by: shim })),
        )}`,
        hold:
          shims[0]?.hold ??
          'Stop point: loosen each foot again in turn and read its rise. Then read every coupling anew and plan again: these shims change where the shafts lie, and every figure after this step is provisional until then.',
        cautions: ['A block beside each jack, no hand between foot and base.'],
        dials: shims.map(({ foot }) => ({
          foot,
          where: `on the base, stem down on foot ${foot}, zeroed with its bolt loose and read with it tight: + is up`,
          way: 'vertical' as const,
          shows: 0,
        })),
        expected: [],
        judge: [],
        breaks: [],
        standing: [],
        provisional: false,
      },
    ]
  })
}
