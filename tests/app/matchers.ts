import { expect } from 'vitest'
import { isShown, nameOf, textOf } from './names'
import { patience, type Place } from './place'

type Text = string | RegExp

interface PlaceMatchers<Result> {
  /** The whole text; a list: of each element there, in order. Waits for it, as all of these do. */
  toHaveText: (text: Text | readonly Text[]) => Promise<Result>
  toContainText: (text: Text) => Promise<Result>
  toHaveCount: (count: number) => Promise<Result>
  toHaveValue: (value: Text) => Promise<Result>
  toHaveAttribute: (name: string, value: Text) => Promise<Result>
  toHaveClass: (name: RegExp) => Promise<Result>
  toHaveName: (name: Text) => Promise<Result>
  toBeShown: () => Promise<Result>
  toBeChecked: () => Promise<Result>
  toBeDisabled: () => Promise<Result>
  toBeFocused: () => Promise<Result>
}

declare module 'vitest' {
  // eslint-disable-next-line @typescript-eslint/no-explicit-any, @typescript-eslint/no-empty-object-type -- it widens an interface of these very parameters
  interface Matchers<T = any> extends PlaceMatchers<T> {}
}

const whole = (text: string, asked: Text): boolean =>
  typeof asked === 'string' ? text === asked.replace(/\s+/g, ' ').trim() : asked.test(text)
const part = (text: string, asked: Text): boolean =>
  typeof asked === 'string' ? text.includes(asked.replace(/\s+/g, ' ')) : asked.test(text)

interface Asking {
  readonly isNot?: boolean
}
interface Seen {
  readonly pass: boolean
  /** What is there instead. */
  readonly seen: unknown
}

/** Looks again and again until it is as asked for, or time is up; planning goes on in this thread between the looks. */
async function until(asking: Asking, place: Place, asked: unknown, look: () => Seen) {
  const end = Date.now() + patience
  const never = asking.isNot === true
  let began = performance.now()
  let now = look()
  while (now.pass === never && Date.now() < end) {
    const took = performance.now() - began
    await new Promise((later) => setTimeout(later, Math.max(10, 3 * took)))
    began = performance.now()
    now = look()
  }
  const message = () =>
    `${place.words}: ${never ? 'not ' : ''}${String(asked)} was asked for, and there is ${JSON.stringify(now.seen)}`
  return { pass: now.pass, message, actual: now.seen, expected: asked }
}

/** What the page itself says is wrong, which is often why something is not there. */
const faultsSaid = (): string => {
  const said = [...document.querySelectorAll('[role=alert]')]
    .map(textOf)
    .filter((text) => text !== '')
  return said.length === 0 ? '' : `; the page says: ${said.join(' | ')}`
}

/** Looks at the one element of a place; where there is none, or more, it is not as asked for either way. */
const ofOne =
  <Asked extends readonly unknown[]>(look: (element: HTMLElement, ...asked: Asked) => Seen) =>
  (asking: Asking, place: Place, ...asked: Asked) =>
    until(asking, place, asked.join(' '), () => {
      const [element, more] = place.all()
      if (!element || more)
        return { pass: asking.isNot === true, seen: `${place.count()} of them${faultsSaid()}` }
      return look(element as HTMLElement, ...asked)
    })

const told = (seen: string, pass: boolean): Seen => ({ seen, pass })
const looks = {
  toContainText: ofOne((one, text: Text) => told(textOf(one), part(textOf(one), text))),
  toHaveValue: ofOne((one, value: Text) => {
    const now = (one as HTMLInputElement).value
    return told(now, whole(now, value))
  }),
  toHaveAttribute: ofOne((one, name: string, value: Text) => {
    const now = one.getAttribute(name)
    return told(now ?? 'none', now !== null && whole(now, value))
  }),
  toHaveClass: ofOne((one, name: RegExp) => told(one.className, name.test(one.className))),
  toHaveName: ofOne((one, name: Text) => told(nameOf(one), whole(nameOf(one), name))),
  toBeShown: ofOne((one) => told('folded away', isShown(one))),
  toBeChecked: ofOne((one) => told('', (one as HTMLInputElement).checked)),
  toBeDisabled: ofOne((one) => told('', one.hasAttribute('disabled'))),
  toBeFocused: ofOne((one) =>
    told(nameOf(document.activeElement ?? document.body), document.activeElement === one),
  ),
}

const matchers = Object.fromEntries(
  Object.entries(looks).map(([name, look]) => [
    name,
    function (this: Asking, place: Place, ...asked: never[]) {
      return (look as (asking: Asking, place: Place, ...asked: never[]) => unknown)(
        this,
        place,
        ...asked,
      )
    },
  ]),
) as unknown as Parameters<typeof expect.extend>[0]

expect.extend({
  ...matchers,
  toHaveText(this: Asking, place: Place, asked: Text | readonly Text[]) {
    if (!Array.isArray(asked))
      return ofOne((one, text: Text) => told(textOf(one), whole(textOf(one), text)))(
        this,
        place,
        asked as Text,
      )
    const texts = asked as readonly Text[]
    return until(this, place, texts.join(' | '), () => {
      const seen = place.allTextContents()
      const pass =
        seen.length === texts.length && texts.every((text, i) => whole(seen[i] ?? '', text))
      return { pass, seen }
    })
  },
  toHaveCount(this: Asking, place: Place, count: number) {
    return until(this, place, count, () => ({
      pass: place.count() === count,
      seen: place.count(),
    }))
  },
})
