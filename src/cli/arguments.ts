import type { Refusal } from '../engine/train/refusal'

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
  | { readonly command: 'refused'; readonly json: boolean; readonly refused: readonly Refusal[] }

export const commands = ['plan', 'holds', 'check', 'model'] as const
type Command = (typeof commands)[number]

const isCommand = (word: string): word is Command => commands.some((command) => command === word)

/** Reads the words after `holdfast`; anything not understood is refused, with what would be right. */
export function readArguments(words: readonly string[]): Request {
  const json = words.includes('--json')
  const refuse = (at: string, why: string): Request => ({
    command: 'refused',
    json,
    refused: [{ at, why }],
  })
  const files: string[] = []
  const outs: string[] = []
  let command: Command | undefined
  let asked: 'help' | 'version' | undefined
  let optionsEnded = false
  const rest = [...words]
  for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
    if (!optionsEnded && word.startsWith('-') && word !== '-') {
      if (word === '--') optionsEnded = true
      else if (word === '--help' || word === '-h') asked ??= 'help'
      else if (word === '--version') asked ??= 'version'
      else if (word === '-o') {
        const out = rest.shift()
        if (out === undefined || (out.startsWith('-') && out !== '-'))
          return refuse('-o', 'missing: give the file to write after it, such as -o train.lp')
        outs.push(out)
      } else if (word !== '--json')
        return refuse(word, 'unknown option: there are --json, -o FILE, --help and --version')
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
  const [out, another] = outs
  if (command !== 'model') {
    if (out !== undefined)
      return refuse('-o', `${command} writes to standard output: -o belongs to model`)
    return { command, file, json }
  }
  if (out === undefined)
    return refuse('-o', 'missing: model needs -o FILE, ending in .lp (CPLEX LP) or .mps (free MPS)')
  if (another !== undefined) return refuse('-o', `given twice: ${out} and ${another}`)
  const ending = /\.(lp|mps)$/i.exec(out)?.[1]?.toLowerCase()
  if (ending !== 'lp' && ending !== 'mps')
    return refuse(out, 'unknown format: give a file that ends in .lp (CPLEX LP) or .mps (free MPS)')
  return { command, file, json, out, format: ending }
}
