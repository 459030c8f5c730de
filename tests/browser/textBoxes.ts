import type { Page } from '@playwright/test'

export interface TextFaults {
  readonly overlapping: string[]
  readonly small: string[]
  readonly clipped: string[]
  /** Texts that reach out of their band, or out of the page. */
  readonly outside: string[]
  readonly counted: number
}

/**
 * Looks at every piece of text on the sheet as it is laid out: pieces whose boxes reach into each
 * other by more than 1 px both ways, pieces under 14 px, pieces cut off by their own card or by anything
 * that hides what runs over its edge without letting it be scrolled to, and pieces outside their band.
 */
export const textFaults = (page: Page): Promise<TextFaults> =>
  page.evaluate(() => {
    interface Piece {
      readonly text: string
      readonly node: Node
      readonly box: Box
      /** What scrolls sideways around it, if anything does, and how much of the text that shows. */
      readonly within: Element | undefined
      readonly seen: Box
    }
    interface Box {
      readonly left: number
      readonly right: number
      readonly top: number
      readonly bottom: number
    }
    const scrollerOf = (parent: Element): Element | undefined => {
      for (let at: Element | null = parent; at; at = at.parentElement)
        if (at.scrollWidth > at.clientWidth && /auto|scroll/.test(getComputedStyle(at).overflowX))
          return at
      return undefined
    }
    /** For screen readers alone, or shown by the keyboard alone. */
    const isClipped = (parent: Element): boolean => {
      for (let at: Element | null = parent; at; at = at.parentElement)
        if (getComputedStyle(at).clipPath === 'inset(50%)') return true
      return false
    }
    const pieces: Piece[] = []
    const small: string[] = []
    const clipped: string[] = []
    const outside: string[] = []
    /** True where an element around a text hides a part of it for good. */
    const isCut = (parent: Element, box: DOMRect): boolean => {
      for (let at: Element | null = parent; at; at = at.parentElement) {
        const { overflowX, overflowY, textOverflow } = getComputedStyle(at)
        const edge = at.getBoundingClientRect()
        const over = [box.right - edge.right, edge.left - box.left].some((by) => by > 1)
        const below = [box.bottom - edge.bottom, edge.top - box.top].some((by) => by > 2)
        if (textOverflow === 'ellipsis' && at.scrollWidth > at.clientWidth) return true
        if (/hidden|clip/.test(overflowX) && over) return true
        if (/hidden|clip/.test(overflowY) && below) return true
        if (/auto|scroll/.test(overflowX)) return false
      }
      return false
    }
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const text = node.textContent?.trim() ?? ''
      const parent = node.parentElement
      if (text === '' || !parent) continue
      // a drawer lies over the sheet by design; unseen words are for screen readers
      if (parent.closest('.unseen, .drawer-pull, script, style, option')) continue
      if (!parent.checkVisibility({ visibilityProperty: true })) continue
      if (isClipped(parent)) continue
      const size = parseFloat(getComputedStyle(parent).fontSize)
      if (size < 14) small.push(`${size} px: ${text}`)
      const within = scrollerOf(parent)
      const range = document.createRange()
      range.selectNodeContents(node)
      for (const box of range.getClientRects())
        if (box.width > 0.5 && box.height > 0.5) {
          // a client box is as tall as the font's tallest accents; letters stay within one em
          const middle = (box.top + box.bottom) / 2
          const [top, bottom] = [middle - size / 2, middle + size / 2]
          const whole = { left: box.left, right: box.right, top, bottom }
          const port = within?.getBoundingClientRect()
          const seen = port
            ? {
                ...whole,
                left: Math.max(box.left, port.left),
                right: Math.min(box.right, port.right),
              }
            : whole
          pieces.push({ text, node, box: whole, within, seen })
        }
      const card = parent.closest('.foot, .coupling, .heads li, .holds li, .band-name')
      const whole = range.getBoundingClientRect()
      const frame = card?.getBoundingClientRect()
      if (frame && (whole.right > frame.right + 1 || whole.left < frame.left - 1))
        clipped.push(text)
      else if (isCut(parent, whole)) clipped.push(text)
      const band = parent.closest('.band, .figures, .head, .key')?.getBoundingClientRect()
      if (
        band &&
        (whole.right > band.right + 1 ||
          whole.left < band.left - 1 ||
          whole.bottom > band.bottom + 3 ||
          whole.top < band.top - 3)
      )
        outside.push(text)
    }
    const overlapping: string[] = []
    pieces.forEach((a, i) => {
      for (const b of pieces.slice(i + 1)) {
        if (a.node === b.node) continue
        // what scrolls together is laid out together; of the rest, what is seen counts
        const [one, other] = a.within === b.within ? [a.box, b.box] : [a.seen, b.seen]
        const across = Math.min(one.right, other.right) - Math.max(one.left, other.left)
        const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
        if (across > 1 && down > 1) overlapping.push(`"${a.text}" and "${b.text}"`)
      }
    })
    return { overlapping, small, clipped, outside, counted: pieces.length }
  })
