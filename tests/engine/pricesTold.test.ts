import { expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { limitJson } from '../../src/json/planJson'
import { bindingSentence } from '../../src/text/bindingWords'
import { bindingText } from '../../src/text/bindingText'
import { exampleOf } from '../paper/sheets'
import { planRead } from '../planned'
import { randomTrain } from '../second/randomTrain'
import type { Train } from '../second/train'
import { solveSecond } from '../second/solve'
import { counted, firstOf } from '../counts'
import { relaxed } from './relaxed'
import { solver } from './pair'

const start = Number(process.env['HOLDFAST_SEED'] ?? 61_000)
const trains: readonly (readonly [string, () => Train])[] = [
  ...firstOf(['bolt-bound-gearbox', 'piped-compressor', 'base-bound-motor'], 1).map(
    (name) => [name, () => exampleOf(name) as unknown as Train] as const,
  ),
  ...Array.from(
    { length: counted(4, 300, 8) },
    (_, i) => [`random train ${start + i}`, () => randomTrain(start + i)] as const,
  ),
]
/** Sentences tried of a train: the dearest are those that are read. */
const most = counted(2, 6)

/** What a sentence as people read it promises: so much more room saves so much, and so far. */
interface Promised {
  readonly room: number
  readonly saves: number
  /** How far it holds; none without end, or where the room told is all of it. */
  readonly upTo?: number
}

function promisedBy(sentence: string): Promised | undefined {
  const each = /^each ([\d.]+) .* saves ([\d.]+) .*moves, (?:up to ([\d.]+)|without end)/.exec(
    sentence,
  )
  const next = /^the next ([\d.]+) .* saves ([\d.]+) .*moves, further room less$/.exec(sentence)
  const [, room, saves, upTo] = each ?? next ?? []
  if (room === undefined || saves === undefined) return undefined
  return {
    room: Number(room),
    saves: Number(saves),
    ...(upTo !== undefined && { upTo: Number(upTo) }),
  }
}

/** Half of the last digit that a number of two digits is told with. */
const halfDigit = (value: number): number =>
  value === 0 ? 0 : 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 1)

it(`what a limit is said to be worth is what it saves when that much more is entered, on ${trains.length} trains`, async () => {
  const tried = new Map<string, number>()
  const wrong: string[] = []
  for (const [name, made] of trains) {
    const file = made()
    const read = readTrain(file)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const plan = planRead(read.train, solver, { packs: false })
    if (plan.status !== 'planned' || !plan.prices) continue
    const { cost } = await solveSecond(file)
    const text = bindingText(read.train, plan.prices).join(' ').replace(/\s+/g, ' ')
    for (const limit of plan.prices.slice(0, most)) {
      const sentence = bindingSentence(read.train, limit)
      const promised = promisedBy(sentence)
      if (!promised) throw new Error(`${name}: ${sentence}`)
      const json = limitJson(read.train, limit)
      const { room, saves, upTo } = promised
      // the text tells the same by the unit of the limit
      const perUnit = Number(/saves ([\d.]+) /.exec(text.slice(text.indexOf(json.where)))?.[1])
      expect(perUnit).toBeGreaterThan(0)
      // costs agree to 2e-5: a smaller saving could not be told
      const blind = 5e-5 * cost
      const slack = halfDigit(saves) + 0.02 * saves + blind
      const trials = [[room, 1], ...(upTo === undefined ? [] : [[upTo, upTo / room]])] as const
      for (const [more = 0, times = 1] of trials) {
        const other = relaxed(file, json, more)
        if (!other) continue
        const { cost: then } = await solveSecond(other)
        const saved = cost - then
        const said = times * saves
        const off = times * slack + (times > 1 ? halfDigit(more) * (saves / room) : 0)
        const words = `${name}: ${sentence}; with ${more} more it saves ${saved}`
        if (saved < said - off) wrong.push(words)
        // a tolerance of the file stands for both planes, all states and both ways, and may save more than one of them
        if (limit.limit.kind !== 'check' && limit.limit.kind !== 'least' && saved > said + off)
          wrong.push(words)
        tried.set(json.limit, (tried.get(json.limit) ?? 0) + 1)
      }
    }
  }
  console.log([...tried].map(([limit, n]) => `${limit} ${n}`).join(', '))
  expect(wrong).toEqual([])
  expect(tried.size).toBeGreaterThan(counted(1, 4))
}, 3_600_000)
