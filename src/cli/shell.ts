import type { Readable, Writable } from 'node:stream'

/** Where a command reads from and prints to. */
export interface Shell {
  readonly folder: string
  readonly input: Readable
  /** Standard output itself, for answers that come one after the other. */
  readonly output: Writable
  readonly print: (text: string) => void
  readonly complain: (text: string) => void
  /** How far the work is, over what was told before; only where somebody sees it. */
  readonly progress?: ((text: string) => void) | undefined
}

/**
 * Writes one of many answers and waits until it has gone out, so that no more of them stand in memory than a slow reader
 * has taken.
 * @returns false where nobody takes it any more
 */
export const send = ({ output }: Shell, text: string): Promise<boolean> =>
  new Promise((sent) => {
    if (output.destroyed) sent(false)
    else
      output.write(text, (error) => {
        sent(!error)
      })
  })
