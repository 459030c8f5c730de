import type { SureStage } from '../engine/chance/answer'
import type { ChanceAlong } from '../engine/chanceAlong'
import type { WhyFoot } from '../engine/studies/why/whyFootSentence'
import type { FromHere } from '../engine/studies/hand/fromHere'
import type { HandPlan } from '../engine/studies/hand/handPlan'
import type { ReasonsAnswer, Stages } from '../engine/fieldwork/answer'
import type { ReadyAnswer } from '../engine/fieldwork/ready/answer'
import type { HoldList } from '../text/holdList'
import type { Tradeoff } from '../engine/studies/tradeoff/tradeoff'

/** The trade-off of a train, and why it begins where it does; not there where the work allowed for it ran out. */
export type Margin =
  | { readonly ranOut: true; readonly tradeoff?: never; readonly floor?: never }
  | { readonly ranOut: false; readonly tradeoff: Tradeoff | undefined; readonly floor: string }

/** What takes longer than a plan: asked of a planner of its own, which answers bit by bit. */
export type AnalysisRequest = {
  readonly id: number
  /** How many times the usual work each question may take [1]. */
  readonly work?: number
} & (
  | {
      readonly kind: 'analysis'
      readonly document: unknown
      /** Whether the trade-off is wanted: it does not depend on the share asked for. */
      readonly curve: boolean
    }
  | {
      readonly kind: 'reasons'
      readonly document: unknown
    }
  | {
      readonly kind: 'why'
      readonly document: unknown
      readonly body: string
      readonly foot: string
    }
  | { readonly kind: 'work'; readonly document: unknown }
  | { readonly kind: 'from here'; readonly document: unknown; readonly hand: HandPlan }
  /** Ends the analysis of this number where it is. */
  | { readonly kind: 'stop' }
)

/** What turns a plan into work: real shims, the order of steps, and whether it may begin. */
export type Work = Pick<Stages, 'rounded' | 'steps'> & { readonly ready: ReadyAnswer }

export type AnalysisReply = { readonly id: number } & (
  | { readonly kind: 'begun' }
  | {
      readonly kind: 'holds'
      readonly list: HoldList
      readonly done: number
      readonly total: number | undefined
      readonly finished: boolean
    }
  | {
      readonly kind: 'curve'
      readonly margin: Margin
    }
  | { readonly kind: 'reasons'; readonly reasons: ReasonsAnswer | undefined }
  | { readonly kind: 'why'; readonly whys: readonly WhyFoot[] }
  | { readonly kind: 'work'; readonly work: Work }
  /** After the work: how sure the plan is, and then once more with the chances along its trade-off. */
  | {
      readonly kind: 'sure'
      readonly sure: NonNullable<SureStage['sure']>
      readonly along: readonly ChanceAlong[]
      /** Whether nothing more of it is to come. */
      readonly whole: boolean
    }
  | { readonly kind: 'from here'; readonly from: FromHere }
  | { readonly kind: 'failed'; readonly why: string }
)
