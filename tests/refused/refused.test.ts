import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { newTrain } from '../../src/document/edits/newTrain'
import { placeWords } from '../../src/document/placeWords'
import type { Refusal } from '../../src/document/refusal'
import type { TrainDocument } from '../../src/document/schema'
import { faultWords } from '../../src/document/words/faultWords'
import { largestDocument, readTrain, readTrainText } from '../../src/document/readTrain'

interface RefusedCase {
  readonly file: string
  readonly at: string
  /** What stands at the place, where one value does; the message shows it. */
  readonly value?: unknown
  /** True where one fault makes another place wrong too; the first refusal is still the fault. */
  readonly also?: boolean
  /** Words that the message must contain. */
  readonly why: readonly string[]
}

const folder = new URL('../../shared/refused/', import.meta.url)
const text = (file: string): string => readFileSync(new URL(file, folder), 'utf8')
const cases = JSON.parse(text('index.json')) as RefusedCase[]

/** Values in plain words. Long ones are shortened in a message: their beginning must be there; a group is not repeated. */
function shown(value: unknown): string {
  if (value === null) return 'empty'
  if (typeof value === 'string') return `“${value.slice(0, 50)}`
  if (Array.isArray(value)) return value.join(' to ')
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : ''
}

describe('refused files', () => {
  it('are all in the index, and the sound train they were made from is read', () => {
    const files = readdirSync(folder).filter((file) => file.endsWith('.json'))
    const named = cases.map(({ file }) => file)
    expect(new Set(named).size).toBe(named.length)
    expect([...named, 'index.json', 'sound.json'].sort()).toEqual(files.sort())
    expect(readTrainText(text('sound.json')).ok).toBe(true)
  })

  it.each(cases)('$file is refused at "$at"', (refused) => {
    const answer = readTrainText(text(refused.file))
    if (answer.ok) throw new Error('it was read')
    const places = answer.refused.map(({ at }) => at)
    expect(places[0]).toBe(refused.at)
    // one fault, one refusal: a second one would send the reader to a place that is right
    if (refused.also !== true) expect(places).toEqual([refused.at])
    const why = answer.refused[0]?.why ?? ''
    if ('value' in refused) expect(why).toContain(shown(refused.value))
    for (const word of refused.why) expect(why).toContain(word)
  })
})

describe('what is refused is said in plain words', () => {
  /** Signs and words of files and programs. */
  const foreign = /[{}[\]"\\]|\b(undefined|null|NaN|Infinity)\b/
  const refusals: (readonly [string, Refusal, unknown])[] = [
    ...cases.map(({ file }) => [file, text(file)] as const),
    ['a new train', JSON.stringify(newTrain())] as const,
  ].flatMap(([file, content]) => {
    const answer = readTrainText(content)
    if (answer.ok) throw new Error(`${file} was read`)
    const document = answer.refused[0]?.at === '' ? {} : (JSON.parse(content) as unknown)
    return answer.refused.map((refusal) => [`${file} ${refusal.at}`, refusal, document] as const)
  })

  it.each(refusals)('%s, in the file', (_, { why }) => {
    expect(why).not.toMatch(foreign)
  })
  it.each(refusals)('%s, on the sheet, its place too', (_, refusal, document) => {
    expect(faultWords(document as TrainDocument, refusal)).not.toMatch(foreign)
    expect(placeWords(document as TrainDocument, refusal.at)).not.toMatch(foreign)
  })

  it.each([
    ['tolerance-none.json', /^no tolerance is entered: enter the angle at each plane, or/],
    ['no-machines.json', /^a train has two machines or more/],
    ['no-feet.json', /^there is no foot here: add one/],
    ['shim-stock-empty.json', /^no shim is listed: add a thickness/],
    ['readings-empty.json', /^nothing is read here: add an hour/],
  ])('%s is told on the sheet by what is to be done there', (file, words) => {
    const [refusal] = refusals.find(([name]) => name.startsWith(`${file} `))?.slice(1) ?? []
    const document = JSON.parse(text(file)) as TrainDocument
    expect(faultWords(document, refusal as Refusal)).toMatch(words)
  })
})

describe('refused documents that no file can hold', () => {
  interface Sound {
    machines: { id: string; feet: { x: unknown }[] }[]
    skids: unknown[]
    couplings: { id: string; left: { machine: string }; right: { machine: string } }[]
  }
  const sound = (): Sound => JSON.parse(text('sound.json')) as Sound
  const refusals = (input: unknown) => {
    const answer = readTrain(input)
    if (answer.ok) throw new Error('it was read')
    return answer.refused
  }

  it('takes no text over 10 MB, and one of 10 MB as far as its meaning', () => {
    const long = (length: number): string => {
      const start = text('sound.json').trimEnd()
      return start + ' '.repeat(length - start.length)
    }
    expect(readTrainText(long(largestDocument)).ok).toBe(true)
    const answer = readTrainText(long(largestDocument + 1))
    expect(answer).toMatchObject({ ok: false, refused: [{ at: '' }] })
    if (!answer.ok) expect(answer.refused[0]?.why).toMatch(/10000001.*10 MB/)
  })

  it('takes 1,000 machines and no more', () => {
    const chain = (count: number): Sound => {
      const { machines, couplings, ...rest } = sound()
      const [machine, coupling] = [machines[0], couplings[1]]
      if (machine === undefined || coupling === undefined)
        throw new Error('the sound train lacks parts')
      const ids = Array.from({ length: count }, (_, i) => `m${i}`)
      return {
        ...rest,
        skids: [],
        machines: ids.map((id) => ({ ...machine, id })),
        couplings: ids.slice(1).map((id, i) => ({
          ...coupling,
          id: `c${i}`,
          left: { ...coupling.left, machine: `m${i}` },
          right: { ...coupling.right, machine: id },
        })),
      }
    }
    expect(readTrain(chain(1000)).ok).toBe(true)
    const [first, ...others] = refusals(chain(1001))
    expect(others).toEqual([])
    expect(first?.at).toBe('machines')
    expect(first?.why).toMatch(/1001.*at most 1000/)
  })

  it.each([Number.NaN, Infinity, -Infinity])('takes no %d for a number', (x) => {
    const train = sound()
    const foot = train.machines[0]?.feet[0]
    if (foot === undefined) throw new Error('the sound train has no foot')
    foot.x = x
    const [first, ...others] = refusals(train)
    expect(others).toEqual([])
    expect(first?.at).toBe('machines[0].feet[0].x')
    expect(first?.why).toContain('no finite number')
  })

  it.each([undefined, null, true, 'train', [], {}])('takes no %j for a document', (input) => {
    expect(refusals(input)[0]?.why.length).toBeGreaterThan(10)
  })
})
