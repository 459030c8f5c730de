/** A space at which no line is broken. */
export const firm = '\u00a0'

/** A text whose numbers keep their units beside them, wherever its lines are broken. */
export const withUnitsKept = (text: string): string =>
  text.replace(/(\d) (µm|mm|mil|mrad|in|%|o'clock)/g, `$1${firm}$2`)
