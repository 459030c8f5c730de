import type { Difference } from './difference'

/** Something the shelf has to say beside the sheet; one of each key at a time. */
export interface Note {
  readonly key: 'pages' | 'file' | 'trouble' | 'left' | 'removed' | 'damaged' | 'example'
  readonly title: string
  readonly says?: readonly string[]
  /** What differs, and what the two columns are. */
  readonly differs?: {
    readonly before: string
    readonly after: string
    readonly places: readonly Difference[]
  }
  readonly acts?: readonly Act[]
}

export interface Act {
  readonly label: string
  /** What pressing it does; the note is put away then. */
  readonly run: () => unknown
}
