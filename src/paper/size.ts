import type { PaperSize } from './page'

/** A sheet of paper (ISO 216; ANSI/ASME Y14.1 for Letter), all in mm. */
interface Sheet {
  readonly css: string
  readonly width: number
  readonly height: number
}

export const sheets: Record<PaperSize, Sheet> = {
  a4: { css: 'A4', width: 210, height: 297 },
  letter: { css: 'letter', width: 215.9, height: 279.4 },
}

/** Margins (mm): most printers leave 5 unprinted; the left one is wide enough for punched holes. */
export const margin = { across: 12, along: 9 }

/** Width of everything printed (mm): what A4, the narrower sheet, leaves between its margins. */
export const textWidth = sheets.a4.width - 2 * margin.across

/** Width of running text of so many points (mm): lines of up to 90 characters, so that the eye finds the next one. */
export const proseWidth = (points: number): number => 12.9 * points

/** Between stacks that stand beside each other (mm). */
export const columnGap = 4

/** Height of a page's box (mm); a little short of the paper, so that no rounding makes an empty page. */
export const pageHeight = (size: PaperSize): number => sheets[size].height - 2 * margin.along - 1

/** What head and foot of a page take, with two lines of small print at the right of each (mm). */
const furniture = 23

/** Width of what stands at the right of a page's head, and what is left for its title (mm). */
export const headAside = 80
export const headTitle = textWidth - headAside - 6

/** Height left for what a page says (mm). */
export const roomHeight = (size: PaperSize): number => pageHeight(size) - furniture

/** CSS px in a mm: 96 to the inch. */
export const pxPerMm = 96 / 25.4

/** Length of the bar at the foot of every page (mm). */
export const barLength = 100
