import type { FootDocument } from './schema'

/** Paths of all figures of a foot in the train file: "id", "pack.now", "free.shim". */
export type FootPath = Leaf<FootDocument>
type Leaf<T> = {
  [K in keyof T & string]-?: NonNullable<T[K]> extends
    string | number | boolean | readonly unknown[]
    ? K
    : `${K}.${Leaf<NonNullable<T[K]>>}`
}[keyof T & string]

/** Words that depend on the document: a fine value without its sign ("0.3 mm"), the side that a y is toward. */
export interface Say {
  readonly fine: (value: number) => string
  readonly toward: (y: number) => string
}

/** How a figure is entered on the sheet. `foot` is "motor foot 1". */
export type FootCell =
  | {
      readonly is: 'number'
      readonly label: (foot: string) => string
      /** Whether it may not be left out, always or where its group is given. */
      readonly needed?: 'always' | 'in its group'
      /** What is taken where nothing is given. */
      readonly instead?: string
      /** The value in words, its sign included. */
      readonly says?: (value: number, say: Say, foot: string) => string
    }
  | { readonly is: 'tick'; readonly label: (foot: string) => string; readonly instead: boolean }
  /** The name of the row. */
  | { readonly is: 'text'; readonly label: (foot: string) => string }
  | { readonly is: 'note'; readonly label: (foot: string) => string }
  | { readonly is: 'corners' }
  /** Thicknesses in one line. */
  | { readonly is: 'plates'; readonly label: (foot: string) => string }

/**
 * What work at a foot does to one of its figures: nothing; its shim, slide or move along is added or taken
 * off, no lower than `least`, from `from` where its group is given without it; it is to be read anew once
 * the soft feet are shimmed; or it is no longer known once the foot is shimmed.
 */
type WorkDoes =
  | 'nothing'
  | 'read anew'
  | 'lost with a shim'
  | {
      readonly goesWith: 'shim' | 'side' | 'axial'
      readonly times: 1 | -1
      readonly least?: 0
      readonly from?: 0
    }

export interface FootField {
  /** What it is called in tables that are pasted and exported, and in messages. */
  readonly heading: string
  /** What else a pasted table may call it; left out where it is no column of such a table. */
  readonly names?: readonly string[]
  /** What it is called where a place of the file is named, if not by its heading. */
  readonly words?: string
  /**
   * Its heading on the sheet, under that of its group; `then` a column that shows the group as a picture;
   * `more`: shown where more columns are asked for.
   */
  readonly column: {
    readonly group?: string
    readonly head: string
    readonly then?: 'picture'
    readonly more?: true
  }
  readonly cell: FootCell
  /** Whether it is no number below 0. */
  readonly least?: 0
  /** What it counts as among what is usually the same under all feet of a machine. */
  readonly alike?: 'pack' | 'lift' | 'clearance' | 'keys'
  readonly work: WorkDoes
}
