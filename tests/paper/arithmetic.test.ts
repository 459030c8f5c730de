import { describe, expect, test } from 'vitest'
import { pencilLines } from '../../src/paper/arithmetic'
import { pencilCoupling } from '../../src/paper/arithmeticPage'
import { drawn } from '../../src/paper/job'
import { checkSum } from '../../src/paper/pencilCheck'
import { noMotion } from '../../src/mechanics/motion'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { sharesOf } from '../../src/mechanics/misalignment/shares'
import type { Coupling, Train } from '../../src/mechanics/train'
import { micrometresPer } from '../../src/mechanics/units'
import { centreRows, moveBeside, type CentreRow } from '../../src/paper/pencilCentre'
import { asFound } from '../../src/mechanics/readings/asFound'
import { bindingSentence } from '../../src/text/bindingWords'
import { readTrain } from '../../src/document/readTrain'
import { reverseDial } from '../cli/trains'
import { randomTrain } from '../second/randomTrain'
import { blocksOf, exampleNames, someExamples, exampleOf, made } from './sheets'
import { isWhole, counted } from '../counts'

describe('a line drawn by hand', () => {
  test.runIf(isWhole)('is that of the least squares, wherever two facts fix a plane', () => {
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

describe.each(someExamples)('the check of %s', (name) => {
  test('adds up to the share of the plan', async () => {
    const read = readTrain(exampleOf(name))
    if (!read.ok) throw new Error(name)
    const { answer } = await made(exampleOf(name))
    const job = drawn({ document: read.document, train: read.train, answer })
    const coupling = pencilCoupling(job)
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

describe('the coupling that is written out', () => {
  let compared = 0

  test.each(someExamples)(
    'of %s is the one whose machines move most, on different ground',
    async (name) => {
      const { job, train, coupling } = await written(name)
      const most = Math.max(
        ...train.couplings.filter(apart(train)).map((one) => moveBeside(job, one)),
      )
      expect(apart(train)(coupling)).toBe(true)
      expect(moveBeside(job, coupling)).toBeCloseTo(most, 1)
    },
  )

  test.each(someExamples)(
    'of %s is exact in its state after the moves to its centre',
    async (name) => {
      const { job, train, coupling, state } = await written(name)
      const rows = centreRows(job, coupling, state)
      const c = train.couplings.indexOf(coupling)
      for (const machine of new Set(rows.map((row) => row.machine))) {
        const own = rows.filter((row) => row.machine === machine)
        const [a, b] = [own[0], own.at(-1)]
        const body = train.machines[machine]
        if (!a || !b || !body || a.x === b.x) continue
        const by = ({ wanted, stands }: CentreRow, way: 'up' | 'side') => wanted[way] - stands[way]
        const slope = (way: 'up' | 'side') => (by(b, way) - by(a, way)) / (b.x - a.x)
        const motion = {
          ...{ tx: 0, roll: 0, sy: slope('side'), sz: slope('up') },
          ty: by(a, 'side') - slope('side') * (a.x - body.x0),
          tz: by(a, 'up') - slope('up') * (a.x - body.x0),
        }
        const motions = train.bodies.map((_, i) => (i === machine ? motion : noMotion))
        const exact = sharesOf(train, train.couplings.map(asFound), couplingMotions(train, motions))
        const row = exact.find((one) => one.coupling === c && one.state === state.id)
        for (const check of row?.checks ?? [])
          if (check.x === undefined) expect(check.share, `${name} ${body.name}`).toBeLessThan(1e-6)
      }
    },
  )

  test.each(someExamples)(
    'of %s is printed as it is worked out, beside what the plan puts at the feet',
    async (name) => {
      const { job, train, coupling, state, tables } = await written(name)
      const rows = centreRows(job, coupling, state)
      const own = tables.filter(({ columns }) => columns.at(-1)?.head === 'the plan moves it')
      expect(own).toHaveLength(
        rows.length === 0 || job.answer.status !== 'planned' ? own.length : 2,
      )
      const { answer } = job
      const step = { um: 0.1, mm: 0.001, mil: 0.01 }[train.units.fine]
      const per = micrometresPer[train.units.fine]
      for (const [t, table] of own.entries())
        for (const [r, cells] of table.rows.entries()) {
          const [wanted = NaN, stands = NaN, move = NaN, plan = NaN] = cells.slice(2).map(printed)
          // each is rounded by itself
          expect(Math.abs(wanted - stands - move)).toBeLessThan(1.6 * step)
          const row = rows[r]
          const machine = train.machines[row?.machine ?? -1]
          if (!row || !machine || answer.status !== 'planned' || machine.skid !== undefined)
            continue
          const feet = machine.rows.find(({ x }) => x === row.x)?.feet ?? []
          const told = feet.map((f) => {
            const at = machine.feet[f]
            const foot = answer.feet.find((one) => one.body === machine.id && one.foot === at?.id)
            return { y: at?.y ?? 0, value: (t === 0 ? foot?.shim : foot?.side) ?? 0 }
          })
          // feet on both sides of the middle: what they get alike is what the axis gets
          if (Math.abs(told.reduce((sum, { y }) => sum + y, 0)) > 1e-9) continue
          const mean = told.reduce((sum, { value }) => sum + value, 0) / told.length
          const roll = answer.bodies.find(({ id }) => id === machine.id)?.move.roll ?? 0
          if (Math.abs(roll) < 1e-9) compared++
          if (Math.abs(roll) < 1e-9)
            expect(plan).toBeCloseTo(mean / per, train.units.fine === 'um' ? 0 : 1)
        }
    },
  )

  test('was compared at enough feet', () => {
    expect(compared).toBeGreaterThan(counted(3, 20, 20))
  })
})

const apart =
  (train: Train) =>
  ({ left, right }: Coupling): boolean => {
    const skid = train.machines[left]?.skid
    return skid === undefined || skid !== train.machines[right]?.skid
  }

/** What is written out of an example. */
async function written(name: string) {
  const read = readTrain(exampleOf(name))
  if (!read.ok) throw new Error(name)
  const { answer, paper } = await made(exampleOf(name), 'a4', 'office')
  const { train, document } = read
  const job = drawn({ document, train, answer })
  const coupling = pencilCoupling(job)
  const state = coupling && checkSum(job, coupling)?.state
  if (!coupling || !state) throw new Error('no coupling')
  const tables = blocksOf(paper).flatMap((block) => (block.kind === 'table' ? [block] : []))
  return { job, train, coupling, state, tables }
}

test('the pencil page says why the plan stops short of the centre, with what more room would save', async () => {
  const { train, answer, paper } = await made(exampleOf('pump-and-motor'), 'a4', 'office')
  if (answer.status !== 'planned' || !answer.prices) throw new Error('no prices')
  const told = blocksOf(paper).flatMap((block) => (block.kind === 'list' ? [...block.items] : []))
  const priced = told.filter((item) => item.startsWith('What it costs: '))
  // the only coupling of two machines: the dearest limits of the whole plan are its own
  expect(priced).toEqual(
    answer.prices.slice(0, 3).map((one) => `What it costs: ${bindingSentence(train, one)}.`),
  )
  expect(priced.length).toBeGreaterThan(0)
  for (const text of priced) expect(text).toMatch(/saves [\d.]+ mil of moves/)
})
