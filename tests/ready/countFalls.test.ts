import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { pathFromPlace, valueAt, withValue } from '../../src/document/place'
import { readTrain } from '../../src/document/readTrain'
import { notEnteredOf } from '../../src/engine/plan/notEntered'
import { thingsNotEntered } from '../../src/engine/plan/thingsNotEntered'
import type { Train } from '../../src/mechanics/train'

// What is entered one thing after the other, from the first line of what was not: the count of things only ever falls.

type Json = Record<string, unknown>

/** A value that stands for each thing, in the units of the document. */
const values: readonly (readonly [place: RegExp, value: (now: unknown) => unknown])[] = [
  [/pack\.now$/, () => 3000],
  [/hole\.clearance$/, () => 1600],
  [/hole\.y$/, () => 0],
  [/reserve$/, () => 200],
  [/\.growth/, () => [{ at: 0, rise: 10, side: 0 }]],
  [/sag$/, () => 20],
  [/axial$/, () => ({ want: 0, found: 0, tolerance: 500 })],
  [/rotors$/, () => ({ left: { centre: 0 } })],
  [/stretch$/, () => [-1, 1]],
  [/shims$/, () => ({ step: 25, stock: [50, 100] })],
  [/held$/, () => true],
  [/effort$/, () => 5],
  [/found\[\d+\]\.at$/, (now) => (now as number) + 30],
]

/** A train with its couplings read, and next to nothing else entered. */
function bare(file: string): Json {
  const document = JSON.parse(readFileSync(`examples/${file}.json`, 'utf8')) as {
    machines: Json[]
    couplings: { found: Json[] }[]
    plan: Json
    states: unknown
  }
  return {
    ...document,
    plan: { share: 0.7 },
    machines: document.machines.map(({ growth: _, held: __, feet, ...machine }) => ({
      ...machine,
      feet: (feet as Json[]).map(({ id, x, y }) => ({ id, x, y })),
    })),
  }
}

function read(document: unknown): Train {
  const answer = readTrain(document)
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  return answer.train
}

test.each(['bolt-bound-gearbox', 'piped-compressor', 'leave-it-alone'])(
  'of %s, entered from nothing, ever fewer things are not entered',
  (file) => {
    let document: unknown = bare(file)
    const counts: number[] = []
    for (;;) {
      const train = read(document)
      const list = notEnteredOf(train)
      counts.push(thingsNotEntered(train, list))
      const [first] = list.filter(({ where }) => values.some(([place]) => place.test(where)))
      if (!first) break
      const path = pathFromPlace(first.where)
      const value = values.find(([place]) => place.test(first.where))?.[1](valueAt(document, path))
      document = withValue(document, path, value)
      expect(counts.length).toBeLessThan(200)
    }
    expect(counts.length).toBeGreaterThan(20)
    const grown = counts.flatMap((count, i) =>
      count > (counts[i - 1] ?? Infinity) ? [`${i}: ${counts[i - 1] ?? ''} to ${count}`] : [],
    )
    expect(grown).toEqual([])
    expect(counts.at(-1)).toBe(0)
  },
)
