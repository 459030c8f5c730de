import { readFileSync } from 'node:fs'
import { everyField } from '../entry/everyField'
import { examples, exampleFile } from '../cli/trains'

/** Examples that are planned in a few hundredths of a second. */
const small = ['pump-and-motor', 'skid-as-one'] as const

/**
 * The texts that are mutated: the sound train of the refused files, one with every field, and examples; all of them, or
 * those that are planned soon.
 */
export const bases = (all: boolean): string[] => [
  readFileSync('shared/refused/sound.json', 'utf8'),
  JSON.stringify(everyField()),
  ...(all ? examples : small).map((name) => readFileSync(exampleFile(name), 'utf8')),
]
