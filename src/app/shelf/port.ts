import type { HandPlan } from '../../engine/studies/hand/handPlan'
import type { TrainDocument } from '../../document/schema'
import type { Entries } from './records'

/** A document, what was typed into it that is no value, and where machines were put by hand. */
export interface OnSheet {
  readonly document: TrainDocument
  readonly entries: Entries
  readonly hand?: HandPlan | undefined
}

/** What the shelf needs of whoever has the document on the sheet. */
export interface JobPort {
  readonly document: TrainDocument | undefined
  readonly entries: Entries
  readonly hand: HandPlan | undefined
  /** Name of the last edit. */
  readonly lastEdit: string
  /** Another number after every edit. */
  readonly revision: number
  /** Something is tried out on a copy: nothing else is put on the sheet meanwhile. */
  readonly trying: unknown
  /** Puts a document on the sheet as one edit of that name, which can be undone. */
  restore: (sheet: OnSheet, name: string) => unknown
  /** Puts another job on the sheet; its history starts anew. */
  adopt: (sheet: OnSheet & { readonly name: string }) => unknown
}
