import { harmlessLine } from '../language/harmless'
import { mostLevels, tooDeep } from './depth'
import { placeOf, shown, type Refusal } from './refusal'

/** Where a text is no document that is read: line and column from 1, and what stands there. */
export interface JsonFault {
  readonly line: number
  readonly column: number
  readonly why: string
}

/** A field that stands a second time in one group, with where both begin in the text. */
interface Twin {
  readonly at: string
  readonly key: string
  readonly first: number
  readonly second: number
}

const literals = ['true', 'false', 'null']
const numberShape = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const blank = /[ \t\n\r]*/y
const escape = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y

/**
 * Looks through a text before it is parsed: the first place where it is no JSON or is nested too deeply, and, where
 * there is none, every field that stands twice in one group, of which a parser would silently take the last.
 */
export function jsonFault(text: string): { readonly fault?: JsonFault; readonly twins: Refusal[] } {
  const twins: Twin[] = []
  const path: (string | number)[] = []
  let at = 0
  const skip = () => {
    blank.lastIndex = at
    blank.test(text)
    at = blank.lastIndex
  }
  const wanted = (what: string) => new Fault(at, `${what} was expected, but ${standing(text, at)}`)
  const take = (sign: string, what: string) => {
    skip()
    if (text.charAt(at) !== sign) throw wanted(what)
    at++
  }
  /** A text in quotes; false, with `at` where it was, where none is closed there. */
  const quoted = (): boolean => {
    let next = at + 1
    if (text.charAt(at) !== '"') return false
    for (; next < text.length; next++) {
      const code = text.charCodeAt(next)
      if (code === 0x22) {
        at = next + 1
        return true
      }
      if (code < 0x20) return false
      if (code !== 0x5c) continue
      escape.lastIndex = next
      if (!escape.test(text)) return false
      next = escape.lastIndex - 1
    }
    return false
  }
  /** Entries between brackets, parted by commas. */
  const list = (close: string, entry: (index: number) => void, closing: string) => {
    if (path.length >= mostLevels) throw new Fault(at, tooDeep)
    at++
    skip()
    if (text.charAt(at) === close) {
      at++
      return
    }
    for (let index = 0; ; index++) {
      entry(index)
      path.pop()
      skip()
      if (text.charAt(at) === close) {
        at++
        return
      }
      take(',', `a comma or ${closing}`)
    }
  }
  const group = () => {
    const seen = new Map<string, number>()
    list(
      '}',
      () => {
        skip()
        const start = at
        if (!quoted()) throw wanted('a field name in double quotes')
        const key = JSON.parse(text.slice(start, at)) as string
        path.push(key)
        const first = seen.get(key)
        if (first === undefined) seen.set(key, start)
        else twins.push({ at: placeOf(path), key, first, second: start })
        take(':', 'a colon after the field name')
        value()
      },
      'a closing brace',
    )
  }
  const value = () => {
    skip()
    const first = text.charAt(at)
    if (first === '{') group()
    else if (first === '[')
      list(
        ']',
        (index) => {
          path.push(index)
          value()
        },
        'a closing bracket',
      )
    else if (first === '"') {
      if (!quoted()) throw new Fault(at, 'a text that starts here is not closed on its line')
    } else if (first === '-' || /\d/.test(first)) {
      numberShape.lastIndex = at
      if (!numberShape.test(text)) throw wanted('a number')
      at = numberShape.lastIndex
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
    return { twins: twinsSaid(text, twins) }
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault
    return { fault: { ...positionOf(lineStarts(text), fault.at), why: fault.message }, twins: [] }
  }
}

class Fault extends Error {
  readonly at: number
  constructor(at: number, why: string) {
    super(why)
    this.at = at
  }
}

function twinsSaid(text: string, twins: readonly Twin[]): Refusal[] {
  if (twins.length === 0) return []
  const starts = lineStarts(text)
  const where = (index: number): string => {
    const { line, column } = positionOf(starts, index)
    return `line ${line}, column ${column}`
  }
  return twins.map(({ at, key, first, second }) => ({
    at,
    why: `field ${shown(key)} stands twice in one group, at ${where(first)} and at ${where(second)}: keep the one that is right`,
  }))
}

/** Where each line of a text starts. */
function lineStarts(text: string): number[] {
  const starts = [0]
  for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1))
    starts.push(end + 1)
  return starts
}

/** Line and column, from 1, of a place in a text with these starts of lines. */
function positionOf(
  starts: readonly number[],
  at: number,
): { readonly line: number; readonly column: number } {
  let [low, high] = [0, starts.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((starts[middle] ?? 0) <= at) low = middle
    else high = middle - 1
  }
  return { line: low + 1, column: at - (starts[low] ?? 0) + 1 }
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
  const here = /^[^\s,:[\]{}"\\]{1,12}/.exec(text.slice(at, at + 12))?.[0] ?? text.charAt(at)
  return `${signs[here] ?? `“${harmlessLine(here)}”`} stands there`
}
