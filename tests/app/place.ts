import { vi } from 'vitest'
import { isCalled, isShown, labelsOf, nameOf, textOf, withRole } from './names'
import { press, typeText } from './keys'

/** How long (ms) anything on the page is waited for. */
export const patience = 60_000

interface Called {
  readonly name?: string | RegExp
  readonly exact?: boolean
  /** Of a heading. */
  readonly level?: number
}
interface Having {
  readonly hasText?: string | RegExp
  readonly hasNotText?: string | RegExp
}

/** A place on the mounted sheet, looked up anew whenever it is used; what is done at it waits until it is there. */
export class Place {
  readonly words: string
  private readonly find: () => Element[]

  constructor(find: () => Element[], words: string) {
    this.find = find
    this.words = words
  }

  all(): Element[] {
    return this.find()
  }
  count(): number {
    return this.find().length
  }
  within(words: string, pick: (all: Element[]) => Element[]): Place {
    return new Place(() => pick(this.find()), `${this.words} ${words}`)
  }

  locator(selector: string, having: Having = {}): Place {
    return this.within(selector, (all) => [
      ...new Set(all.flatMap((one) => [...one.querySelectorAll(selector)])),
    ]).filter(having)
  }
  filter({ hasText, hasNotText }: Having): Place {
    return this.within('', (all) =>
      all.filter(
        (one) =>
          (hasText === undefined || isCalled(textOf(one), hasText)) &&
          (hasNotText === undefined || !isCalled(textOf(one), hasNotText)),
      ),
    )
  }
  nth(n: number): Place {
    return this.within(`(${n})`, (all) => all.slice(n, n === -1 ? undefined : n + 1))
  }
  first(): Place {
    return this.nth(0)
  }
  last(): Place {
    return this.nth(-1)
  }
  getByRole(role: string, { name, level, exact = false }: Called = {}): Place {
    const inside = this.locator(level === undefined ? withRole(role) : `h${level}`)
    return inside.within(name === undefined ? '' : `called ${String(name)}`, (all) =>
      all.filter(
        (one) =>
          isShown(one) &&
          one.closest('[aria-hidden=true]') === null &&
          (name === undefined || isCalled(nameOf(one), name, exact)),
      ),
    )
  }
  getByLabel(label: string | RegExp, { exact = false }: Called = {}): Place {
    return this.locator('input, select, textarea, button, [aria-label]').within(
      `labelled ${String(label)}`,
      (all) =>
        all.filter((one) => {
          const said = one.getAttribute('aria-label')
          const texts = said === null ? labelsOf(one).map(textOf) : [said]
          return texts.some((text) => isCalled(text, label, exact))
        }),
    )
  }
  /** The innermost elements with a text. */
  getByText(text: string | RegExp, { exact = false }: Called = {}): Place {
    return this.locator('*').within(`saying ${String(text)}`, (all) => {
      const said = all.filter((one) => isCalled(textOf(one), text, exact))
      return said.filter((one) => !said.some((other) => other !== one && one.contains(other)))
    })
  }

  /** The one element there; waits until there is one, and more than one is a fault. */
  async one(): Promise<HTMLElement> {
    await vi
      .waitUntil(() => this.count() > 0, { timeout: patience, interval: 10 })
      .catch(() => {
        throw new Error(`there is no ${this.words}`)
      })
    const [element, more] = this.find()
    if (more) throw new Error(`there is more than one ${this.words}`)
    return element as HTMLElement
  }
  async textContent(): Promise<string> {
    return textOf(await this.one())
  }
  allTextContents(): string[] {
    return this.find().map(textOf)
  }
  /** Whether it may be pressed now. */
  async isEnabled(): Promise<boolean> {
    return !(await this.one()).hasAttribute('disabled')
  }
  async inputValue(): Promise<string> {
    return ((await this.one()) as HTMLInputElement).value
  }

  async focus(): Promise<void> {
    ;(await this.one()).focus()
    await settle()
  }
  async blur(): Promise<void> {
    ;(await this.one()).blur()
    await settle()
  }
  /** A press by mouse: what is disabled is waited for. */
  async click(): Promise<void> {
    const element = await this.one()
    await vi.waitUntil(() => !element.hasAttribute('disabled'), { timeout: patience })
    if (!isShown(element)) throw new Error(`${this.words} is folded away`)
    if (element.matches('button, input, select, textarea, [tabindex]')) element.focus()
    element.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }))
    await settle()
  }
  async check(): Promise<void> {
    if (!((await this.one()) as HTMLInputElement).checked) await this.click()
  }
  async fill(text: string): Promise<void> {
    const input = (await this.one()) as HTMLInputElement
    if (!isShown(input)) throw new Error(`${this.words} is folded away`)
    input.focus()
    input.value = text
    input.dispatchEvent(new Event('input', { bubbles: true }))
    await settle()
  }
  /** Chooses an entry of a list by its value. */
  async selectOption(value: string): Promise<void> {
    const list = (await this.one()) as HTMLSelectElement
    if (![...list.options].some((option) => option.value === value))
      throw new Error(`${this.words} has no ${value}`)
    list.value = value
    list.dispatchEvent(new Event('input', { bubbles: true }))
    list.dispatchEvent(new Event('change', { bubbles: true }))
    await settle()
  }
  async press(key: string): Promise<void> {
    await this.focus()
    await press(key)
  }
  /** Types into the place, in place of what is chosen there. */
  async type(text: string): Promise<void> {
    await this.focus()
    await typeText(text)
  }
}

/** Lets what was done be drawn. */
export const settle = (): Promise<void> => new Promise((done) => setTimeout(done, 0))
