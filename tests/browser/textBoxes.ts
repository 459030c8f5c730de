import type { Page } from '@playwright/test'

export interface TextFaults {
  readonly overlapping: string[]
  readonly small: string[]
  readonly clipped: string[]
  readonly counted: number
}

/**
 * Looks at every piece of text on the sheet as it is laid out: pieces whose boxes reach into each
 * other by more than 1 px both ways, pieces under 12 px, and pieces cut off by their own card.
 */
export const textFaults = (page: Page): Promise<TextFaults> =>
  page.evaluate(() => {
    interface Piece {
      readonly text: string
      readonly node: Node
      readonly box: { left: number; right: number; top: number; bottom: number }
    }
    const pieces: Piece[] = []
    const small: string[] = []
    const clipped: string[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const text = node.textContent?.trim() ?? ''
      const parent = node.parentElement
      if (text === '' || !parent) continue
      // a drawer lies over the sheet by design; unseen words are for screen readers
      if (parent.closest('.unseen, .drawer-pull, script, style, option')) continue
      if (!parent.checkVisibility({ visibilityProperty: true })) continue
      if (parent.closest('.pick span') && getComputedStyle(parent).position === 'absolute') continue
      const size = parseFloat(getComputedStyle(parent).fontSize)
      if (size < 12) small.push(`${size} px: ${text}`)
      const range = document.createRange()
      range.selectNodeContents(node)
      for (const box of range.getClientRects())
        if (box.width > 0.5 && box.height > 0.5) {
          // a client box is as tall as the font's tallest accents; letters stay within one em
          const middle = (box.top + box.bottom) / 2
          const [top, bottom] = [middle - size / 2, middle + size / 2]
          pieces.push({ text, node, box: { left: box.left, right: box.right, top, bottom } })
        }
      const card = parent.closest('.foot, .coupling, .heads li, .holds li, .band-name')
      const whole = range.getBoundingClientRect()
      const frame = card?.getBoundingClientRect()
      if (frame && (whole.right > frame.right + 1 || whole.left < frame.left - 1))
        clipped.push(text)
    }
    const overlapping: string[] = []
    pieces.forEach((a, i) => {
      for (const b of pieces.slice(i + 1)) {
        if (a.node === b.node) continue
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        if (across > 1 && down > 1) overlapping.push(`"${a.text}" and "${b.text}"`)
      }
    })
    return { overlapping, small, clipped, counted: pieces.length }
  })
