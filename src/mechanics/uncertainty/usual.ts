import type { Micrometres, Millimetres } from '../units'
import type { SureSettings } from '../train'

/**
 * Standard uncertainties (one sigma) where the train file gives none. Common practice, no source; readings, offsets and
 * slopes have theirs at the door, since they weigh the readings too.
 */
export const usualU: {
  /** Sag of a bracket that was entered, and of one that was not, by what the dial reads. */
  readonly sag: Readonly<
    Record<
      'rim' | 'face' | 'spool',
      { readonly entered: Micrometres; readonly missing: Micrometres }
    >
  >
  readonly at: Millimetres
  readonly diameter: Millimetres
  /** Parts of a growth value: as given, and where temperatures give it; beside them what even a small one has. */
  readonly growthPart: number
  readonly heatPart: number
  readonly growthLeast: Micrometres
  /** Rise and side of a machine whose growth is not entered, at its first and last row of feet. */
  readonly growthMissing: Micrometres
  readonly shim: Micrometres
  readonly slide: Micrometres
  readonly foot: Millimetres
  readonly gap: Millimetres
  readonly bolt: Micrometres
} = {
  sag: {
    rim: { entered: 10, missing: 25 },
    face: { entered: 3, missing: 5 },
    spool: { entered: 3, missing: 5 },
  },
  at: 1,
  diameter: 1,
  growthPart: 0.125,
  heatPart: 0.2,
  growthLeast: 10,
  growthMissing: 20,
  shim: 10,
  slide: 20,
  foot: 2,
  gap: 0.1,
  bolt: 200,
}

/** Part of the variance of a growth value that all points and states of a machine share in one direction. */
export const growthShared = 0.8

/** How unsure the work is: shims as put in, slides as done, places of feet along the train. */
export interface WorkDoubt {
  readonly shim: Micrometres
  readonly slide: Micrometres
  readonly foot: Millimetres
}

/** The doubt of the work as the file has it, usual values in place of what it leaves out. */
export const workDoubtOf = ({
  shim = usualU.shim,
  slide = usualU.slide,
  foot = usualU.foot,
}: Partial<SureSettings> = {}): WorkDoubt => ({ shim, slide, foot })
