const settle = (): Promise<void> => new Promise((done) => setTimeout(done, 0))

/**
 * A key pressed where the keyboard is, "Control+z" or "ArrowRight": what the sheet does with it, and what a
 * browser does where nothing else has: Enter and Space press a button. Tab is for a real browser.
 */
export async function press(keys: string): Promise<void> {
  const parts = keys.split('+')
  const named = parts.at(-1) ?? ''
  const key = named === 'Space' ? ' ' : named
  const element = document.activeElement ?? document.body
  const event = new KeyboardEvent('keydown', {
    key,
    ctrlKey: parts.includes('Control'),
    shiftKey: parts.includes('Shift'),
    bubbles: true,
    cancelable: true,
  })
  const free = element.dispatchEvent(event)
  if (free && presses(element, key))
    element.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }))
  if (free) moveCaret(element, key)
  // Enter in a field sends its form
  if (free && key === 'Enter' && element.matches('form input[type=text], form input:not([type])'))
    element.closest('form')?.requestSubmit()
  await settle()
}

function presses(element: Element, key: string): boolean {
  if (element.matches('button, summary')) return key === 'Enter' || key === ' '
  return element.matches('input[type=checkbox], input[type=radio]') && key === ' '
}

/** What a browser does with the caret of a line of text: an arrow takes it to one end of what is chosen, or on. */
function moveCaret(element: Element, key: string): void {
  if (!(element instanceof HTMLInputElement) || element.type !== 'text') return
  const [from, to] = [element.selectionStart ?? 0, element.selectionEnd ?? 0]
  const end = element.value.length
  const places: Record<string, number> = {
    ArrowLeft: from === to ? Math.max(0, from - 1) : from,
    ArrowRight: from === to ? Math.min(end, to + 1) : to,
    ArrowUp: 0,
    Home: 0,
    ArrowDown: end,
    End: end,
  }
  const at = places[key]
  if (at !== undefined) element.setSelectionRange(at, at)
}

/** A press by mouse or finger, as a browser makes it: what nothing holds back gets the keyboard, and a caret at its end. */
export async function point(element: HTMLElement): Promise<void> {
  const event = new MouseEvent('mousedown', { bubbles: true, cancelable: true, button: 0 })
  if (element.dispatchEvent(event)) {
    element.focus()
    if (element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement)
      element.setSelectionRange(element.value.length, element.value.length)
  }
  for (const kind of ['mouseup', 'click'])
    element.dispatchEvent(new MouseEvent(kind, { bubbles: true, cancelable: true }))
  await settle()
}

/** Letters typed where the keyboard is, one by one, the first in place of what is chosen there. */
export async function typeText(text: string): Promise<void> {
  for (const letter of text) {
    const element = document.activeElement
    if (!(element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement))
      throw new Error('the keyboard is in no field')
    const event = new KeyboardEvent('keydown', { key: letter, bubbles: true, cancelable: true })
    if (!element.dispatchEvent(event)) continue
    const { value } = element
    const [from, to] = [
      element.selectionStart ?? value.length,
      element.selectionEnd ?? value.length,
    ]
    element.value = value.slice(0, from) + letter + value.slice(to)
    element.setSelectionRange(from + 1, from + 1)
    element.dispatchEvent(new Event('input', { bubbles: true }))
    await settle()
  }
}
