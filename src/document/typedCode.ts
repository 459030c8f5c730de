/**
 * Letters that are told apart in handwriting and on a worn sheet: no 0 beside O, no 1 beside I and L. There are 31, a
 * prime, so that the last letter shows every single wrong one and every two that changed places.
 */
const letters = '23456789ABCDEFGHJKMNPQRSTUVWXYZ'
const base = letters.length

/** Letters of a code: of the train, of the sheet, of the place, and the one that checks them. */
const lengths = { train: 4, sheet: 5, step: 2 } as const
const group = 4

/** The largest step that a code has room for. */
const lastStep = base ** lengths.step - 1

/** What a code on paper points to. */
export interface CodePlace {
  /** Mark of the train: four letters. */
  readonly train: string
  /** Mark of the sheet that was printed: five letters. */
  readonly sheet: string
  /** The step that was to be done next; 0 before and after the steps, and where there are none. */
  readonly step: number
}

export type ReadCode =
  | { readonly is: 'code'; readonly place: CodePlace }
  /** As long as a code, in its groups, and a letter of it is wrong. */
  | { readonly is: 'wrong' }
  /** Something else: a search, a half typed code. */
  | { readonly is: 'none' }

/** A code as it is printed: three groups of four letters, such as "7KQ2-M4XD-9R2T". */
export function codeText({ train, sheet, step }: CodePlace): string {
  const said = `${train}${sheet}${inLetters(BigInt(step <= lastStep ? step : 0), lengths.step)}`
  return `${said}${checkLetter(said)}`.replace(/(.{4})(?=.)/g, '$1-')
}

/** Reads what somebody typed or scanned: small letters, blanks and dashes as they come. */
export function readCode(typed: string): ReadCode {
  const groups = typed
    .trim()
    .toUpperCase()
    .split(/[\s\u2010-\u2014\u2212-]+/)
  const code = groups.join('')
  const whole = code.length === lengths.train + lengths.sheet + lengths.step + 1
  const said = code.slice(0, -1)
  if (!whole || !/^[0-9A-Z]+$/.test(code)) return { is: 'none' }
  const grouped = groups.length === 3 && groups.every((one) => one.length === group)
  if (
    code.split('').some((letter) => !letters.includes(letter)) ||
    checkLetter(said) !== code.at(-1)
  )
    return { is: grouped ? 'wrong' : 'none' }
  const train = code.slice(0, lengths.train)
  const sheet = code.slice(lengths.train, lengths.train + lengths.sheet)
  const step = said
    .slice(-lengths.step)
    .split('')
    .reduce((sum, one) => sum * base + valueOf(one), 0)
  return { is: 'code', place: { train, sheet, step } }
}

/** The mark of a train, from the print of what it is known by; several trains may share it by accident, about one in 900,000. */
export const trainMark = (print: string): string => inLetters(BigInt(`0x${print}`), lengths.train)

/** The mark of a sheet, from the print of its content. */
export const sheetMark = (print: string): string => inLetters(BigInt(`0x${print}`), lengths.sheet)

const valueOf = (letter: string): number => letters.indexOf(letter)

/** A number in letters, the last ones of it where it has more. */
function inLetters(value: bigint, count: number): string {
  let [left, text] = [value, '']
  for (let i = 0; i < count; i++) {
    text = `${letters.charAt(Number(left % BigInt(base)))}${text}`
    left /= BigInt(base)
  }
  return text
}

/** Weighted by its place, each letter with a weight of its own: the sum with the last letter leaves nothing over 31. */
function checkLetter(said: string): string {
  const sum = said.split('').reduce((all, letter, i) => all + (i + 2) * valueOf(letter), 0)
  return letters.charAt((base - (sum % base)) % base)
}
