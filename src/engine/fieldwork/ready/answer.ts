import type { Micrometres, Milliradians } from '../../../mechanics/units'
import type { ClosureAnswer } from '../../plan/closureWords'
import type { SignPicture } from './signs'

/** Whether a plan may be carried out. */
export interface ReadyAnswer {
  /** Soft foot, pipe strain, signs, closures and hot checks are in, or waived by name. */
  ready: boolean
  /** Soft foot is to be shimmed first, which moves shafts: every figure after it is then another. */
  provisional: boolean
  sentence: string
  /** Why the figures are provisional; empty when they are not. */
  provisionalSentence: string
  items: ReadyItem[]
  /** Bodies that are soft and not waived, each a step of its own. */
  softFoot: SoftFootAnswer[]
  strain: StrainAnswer[]
  closure: ClosureAnswer[]
  signs: SignAnswer[]
}

export type ReadyWhat = 'soft foot' | 'pipe strain' | 'signs' | 'closure' | 'hot check'
export type ReadyState = 'in' | 'waived' | 'missing' | 'bad'

export interface ReadyItem {
  what: ReadyWhat
  /** Id of the body, for soft foot, of the hot check, or of the coupling. */
  where: string
  state: ReadyState
  words: string
  by?: string
  why?: string
}

export interface SoftFootAnswer {
  body: string
  limit: Micrometres
  source: string
  feet: FootGapAnswer[]
  /** To be added under each foot, 0 where nothing is; not there where no shims make the feet plane. */
  shims?: { foot: string; shim: Micrometres; exact: Micrometres }[]
  total?: Micrometres
  /** Most that a foot should stand off after the shims. */
  leaves?: Micrometres
  /** Most that a gap lies from what a stiff frame would show. */
  unexplained: Micrometres
  /** Why there are no shims. */
  why?: string
  /** What the shims do to the couplings: right axis against left, at mid-span. */
  moves: {
    coupling: string
    offset: { y: Micrometres; z: Micrometres }
    slope: { y: Milliradians; z: Milliradians }
    words: string
  }[]
  /** What is done, in sentences: the step. */
  words: string[]
  /** Where the step stops, and what is read before anything else is moved. */
  hold: string
}

export interface FootGapAnswer {
  foot: string
  rise: Micrometres
  gap: Micrometres
  kinds: string[]
  words: string
}

export interface StrainAnswer {
  coupling: string
  verdict: 'none' | 'part' | 'within' | 'passed'
  limit: Micrometres
  source: string
  flanges: { name: string; y?: Micrometres; z?: Micrometres; verdict: string; words: string }[]
  total: { y: Micrometres; z: Micrometres }
}

export interface SignAnswer {
  coupling: string
  says: string
  sets: { set: number; says: string }[]
  picture: SignPicture
  /** Somebody confirmed these very words. */
  confirmed: boolean
  by?: string
  /** Other words were confirmed before: the readings have changed since. */
  before?: string
}
