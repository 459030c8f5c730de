import { parseArgs } from 'node:util'
import { prints, type PaperSize, type PrintFor } from '../paper/page'
import type { Refusal } from '../document/refusal'
import { datedIn } from '../mechanics/day'
import { manyRequest, type FilesRequest, type LinesRequest } from './manyArguments'

/** What the command line was asked to do. */
export type CommandRequest =
  | { readonly command: 'help' | 'version' }
  | { readonly command: 'check'; readonly file: string; readonly json: boolean }
  | {
      readonly command: 'hotcheck'
      readonly file: string
      readonly json: boolean
      /** Where the train file with its growth corrected is to be written. */
      readonly out?: string
    }
  | {
      readonly command: 'plan' | 'holds'
      readonly file: string
      readonly json: boolean
      /** How sure the plan is, whether or not the file asks for it. */
      readonly sure: boolean
      /** How many times the usual work each question may take. */
      readonly work: number
    }
  | LinesRequest
  | FilesRequest
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
      readonly print: PrintFor
      /** As it is to be printed; today's where it is not given. */
      readonly date?: string
    }
  | {
      readonly command: 'since'
      readonly json: boolean
      /** As left then and as found the next time, two files for each time. */
      readonly files: readonly string[]
    }
  | {
      readonly command: 'site'
      readonly json: boolean
      /** Train files, and folders of them. */
      readonly files: readonly string[]
      /** The day to judge by; today where it is not given. */
      readonly date?: string
    }
  | { readonly command: 'refused'; readonly json: boolean; readonly refused: readonly Refusal[] }

const commands = ['plan', 'holds', 'check', 'hotcheck', 'since', 'site', 'model', 'sheet'] as const
type Command = (typeof commands)[number]

const isCommand = (word: string): word is Command => commands.some((command) => command === word)

/** Options that take the word after them, with what to give there. */
const valued: Readonly<Record<string, string>> = {
  '-o': 'give the file to write after it, such as -o train.lp',
  '--paper': 'give the paper after it: a4 or letter',
  '--for': 'give whom the print is for after it: crew, office or shift',
  '--date': 'give the date after it, such as --date 2026-11-30',
  '--work': 'give how many times the usual work to allow after it, such as --work 10',
  '--jobs': 'give how many files to plan side by side after it, such as --jobs 4',
  '--known': 'give the lines of an earlier run after it, such as --known plans.jsonl',
}
const type = 'string'
const options = {
  o: { type, short: 'o' },
  paper: { type },
  for: { type },
  date: { type },
  work: { type },
  jobs: { type },
  known: { type },
} as const

/** Options that stand alone. */
const flags: Readonly<Record<string, 'json' | 'sure' | 'lines' | 'help' | 'version'>> = {
  '--json': 'json',
  '--sure': 'sure',
  '--lines': 'lines',
  '--help': 'help',
  '-h': 'help',
  '--version': 'version',
}

/** Reads the words after `holdfast`; anything not understood is refused, with what would be right. */
export function readArguments(words: readonly string[]): CommandRequest {
  const json = words.includes('--json')
  const refuse = (at: string, why: string): CommandRequest => ({
    command: 'refused',
    json,
    refused: [{ at, why }],
  })
  const files: string[] = []
  const given = new Map<string, string>()
  let command: Command | undefined
  let asked: 'help' | 'version' | undefined
  let sure = false
  let lines = false
  // not strict, so that the first fault in order is refused here, in our words
  const { tokens } = parseArgs({ args: [...words], options, strict: false, tokens: true })
  for (const token of tokens) {
    if (token.kind === 'option') {
      const { rawName: name, value } = token
      const word = words[token.index] ?? name
      const flag = flags[name]
      const missing = valued[name]
      // joined spellings, such as --paper=a4 or -ox.lp, were never understood
      if (word !== name || (flag ?? missing) === undefined)
        return refuse(
          word,
          'unknown option: there are --json, --sure, --work, --lines, --jobs, --known, -o FILE, --for, --paper, --date, --help and --version',
        )
      if (missing !== undefined) {
        if (value === undefined || (value.startsWith('-') && value !== '-'))
          return refuse(name, `missing: ${missing}`)
        const before = given.get(name)
        if (before !== undefined) return refuse(name, `given twice: ${before} and ${value}`)
        given.set(name, value)
      } else if (flag === 'sure') sure = true
      else if (flag === 'lines') lines = true
      else if (flag !== 'json') asked ??= flag
    } else if (token.kind === 'positional') {
      if (command !== undefined) files.push(token.value)
      else if (isCommand(token.value)) command = token.value
      else
        return refuse(
          token.value || 'command',
          `unknown command: the commands are ${commands.join(', ')}`,
        )
    }
  }
  if (asked) return { command: asked }
  if (command === undefined)
    return refuse('command', `missing: give ${commands.join(', ')}, or --help`)
  if (command !== 'plan')
    for (const name of ['--lines', '--jobs', '--known'])
      if (given.has(name) || (name === '--lines' && lines))
        return refuse(name, `${command} takes one train at a time: it belongs to plan`)
  const isMany = files.length > 1 || given.has('--jobs') || given.has('--known')
  const [file = lines ? '-' : undefined, second] = files
  if (file === undefined)
    return refuse('FILE', `missing: give a train file after ${command}, or - for standard input`)
  if (file === '')
    return refuse('FILE', 'empty: give the name of a train file, or - for standard input')
  if (command === 'since' || command === 'site') {
    if (files.includes(''))
      return refuse('FILE', 'empty: give the name of a train file, or - for standard input')
    if (command === 'since' && files.length > 1 && files.length % 2 === 1)
      return refuse(
        'FILE',
        `missing: give two train files for each time, as left then and as found the next time, or one that keeps its outages; ${files.length} are given`,
      )
  }
  if (
    second !== undefined &&
    command !== 'since' &&
    command !== 'site' &&
    (command !== 'plan' || lines)
  )
    return refuse(second === '' ? 'FILE' : second, `one file at a time: ${file} was given already`)
  const out = given.get('-o')
  if (out === '') return refuse('-o', 'empty: give the name of the file to write')
  const paper = given.get('--paper')
  const date = given.get('--date')
  for (const name of ['--for', '--paper', '--date'])
    if (command !== 'sheet' && given.has(name) && !(command === 'site' && name === '--date'))
      return refuse(
        name,
        name === '--date'
          ? `${command} has no date: it belongs to sheet and site`
          : `${command} prints nothing: it belongs to sheet`,
      )
  const times = given.get('--work')
  if (times !== undefined && command !== 'plan' && command !== 'holds')
    return refuse('--work', `${command} has no budget of work: it belongs to plan and holds`)
  const work = times === undefined ? 1 : Number(times)
  if (!(Number.isFinite(work) && work > 0) || times === '')
    return refuse(
      '--work',
      `"${times ?? ''}" is no number above 0: give how many times the usual work to allow, such as 10`,
    )
  if (sure && command !== 'plan' && command !== 'holds')
    return refuse('--sure', `${command} tells no chance: it belongs to plan and holds`)
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
      const whom = given.get('--for') ?? 'crew'
      const print = prints.find((one) => one === whom.toLowerCase())
      if (print === undefined)
        return refuse('--for', `unknown print "${whom}": give crew, office or shift`)
      const dated = date === undefined ? {} : { date }
      return { command, file, json, out, format: ending, paper: size, print, ...dated }
    }
    case 'hotcheck':
      return { command, file, json, ...(out !== undefined && { out }) }
    case 'site': {
      if (out !== undefined)
        return refuse(
          '-o',
          'site writes to standard output: -o belongs to model, sheet and hotcheck',
        )
      if (date !== undefined && datedIn(date)?.day !== date)
        return refuse('--date', `"${date}" is no day: give it as 2026-11-30`)
      return { command, json, files, ...(date !== undefined && { date }) }
    }
    case 'since':
    case 'plan':
    case 'holds':
    case 'check':
      if (out !== undefined)
        return refuse(
          '-o',
          `${command} writes to standard output: -o belongs to model, sheet and hotcheck`,
        )
      if (command === 'check') return { command, file, json }
      if (command === 'since') return { command, json, files }
      if (command === 'plan' && (lines || isMany)) {
        const many = manyRequest({ files: [file, ...files.slice(1)], lines, sure, work }, given)
        return 'at' in many ? refuse(many.at, many.why) : many
      }
      return { command, file, json, sure, work }
  }
}

const endingOf = (file: string): string | undefined => /\.([a-z]+)$/i.exec(file)?.[1]?.toLowerCase()
