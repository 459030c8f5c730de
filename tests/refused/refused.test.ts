import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
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

/** Long values are shortened in a message: their beginning must be there. */
const shown = (value: unknown): string =>
  typeof value === 'number' ? String(value) : JSON.stringify(value).slice(0, 50)

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
    expect(first?.why).toContain(`${x} is not a finite number`)
  })

  it.each([undefined, null, true, 'train', [], {}])('takes no %j for a document', (input) => {
    expect(refusals(input)[0]?.why.length).toBeGreaterThan(10)
  })
})
