import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { tidy } from '../../../language/tidy'
import { noMotion } from '../../../mechanics/motion'
import type { Action } from './action'
import type { StepAnswer, StepFootAnswer } from './answer'
import { beforeMove } from './boltWords'
import { liftCaution } from './cautions'
import { touchedBy } from './limits'
import { inEndOrder } from './ends'
import { stepWay, type StepWay } from './stepWay'
import { changesOf, shimWords } from './words'

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
    const way = softWay(train, body, feet)
    return [
      {
        id: `${body.id}:soft`,
        kind: 'soft foot',
        body: body.id,
        feet: way.feet,
        words: `Soft foot first. ${shimWords(train, body, changesOf(inEndOrder(body, feet, way.first), 'shim'), way.words)}`,
        hold:
          shims[0]?.hold ??
          'Stop point: loosen each foot again in turn and read its rise. Then read every coupling anew and plan again: these shims change where the shafts lie, and every figure after this step is provisional until then.',
        before: beforeMove(train, body, touchedBy(train, train.bodies.indexOf(body)), way.first),
        cautions: [liftCaution],
        dials: shims.map(({ foot }) => ({
          foot,
          where: `on the base, stem down on foot ${foot}, zeroed with its bolt loose and read with it tight: + is up`,
          way: 'vertical' as const,
          shows: 0,
        })),
        expected: [],
        judge: [],
        poses: way.poses,
        ...(way.stops && { stops: way.stops }),
        breaks: way.breaks,
        standing: [],
        provisional: false,
      },
    ]
  })
}

/** Lifts to slip them: where the body then stands is read, so it is told to come back to where it was found. */
function softWay(train: Train, body: Body, feet: StepFootAnswer[]): StepWay {
  const still = train.bodies.map(() => noMotion)
  const action: Action = {
    ...{ id: `${body.id}:soft`, body: train.bodies.indexOf(body), kind: 'vertical' as const },
    ...{ whole: noMotion, from: 0, to: 1, rank: [] },
  }
  const path = { stops: 1, first: 'together' as const, poses: [noMotion], passed: [] }
  return stepWay(train, still, action, path, feet)
}
