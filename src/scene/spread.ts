/** A card that wants its centre at `want` and is `width` wide (px). */
export interface Wanting {
  readonly want: number
  readonly width: number
}

/**
 * Places cards side by side in the order given, each as near to where it wants to be as the others
 * allow (least squares of the shifts), `gap` apart, within `[low, high]`. Returns their left edges.
 * Cards that do not fit together run on past `high`. Isotonic regression by pooling neighbours.
 */
export function spread(
  cards: readonly Wanting[],
  gap: number,
  low: number,
  high: number,
): number[] {
  const before: number[] = []
  let run = 0
  for (const { width } of cards) {
    before.push(run)
    run += width + gap
  }
  const total = Math.max(0, run - gap)
  const blocks: { sum: number; count: number }[] = []
  cards.forEach(({ want, width }, i) => {
    blocks.push({ sum: want - width / 2 - (before[i] ?? 0), count: 1 })
    for (;;) {
      const [a, b] = [blocks.at(-2), blocks.at(-1)]
      if (!a || !b || a.sum / a.count <= b.sum / b.count) break
      blocks.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count })
    }
  })
  const most = Math.max(low, high - total)
  return blocks
    .flatMap(({ sum, count }) =>
      Array.from({ length: count }, () => Math.min(Math.max(sum / count, low), most)),
    )
    .map((start, i) => start + (before[i] ?? 0))
}
