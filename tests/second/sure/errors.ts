import { metric } from '../metric'
import { fineFactor, type Train } from '../train'
import { moves, still, type Motion } from './bodies'
import { boltErrors, boltsOf, type Bolt } from './bolts'
import { growthErrors } from './growthErrors'
import { jointsOf, type Joint } from './joints'
import { asFoundNumbers, motionsOf, plannedNumbers } from './nominal'
import { readingErrors } from './readingErrors'
import type { Source } from './source'
import { workErrors } from './workErrors'

/** A plan that is given as the own motion of each body (document units). */
export type Motions = Readonly<Record<string, Motion>>

/** What a train shows as found and with a plan carried out, and every error beside that. */
export interface Errors {
  joints: Joint[]
  found: Float64Array
  done: Float64Array
  bolts: Bolt[]
  /** Errors of what is known: of readings and growth. */
  known: Source[]
  /** Errors of what is done. */
  work: Source[]
}

/** Every error of a train and a plan (um and mrad). */
export function errorsOf(document: Train, motions: Motions): Errors {
  const train = metric(document)
  const joints = jointsOf(train)
  const planned = motionsOf(train, motions, fineFactor(document))
  const found = asFoundNumbers(train, joints)
  const all = [...planned].map(([standing, motion]) => ({ standing, motion }))
  const bolts = boltsOf([...planned.keys()], (of) => planned.get(of) ?? still, found.length)
  const done = all
    .filter(({ standing, motion }) => moves(standing, motion))
    .flatMap(({ standing, motion }) => workErrors(train, joints, standing, motion, bolts))
  return {
    joints,
    found,
    done: plannedNumbers(joints, found, planned),
    bolts,
    known: [...readingErrors(train, joints), ...growthErrors(train, joints)],
    work: [...done, ...boltErrors(bolts)],
  }
}
