/** One term of a sum with the unit typed behind it; "" where there is none. */
export interface SumTerm {
  readonly value: number
  readonly unit: string
}

export type Sum =
  | { readonly ok: true; readonly terms: readonly SumTerm[] }
  | { readonly ok: false; readonly why: string }

type Token =
  | {
      readonly is: 'number'
      readonly value: number
      readonly text: string
      readonly whole: boolean
    }
  | { readonly is: 'sign'; readonly text: string }
  | { readonly is: 'unit'; readonly text: string }

/** Longest entry that is read; more is no number. */
const longest = 200

/** Reads terms joined by + and -; each a number, a fraction, or numbers joined by * and /. */
export function parseSum(text: string): Sum {
  const read = tokensOf(text)
  if (typeof read === 'string') return { ok: false, why: read }
  const tokens: readonly Token[] = read
  if (tokens.length === 0) return { ok: false, why: 'nothing is written here: write a number' }
  const terms: SumTerm[] = []
  let i = 0
  while (i < tokens.length) {
    let sign = 1
    const first = i === 0
    let signs = 0
    for (let next = tokens[i]; isOne(next, '+-'); next = tokens[++i]) {
      if (next.text === '-') sign = -sign
      signs++
    }
    if (!first && signs === 0)
      return {
        ok: false,
        why: `“${said(tokens[i])}” stands without + or - before it: write one number or a sum`,
      }
    if (signs > (first ? 1 : 2)) return { ok: false, why: 'too many signs in a row: write one' }
    const term = product()
    if (typeof term === 'string') return { ok: false, why: term }
    terms.push({ value: sign * term.value, unit: term.unit })
  }
  return { ok: true, terms }

  function product(): SumTerm | string {
    let value = factor()
    if (typeof value === 'string') return value
    for (let next = tokens[i]; isOne(next, '*/'); next = tokens[i]) {
      i++
      const by = factor()
      if (typeof by === 'string') return by
      value = next.text === '*' ? value * by : value / by
    }
    const unit = tokens[i]
    if (unit?.is !== 'unit') return { value, unit: '' }
    i++
    return { value, unit: unit.text }
  }

  /** A number; a whole number followed by a fraction of whole numbers is both together. */
  function factor(): number | string {
    let sign = 1
    const before = tokens[i]
    if (before?.is === 'sign' && before.text === '-') {
      sign = -1
      i++
    }
    const number = tokens[i]
    if (number?.is !== 'number')
      return number
        ? `“${said(number)}” stands where a number should be`
        : 'the sum ends before its last number: write it, or take the sign away'
    i++
    const above = tokens[i]
    const stroke = tokens[i + 1]
    const below = tokens[i + 2]
    if (above?.is === 'number') {
      const fraction =
        number.whole &&
        above.whole &&
        stroke?.is === 'sign' &&
        stroke.text === '/' &&
        below?.is === 'number' &&
        below.whole
      if (!fraction)
        return `“${number.text} ${above.text}” are two numbers: write one, or a fraction like 12 3/8`
      i += 3
      return sign * (number.value + above.value / below.value)
    }
    return sign * number.value
  }
}

const isOne = (token: Token | undefined, signs: string): token is Token & { is: 'sign' } =>
  token?.is === 'sign' && signs.includes(token.text)

const said = (token: Token | undefined): string => token?.text ?? ''

/** Numbers, signs and units in order; or what cannot be read. */
function tokensOf(text: string): Token[] | string {
  if (text.length > longest) return `${text.length} characters are too many for a number`
  const tokens: Token[] = []
  const pattern =
    /\s*(?:(\d[\d.,]*|[.,]\d+)|([-+*/−–×÷·])|([A-Za-zµμ°"″][A-Za-zµμ°"″/]*(?:·[A-Za-z]+)*))/y
  const end = text.trimEnd().length
  while (pattern.lastIndex < end) {
    const at = pattern.lastIndex
    const match = pattern.exec(text)
    if (!match) return `“${text.slice(at, end).trim()}” cannot be read as a number`
    const [, number, sign, unit] = match
    if (number !== undefined) {
      const value = decimal(number)
      if (value === undefined)
        return `“${number}” has more than one decimal sign: write 1234.5 or 1234,5, without signs between thousands`
      tokens.push({ is: 'number', value, text: number, whole: /^\d+$/.test(number) })
    } else if (sign !== undefined) tokens.push({ is: 'sign', text: plainSign[sign] ?? sign })
    else tokens.push({ is: 'unit', text: unit === '″' ? '"' : (unit ?? '') })
  }
  return tokens
}

const plainSign: Record<string, string> = { '−': '-', '–': '-', '×': '*', '·': '*', '÷': '/' }

/** A decimal comma or point; both, or one of them twice, could mean thousands and is not guessed. */
function decimal(text: string): number | undefined {
  if ((text.match(/[.,]/g) ?? []).length > 1) return undefined
  return Number(text.replace(',', '.'))
}
