/**
 * Columns of a grid that puts cards at given places: the space before each card, then the card. The
 * i-th card stands in column 2 i + 2.
 */
export const gridColumns = (cards: readonly { readonly left: number; readonly width: number }[]) =>
  cards
    .flatMap(({ left, width }, i) => {
      const before = cards[i - 1]
      return [`${Math.max(0, left - (before ? before.left + before.width : 0))}px`, `${width}px`]
    })
    .join(' ')
