import type { PaperSize } from '../paper/page'
import type { Refusal } from '../document/refusal'

/** What the command line was asked to do. */
export type Request =
  | { readonly command: 'help' | 'version' }
  | { readonly command: 'plan' | 'holds' | 'check'; readonly file: string; readonly json: boolean }
  | {
      readonly command: 'model'
      readonly file: string
      readonly json: boolean
      readonly out: string
      readonly format: 'lp' | 'mps'
    }
  | {
      readonly command: 'sheet'
      readonly file: string
      readonly json: boolean
      readonly out: string
      readonly format: 'html' | 'pdf'
      readonly paper: PaperSize
      /** As it is to be printed; today's where it is not given. */
      readonly date?: string
    }
  | { readonly command: 'refused'; readonly json: boolean; readonly refused: readonly Refusal[] }

export const commands = ['plan', 'holds', 'check', 'model', 'sheet'] as const
type Command = (typeof commands)[number]

const isCommand = (word: string): word is Command => commands.some((command) => command === word)

/** Options that take the word after them, with what to give there. */
const valued = {
  '-o': 'give the file to write after it, such as -o train.lp',
  '--paper': 'give the paper after it: a4 or letter',
  '--date': 'give the date to print after it',
} as const
type Valued = keyof typeof valued

const isValued = (word: string): word is Valued => word in valued

/** Reads the words after `holdfast`; anything not understood is refused, with what would be right. */
export function readArguments(words: readonly string[]): Request {
  const json = words.includes('--json')
  const refuse = (at: string, why: string): Request => ({
    command: 'refused',
    json,
    refused: [{ at, why }],
  })
  const files: string[] = []
  const given = new Map<Valued, string>()
  let command: Command | undefined
  let asked: 'help' | 'version' | undefined
  let optionsEnded = false
  const rest = [...words]
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    if (!optionsEnded && word.startsWith('-') && word !== '-') {
      if (word === '--') optionsEnded = true
      else if (word === '--help' || word === '-h') asked ??= 'help'
      else if (word === '--version') asked ??= 'version'
      else if (isValued(word)) {
        const value = rest.shift()
        if (value === undefined || (value.startsWith('-') && value !== '-'))
          return refuse(word, `missing: ${valued[word]}`)
        const before = given.get(word)
        if (before !== undefined) return refuse(word, `given twice: ${before} and ${value}`)
        given.set(word, value)
      } else if (word !== '--json')
        return refuse(
          word,
          'unknown option: there are --json, -o FILE, --paper, --date, --help and --version',
        )
    } else if (command === undefined) {
      if (!isCommand(word))
        return refuse(word, `unknown command: the commands are ${commands.join(', ')}`)
      command = word
    } else files.push(word)
  }
  if (asked) return { command: asked }
  if (command === undefined)
    return refuse('command', `missing: give ${commands.join(', ')}, or --help`)
  const [file, second] = files
  if (file === undefined)
    return refuse('FILE', `missing: give a train file after ${command}, or - for standard input`)
  if (second !== undefined) return refuse(second, `one file at a time: ${file} was given already`)
  const out = given.get('-o')
  const paper = given.get('--paper')
  const date = given.get('--date')
  if (command !== 'sheet') {
    if (paper !== undefined)
      return refuse('--paper', `${command} prints nothing: it belongs to sheet`)
    if (date !== undefined)
      return refuse('--date', `${command} prints nothing: it belongs to sheet`)
  }
  switch (command) {
    case 'model': {
      const kinds = '.lp (CPLEX LP) or .mps (free MPS)'
      if (out === undefined) return refuse('-o', `missing: model needs -o FILE, ending in ${kinds}`)
      const ending = endingOf(out)
      if (ending !== 'lp' && ending !== 'mps')
        return refuse(out, `unknown format: give a file that ends in ${kinds}`)
      return { command, file, json, out, format: ending }
    }
    case 'sheet': {
      const kinds = '.html or .pdf'
      if (out === undefined) return refuse('-o', `missing: sheet needs -o FILE, ending in ${kinds}`)
      const ending = endingOf(out)
      if (ending !== 'html' && ending !== 'pdf')
        return refuse(out, `unknown format: give a file that ends in ${kinds}`)
      const size = (paper ?? 'a4').toLowerCase()
      if (size !== 'a4' && size !== 'letter')
        return refuse('--paper', `unknown paper "${paper ?? ''}": give a4 or letter`)
      const dated = date === undefined ? {} : { date }
      return { command, file, json, out, format: ending, paper: size, ...dated }
    }
    default:
      if (out !== undefined)
        return refuse('-o', `${command} writes to standard output: -o belongs to model and sheet`)
      return { command, file, json }
  }
}

const endingOf = (file: string): string | undefined => /\.([a-z]+)$/i.exec(file)?.[1]?.toLowerCase()
