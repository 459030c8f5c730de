import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { Figures } from '../scene/figures'
import type { Sentence } from '../engine/plan/sentence'
import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'
import type { Refusal } from '../document/refusal'

/**
 * What the page asks of the planner: a file as text, a document that was changed on the sheet, or one
 * whose share alone is being changed, which wants its plan at once and no prices.
 */
export type PlannerRequest = {
  readonly id: number
  /** How many times the usual work it may take [1]. */
  readonly work?: number
} & (
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'document'; readonly document: unknown }
  | { readonly kind: 'along'; readonly document: unknown }
)

/** The first thing a page says to a planner: the solver's program, where another planner has compiled it already. */
export interface SolverHanded {
  readonly kind: 'solver'
  readonly module: WebAssembly.Module | undefined
}

/** Said by the page when somebody reaches for the share: from then on its plans are made ahead. */
export const reaching = 'reaching'

/** Everything the sheet draws of one plan; plain data, sent by structured clone. */
export interface Drawing {
  readonly train: Train
  readonly answer: PlanAnswer
  readonly sentence: Sentence
  readonly figures: Figures
}

/**
 * A plan made before it is asked for, because its share may be next: what differs from the document of
 * this key is the share alone. The train is that of the reply to that document, but for its share.
 */
export interface Ahead {
  readonly kind: 'ahead'
  readonly key: string
  readonly drawing: Omit<Drawing, 'train'>
}

/** Said once by a worker, when its solver is loaded: from then on it may be ended at any time. */
export const ready = 'ready'

/** What a worker says of itself beside its answers. */
export type LifeSign =
  | typeof ready
  /** It has compiled its solver, for others to use. */
  | { readonly kind: 'compiled'; readonly module: WebAssembly.Module }
  /** It runs; it holds a lock of this name as long as it lives. */
  | { readonly kind: 'alive'; readonly lock: string }
  /** Its solver could not be loaded: it answers nothing, and another may be started in its place. */
  | { readonly kind: 'not loaded'; readonly why: string }
  /** It has come to this question; it says nothing more before it has worked it out. */
  | { readonly kind: 'begun'; readonly id: number }

export type Reply = { readonly id: number } & (
  | { readonly kind: 'drawn'; readonly document: TrainDocument; readonly drawing: Drawing }
  | { readonly kind: 'refused'; readonly refused: readonly Refusal[] }
  | { readonly kind: 'failed'; readonly why: string }
)
