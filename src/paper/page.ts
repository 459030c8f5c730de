import type { Mark } from '../scene/drawings/marks'

/** Sheets of paper that a work sheet is laid out for. */
export type PaperSize = 'a4' | 'letter'

/** Whom a print is for: those who do the work, those who release it and keep it, or those who take it over half done. */
export const prints = ['crew', 'office', 'shift'] as const
export type PrintFor = (typeof prints)[number]
export const printNames: Record<PrintFor, string> = {
  crew: 'for the crew',
  office: 'for the office',
  shift: 'for the next shift',
}

/** A work sheet as data: what stands on which page, in the words and digits people read. */
export interface Paper {
  readonly size: PaperSize
  readonly print: PrintFor
  readonly train: string
  /** Told on every page, so that pages of two sheets cannot be mixed up; all prints of one plan share it, on any paper. */
  readonly revision: string
  /** What opens the job on a shelf, sheet and step; a page of many trains has none. */
  readonly code?: string
  /** As given; blank lines to be filled in where it is not. */
  readonly date: string
  /** At the head of every page; empty where the sheet may be worked by. */
  readonly notice: string
  readonly pages: readonly Page[]
}

export interface Page {
  readonly section: Section
  readonly title: string
  readonly blocks: readonly Block[]
}

type Section =
  | 'front'
  | 'checks'
  | 'machine'
  | 'readings'
  | 'graph'
  | 'materials'
  | 'left'
  | 'remedies'
  | 'demands'
  | 'ready'
  | 'choices'
  | 'arithmetic'
  | 'assumptions'
  | 'shift'

/** A section before it is cut into pages. */
export interface Chapter {
  readonly section: Section
  readonly title: string
  readonly blocks: readonly Block[]
  /** Wanted on one page: the page is turned before it rather than within it, where that takes no page more. */
  readonly whole?: boolean
}

export type Block =
  /** Where a chapter begins on a page that has begun already. */
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string; readonly aside?: string }
  | { readonly kind: 'text'; readonly look: TextLook; readonly text: string }
  /** Framed: what must be seen before anything is done. */
  | { readonly kind: 'box'; readonly title: string; readonly items: readonly string[] }
  | { readonly kind: 'list'; readonly look: 'dash' | 'tick'; readonly items: readonly string[] }
  | Table
  /** `leads`: drawings of what follows, never parted from it. */
  | { readonly kind: 'figures'; readonly figures: readonly Figure[]; readonly leads?: boolean }
  /** Labels with a line to write on. */
  | { readonly kind: 'blanks'; readonly labels: readonly string[]; readonly columns: number }
  /** Boxes to write in, each named inside at its top; what is known already stands in it. */
  | { readonly kind: 'boxes'; readonly boxes: readonly PaperBox[]; readonly columns: number }
  | { readonly kind: 'feet'; readonly columns: number; readonly cards: readonly PaperFootCard[] }
  | { readonly kind: 'step'; readonly step: StepCard }
  /** A code to be scanned, or typed from its groups of letters, one under the other beside it. */
  | {
      readonly kind: 'code'
      readonly figure: Figure
      readonly groups: readonly string[]
    }
  | Beside

type TextLook = 'plain' | 'lead' | 'strong' | 'small' | 'sum'

/** Stacks of blocks beside each other; an empty stack leaves its place free. */
interface Beside {
  readonly kind: 'beside'
  readonly parts: readonly {
    /** Part of the width, as a weight beside the others. */
    readonly width: number
    readonly blocks: readonly Block[]
  }[]
}

export interface Table {
  readonly kind: 'table'
  readonly columns: readonly TableColumn[]
  readonly rows: readonly (readonly Cell[])[]
  /** Rows to write in, taller than print. */
  readonly tall?: boolean
}

export interface TableColumn {
  readonly head: string
  /** Part of the width, as a weight beside the others. */
  readonly width: number
  readonly align?: 'right'
  /** Digits to be read at arm's length. */
  readonly strong?: boolean
}

/** Text, or an empty box to write in. */
type Cell = string

/** A drawing: px inside, mm on paper, 96 px to the inch, so that 1 px is drawn as 1 px. */
export interface Figure {
  /** mm */
  readonly width: number
  /** mm */
  readonly height: number
  /** Read to people who cannot see it. */
  readonly name: string
  readonly marks: readonly PaperMark[]
  /** Printed px for a px of the marks; 1 where it is not given. */
  readonly enlarged?: number
  readonly caption?: string
}

/** Marks of the scene, words among them, and marks set elsewhere. */
export type PaperMark = Mark | MarkLabel | MarkGroup

export interface MarkGroup {
  readonly kind: 'group'
  readonly x: number
  readonly y: number
  readonly marks: readonly PaperMark[]
}

export interface MarkLabel {
  readonly kind: 'label'
  readonly x: number
  readonly y: number
  readonly text: string
  /** px */
  readonly size: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly bold?: boolean
  /** On a ground of paper, so that lines behind do not cross it. */
  readonly halo?: boolean
}

/** One step of the work, with a place to sign it off. */
export interface StepCard {
  readonly id: string
  readonly number: number
  readonly words: string
  readonly breaks: readonly string[]
  /** What is opened and loosened first. */
  readonly before: readonly string[]
  readonly cautions: readonly string[]
  /** Moves of the jacks, a line each. */
  readonly lifts: readonly string[]
  readonly dials: readonly string[]
  readonly expected: readonly string[]
  /** What must be seen and agreed before the next step. */
  readonly stop?: string
  /** That it goes on over the page, and with what. */
  readonly over?: string
  /** Boxes to sign in: "done", "time", "by", with what the record has of them. */
  readonly sign: readonly string[]
}

interface PaperBox {
  readonly label: string
  /** Empty where it is to be written in. */
  readonly value: string
}

/** One foot on its machine's page: what to do there, what came of it. */
export interface PaperFootCard {
  readonly key: string
  /** Row and column as the foot lies on the map; columns from the left end. */
  readonly column: number
  readonly row: 'far' | 'near'
  readonly name: string
  readonly machine: string
  /** The steps of the order of work that move it: "steps 2 and 3"; empty where there is no order. */
  readonly steps: string
  /** Where it is: "left end"; its side where all feet of its machine stand in one row. */
  readonly place: string
  readonly figure: Figure
  /** "put in 0.36 mm", "take out 0.04 mm", "pack stays". */
  readonly shim: string
  /** "pack 3.00 mm, then 3.36 mm". */
  readonly pack: string
  readonly recipe?: string
  /** "slide 1.26 mm", "no slide". */
  readonly slide: string
  /** "toward the stairs"; empty without a slide. */
  readonly toward: string
  readonly along?: string
  readonly room: string
  readonly bound: readonly string[]
  readonly actuals: readonly string[]
}

/** Where a foot is and which steps move it, as its card says beside its name; whose it is the title of its page says. */
export const besideName = ({ place, steps }: PaperFootCard): string =>
  [place, steps].filter((part) => part !== '').join('; ')

export const label = (
  x: number,
  y: number,
  text: string,
  {
    size = 13.4,
    anchor = 'middle',
    bold = false,
    halo = false,
  }: { size?: number; anchor?: MarkLabel['anchor']; bold?: boolean; halo?: boolean } = {},
): MarkLabel => ({
  kind: 'label',
  x,
  y,
  text,
  size,
  anchor,
  ...(bold && { bold }),
  ...(halo && { halo }),
})

export const group = (x: number, y: number, marks: readonly PaperMark[]): MarkGroup => ({
  kind: 'group',
  x,
  y,
  marks,
})
