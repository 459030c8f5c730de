/** Text of an element as it reads: its spaces, tabs and ends of lines are one space each. */
export const textOf = (element: Element): string => element.textContent.replace(/\s+/g, ' ').trim()

/** What a screen reader calls an element: what labels it, else its own text. */
export function nameOf(element: Element): string {
  const by = element.getAttribute('aria-labelledby')
  if (by !== null)
    return by
      .split(' ')
      .map((id) => textOf(document.getElementById(id) ?? element))
      .join(' ')
  const said = element.getAttribute('aria-label')
  if (said !== null) return said.replace(/\s+/g, ' ').trim()
  if (element.matches('input, select, textarea'))
    return labelsOf(element).map(textOf).join(' ') || (element.getAttribute('title') ?? '')
  return textOf(element)
}

/** The labels around an element or pointing at it. */
export function labelsOf(element: Element): Element[] {
  const around = element.closest('label')
  const { id } = element
  const at = [...document.querySelectorAll('label[for]')].filter(
    (label) => id !== '' && label.getAttribute('for') === id,
  )
  return around ? [around, ...at] : at
}

/** Elements that have a role by what they are. */
const natural: Readonly<Record<string, string>> = {
  alert: '[role=alert]',
  button: 'button, summary, [role=button]',
  checkbox: 'input[type=checkbox]',
  heading: 'h1, h2, h3, h4',
  listitem: 'li',
  radio: 'input[type=radio]',
  slider: 'input[type=range], [role=slider]',
  status: '[role=status]',
  textbox: 'input[type=text], input:not([type]), textarea',
}

/** A selector of all elements with a role. */
export function withRole(role: string): string {
  const selector = natural[role]
  if (selector === undefined) throw new Error(`no role is known as ${role}`)
  return selector
}

/** True where a reader of the page can come to an element: nothing around it is folded or hidden. */
export function isShown(element: Element): boolean {
  if (!element.isConnected) return false
  for (let at: Element | null = element; at; at = at.parentElement) {
    if (at.hasAttribute('hidden')) return false
    if (at instanceof HTMLElement && at.style.display === 'none') return false
    const fold: Element | null = at.parentElement
    if (fold?.matches('details:not([open])') === true && !at.matches('summary')) return false
  }
  return true
}

/** Whether a text is what was asked for: a pattern, the whole of it, or a part in whatever letters. */
export function isCalled(text: string, asked: string | RegExp, exact = false): boolean {
  if (typeof asked !== 'string') return asked.test(text)
  return exact ? text === asked : text.toLowerCase().includes(asked.toLowerCase())
}
