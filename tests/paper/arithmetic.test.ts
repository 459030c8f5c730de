import { describe, expect, test } from 'vitest'
import { pencilLines } from '../../src/paper/arithmetic'
import { pencilCoupling } from '../../src/paper/arithmeticPage'
import { drawn } from '../../src/paper/job'
import { checkSum } from '../../src/paper/pencilCheck'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readTrain } from '../../src/document/readTrain'
import { reverseDial } from '../cli/trains'
import { randomTrain } from '../second/randomTrain'
import { blocksOf, exampleNames, exampleOf, made } from './sheets'

describe('a line drawn by hand', () => {
  test('is that of the least squares, wherever two facts fix a plane', () => {
    let [exact, all] = [0, 0]
    const kinds = new Set<string>()
    for (const name of exampleNames) {
      const read = readTrain(exampleOf(name))
      if (!read.ok) throw new Error(name)
      for (const coupling of read.train.couplings) {
        all++
        const lines = pencilLines(coupling)
        if (!lines) continue
        exact++
        for (const set of coupling.found) kinds.add(set.kind)
        const { line } = asFound(coupling)
        const [up, side] = lines
        expect(up.offset).toBeCloseTo(line.z, 6)
        expect(up.slope).toBeCloseTo(line.sz, 9)
        expect(side.offset).toBeCloseTo(line.y, 6)
        expect(side.slope).toBeCloseTo(line.sy, 9)
      }
    }
    expect(exact).toBeGreaterThan(15)
    expect(exact).toBe(all)
    expect([...kinds].sort()).toEqual(['face', 'gap', 'line', 'rim', 'spool'])
  })

  test('is that of the least squares on random trains too, and left alone where it takes more', () => {
    let [exact, fitted] = [0, 0]
    for (let seed = 1; seed <= 200; seed++) {
      const read = readTrain(randomTrain(seed))
      if (!read.ok) continue
      for (const coupling of read.train.couplings) {
        const lines = pencilLines(coupling)
        if (!lines) {
          fitted++
          continue
        }
        exact++
        const { line } = asFound(coupling)
        const [up, side] = lines
        const near = (a: number, b: number) => {
          expect(Math.abs(a - b)).toBeLessThan(1e-6 * Math.max(1, Math.abs(b)))
        }
        near(up.offset, line.z)
        near(up.slope, line.sz)
        near(side.offset, line.y)
        near(side.slope, line.sy)
      }
    }
    expect(exact).toBeGreaterThan(100)
    expect(fitted).toBeGreaterThan(10)
  })
})

/** Numbers as printed, with their sign; the minus sign of print is not that of programs. */
const printed = (text: string): number => {
  const found = /[+\u2212-]?\d+(\.\d+)?/.exec(text)?.[0] ?? 'nothing'
  return Number(found.replace('\u2212', '-'))
}

test('what is printed can be followed with a pencil to the same result', async () => {
  const { paper, train } = await made(reverseDial, 'a4', 'office')
  const tables = blocksOf(paper).flatMap((block) => (block.kind === 'table' ? [block] : []))
  const rows = tables.filter(({ columns }) => columns[1]?.head === 'up and down')
  // two rims, each split in two sets, then the line
  const line = rows.at(-1)?.rows ?? []
  const [coupling] = train.couplings
  if (!coupling) throw new Error('no coupling')
  const engine = asFound(coupling).line
  const cell = (words: RegExp, column: 1 | 2) =>
    printed(line.find(([first = '']) => words.test(first))?.[column] ?? '')
  for (const column of [1, 2] as const) {
    const first = cell(/^at x/, column)
    const slope = cell(/: slope$/, column)
    const way = printed(
      /: (.*) times the slope/.exec(
        line.find(([t = '']) => /times the slope/.test(t))?.[0] ?? '',
      )?.[1] ?? '',
    )
    const middle = (column === 1 ? engine.z : engine.y) / 25.4
    expect(first + slope * way).toBeCloseTo(middle, 1)
    expect(cell(/^added to/, column)).toBeCloseTo(middle, 2)
  }
})

describe.each(exampleNames)('the check of %s', (name) => {
  test('adds up to the share of the plan', async () => {
    const read = readTrain(exampleOf(name))
    if (!read.ok) throw new Error(name)
    const { answer } = await made(exampleOf(name))
    const job = drawn({ document: read.document, train: read.train, answer })
    const coupling = pencilCoupling(read.train)
    if (!coupling) throw new Error('no coupling')
    const sum = checkSum(job, coupling)
    if (!sum) throw new Error('no check')
    const { tolerance, p, q } = coupling
    const size = (a = 0, b = 0) =>
      tolerance.shape === 'round' ? Math.hypot(a, b) : Math.max(Math.abs(a), Math.abs(b))
    const [a, b, c, d] = sum.total
    const { factor } = sum.state
    const span = q - p
    const shares =
      span > 0
        ? [size(a, b) / span, size(c, d) / span].map((v) => v / (tolerance.flex ?? 0))
        : [size(a, b) / (tolerance.offset ?? Infinity), size(c, d) / (tolerance.angle ?? Infinity)]
    expect(Math.max(...shares) / factor).toBeCloseTo(sum.share, 6)
  })
})
