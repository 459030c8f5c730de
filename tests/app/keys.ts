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
  // Enter in a field sends its form
  if (free && key === 'Enter' && element.matches('form input[type=text], form input:not([type])'))
    element.closest('form')?.requestSubmit()
  await settle()
}

function presses(element: Element, key: string): boolean {
  if (element.matches('button, summary')) return key === 'Enter' || key === ' '
  return element.matches('input[type=checkbox], input[type=radio]') && key === ' '
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
