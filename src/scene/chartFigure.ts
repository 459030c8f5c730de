import type { Mark } from './drawings/marks'

/** A text of a chart (px). */
export interface ChartLabel {
  readonly x: number
  readonly y: number
  readonly text: string
  readonly anchor: 'start' | 'middle' | 'end'
  readonly bold?: true
}

/** A chart as data (px): screen and paper ink its marks and set its texts. */
export interface ChartFigure {
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
  readonly labels: readonly ChartLabel[]
  /** Read to people who cannot see it. */
  readonly name: string
}

/** Most width of a letter in the labels, and what is left free beside them (px). */
export const [labelLetter, labelFree] = [8, 8]
