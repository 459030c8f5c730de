import type { Page } from '@playwright/test'

/** Letters of one line that an eye still finds its way back from. */
const most = 90

/** Every line of text on the page, as it is laid out, that is longer than an eye follows; with its count of letters. */
export const longLines = (page: Page): Promise<string[]> =>
  page.evaluate((limit) => {
    const blockOf = (parent: Element): Element => {
      let at = parent
      while (at.parentElement && getComputedStyle(at).display === 'inline') at = at.parentElement
      return at
    }
    const lines = new Map<Element, Map<number, string[]>>()
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement
      const text = node.textContent ?? ''
      if (!parent || text.trim() === '') continue
      if (parent.closest('.unseen, script, style, option, textarea, svg')) continue
      if (!parent.checkVisibility({ visibilityProperty: true })) continue
      const block = blockOf(parent)
      const own = lines.get(block) ?? new Map<number, string[]>()
      lines.set(block, own)
      for (const { 0: word, index } of text.matchAll(/\S+/g)) {
        const range = document.createRange()
        range.setStart(node, index)
        range.setEnd(node, index + word.length)
        const box = range.getClientRects()[0]
        if (!box || box.width < 0.5) continue
        // letters of two sizes on one line have the same foot, to a few px
        const at = Math.round(box.bottom / 6)
        own.set(at, [...(own.get(at) ?? []), word])
      }
    }
    return [...lines.values()].flatMap((own) =>
      [...own.values()].flatMap((words) => {
        const line = words.join(' ')
        return line.length > limit ? [`${line.length}: ${line}`] : []
      }),
    )
  }, most)
