/** Sizes of print (points) and distances (mm) that the style sheet and the page cutter share. */
export const print = {
  title: 15,
  plain: 10.5,
  lead: 15,
  strong: 12,
  small: 10,
  sum: 10.5,
  heading: 12,
  /** On a foot's card: what to do, which way, which foot. */
  act: 16,
  /** The same on a narrow card. */
  actNarrow: 16,
  /** Beside the words of a wide card: the drawing, and what is left at the bolt under it (mm). */
  drawn: 33,
  toward: 12,
  foot: 14,
  gap: 2.2,
  /** Height of a line over the size of its letters. */
  leading: 1.22,
  /** The same of few short lines under one another. */
  tight: 1.15,
  cell: { across: 1.4, along: 0.75 },
  tallRow: 9,
  /** A line to write on. */
  blank: 9,
  /** Least height of a foot's card. */
  card: 40,
  /** A box on it to write in. */
  actual: 9,
  /** Beside a step: its number, and boxes to sign it in (mm). */
  signWidth: 20,
} as const

/** With more cards side by side, each is narrow. */
export const wideCards = 2
