/** Where a machine's drawing has to fit, in px; y grows down the page. */
export interface DrawingFrame {
  /** Casing, left and right end. */
  readonly l: number
  readonly r: number
  /** Heights of the shaft axis at the left and at the right end. */
  readonly axis: number
  readonly axisRight: number
  /** The plane of the feet. */
  readonly foot: number
  /** Half the usual height of a casing. */
  readonly half: number
  /** Places of the feet. */
  readonly feet: readonly number[]
  /** True at an end that no coupling joins. */
  readonly open: { readonly left: boolean; readonly right: boolean }
}
