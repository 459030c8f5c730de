/** A chance with the interval that its draws leave it; parts of 1. */
interface Told {
  readonly chance: number
  readonly low: number
  readonly high: number
}

/**
 * A chance as people read it: whole percents, or steps of five or ten where the draws allow no more, and never 0 or 100.
 */
export function chanceText({ chance, low, high }: Told): string {
  const half = (high - low) / 2
  const step = half <= 0.015 ? 1 : half <= 0.04 ? 5 : 10
  const told = Math.round((chance * 100) / step) * step
  if (told <= 0) return `under ${step} %`
  if (told >= 100) return `over ${100 - step} %`
  return `${told} %`
}

/** A chance that was asked for, as it was entered, which is never all. */
export const percentAsked = (chance: number): string => `${Number((chance * 100).toPrecision(8))} %`

/** Another chance of the same draws, in the same steps. */
export const likeChance = (chance: number, { low, high }: Pick<Told, 'low' | 'high'>): string =>
  chanceText({ chance, low: chance - (high - low) / 2, high: chance + (high - low) / 2 })
