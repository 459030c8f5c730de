/** The lines in which a piece of text stands on the screen, each with its box. */
export function screenLines(node: Text): { readonly words: string; readonly box: DOMRect }[] {
  const lines: { words: string; box: DOMRect }[] = []
  const range = document.createRange()
  for (const { index, 0: word } of node.data.matchAll(/\S+/g)) {
    range.setStart(node, index)
    range.setEnd(node, index + word.length)
    const box = range.getBoundingClientRect()
    if (box.width === 0) continue
    const last = lines.at(-1)
    if (last && Math.abs(last.box.top - box.top) < 1) {
      last.words += ` ${word}`
      last.box = new DOMRect(last.box.left, last.box.top, box.right - last.box.left, box.height)
    } else lines.push({ words: word, box })
  }
  return lines
}
