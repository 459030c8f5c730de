/** Where a text stops being JSON: line and column from 1, and what stands there. */
export interface JsonFault {
  readonly line: number
  readonly column: number
  readonly why: string
}

const literals = ['true', 'false', 'null']
const numberShape = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
// eslint-disable-next-line no-control-regex -- JSON forbids bare control characters in texts
const stringShape = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[\da-fA-F]{4}))*"/y

/** Finds the first place where a text is no JSON; undefined for a text that is. */
export function jsonFault(text: string): JsonFault | undefined {
  let at = 0
  const skip = () => {
    while (at < text.length && ' \t\n\r'.includes(text.charAt(at))) at++
  }
  const matched = (shape: RegExp): boolean => {
    shape.lastIndex = at
    const found = shape.exec(text)
    if (!found) return false
    at += found[0].length
    return true
  }
  const wanted = (what: string) => new Fault(at, `${what} was expected, but ${standing(text, at)}`)
  const take = (sign: string, what: string) => {
    skip()
    if (text.charAt(at) !== sign) throw wanted(what)
    at++
  }
  /** Entries between brackets, parted by commas. */
  const list = (close: string, entry: () => void, closing: string) => {
    at++
    skip()
    if (text.charAt(at) === close) {
      at++
      return
    }
    for (;;) {
      entry()
      skip()
      if (text.charAt(at) === close) {
        at++
        return
      }
      take(',', `a comma or ${closing}`)
    }
  }
  const member = () => {
    skip()
    if (!matched(stringShape)) throw wanted('a field name in double quotes')
    take(':', 'a colon after the field name')
    value()
  }
  const value = () => {
    skip()
    const first = text.charAt(at)
    if (first === '{') list('}', member, 'a closing brace')
    else if (first === '[') list(']', value, 'a closing bracket')
    else if (first === '"') {
      if (!matched(stringShape))
        throw new Fault(at, 'a text that starts here is not closed on its line')
    } else if (first === '-' || /\d/.test(first)) {
      if (!matched(numberShape)) throw wanted('a number')
    } else {
      const literal = literals.find((word) => text.startsWith(word, at))
      if (literal === undefined) throw wanted('a value')
      at += literal.length
    }
  }
  try {
    value()
    skip()
    if (at < text.length) throw wanted('the end of the document')
    return undefined
  } catch (fault) {
    // Nested deeper than the stack: the reader gave up as well, and no place can be named.
    if (!(fault instanceof Fault)) return undefined
    const before = text.slice(0, fault.at).split('\n')
    return {
      line: before.length,
      column: (before.at(-1)?.length ?? 0) + 1,
      why: fault.message,
    }
  }
}

class Fault extends Error {
  readonly at: number
  constructor(at: number, why: string) {
    super(why)
    this.at = at
  }
}

/** Signs that a sentence cannot show as themselves. */
const signs: Record<string, string> = {
  '"': 'a quotation mark',
  '{': 'an opening brace',
  '}': 'a closing brace',
  '[': 'an opening bracket',
  ']': 'a closing bracket',
}

function standing(text: string, at: number): string {
  if (at >= text.length) return 'the text ends'
  const here = /^[^\s,:[\]{}"\\]{1,12}/.exec(text.slice(at))?.[0] ?? text.charAt(at)
  return `${signs[here] ?? `“${here}”`} stands there`
}
