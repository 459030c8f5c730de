import type { Paper, PaperSize, PrintFor } from '../paper/page'

/** What is to be laid out for print. */
export interface PaperRequest {
  readonly document: unknown
  readonly size: PaperSize
  readonly print: PrintFor
  readonly date: string
  /** The solver's program, where it is compiled already. */
  readonly solver?: WebAssembly.Module | undefined
}

export type PaperReply =
  | { readonly kind: 'paper'; readonly paper: Paper }
  | { readonly kind: 'none'; readonly why: string }
