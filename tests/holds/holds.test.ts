import { describe, expect, it } from 'vitest'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { holdJson } from '../../src/json/holdsJson'
import { holdRows } from '../../src/engine/studies/holds/holdRows'
import type { HoldRow } from '../../src/engine/studies/holds/row'
import { planTrain } from '../planned'
import type { TrainDocument } from '../../src/document/schema'
import { micrometresPer } from '../../src/mechanics/units'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomTrain } from '../second/randomTrain'
import { exampleFile, read } from './choice'
import { longTrain } from './longTrain'
import { isWhole } from '../counts'

const solver = await glpkSolver()

/** The file with exactly these bodies held. */
function fileHolding(document: TrainDocument, held: readonly string[]): TrainDocument {
  const choose = <Body extends { id: string }>(body: Body) => ({
    ...body,
    held: held.includes(body.id),
  })
  return {
    ...document,
    machines: document.machines.map(choose),
    ...(document.skids && { skids: document.skids.map(choose) }),
  }
}

function rowsOf(document: TrainDocument, prices: boolean): HoldRow[] {
  return [...holdRows(new HoldSolver(read(document), solver), { prices })].map(({ row }) => row)
}

/** A row says what the plan of a file of its own says, but for the last digits. */
function agrees(document: TrainDocument, told: HoldRow, what: string): void {
  const row = holdJson(told, read(document))
  const alone = fileHolding(document, row.held)
  const answer = planTrain(alone, solver, { reasons: false, prices: row.binding !== undefined })
  if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
  const near = (a: number | null | undefined, b: number | null | undefined, name: string) => {
    const apart = Math.abs((a ?? 0) - (b ?? 0))
    expect(apart, `${what} ${name}: ${a} for ${b}`).toBeLessThanOrEqual(
      1e-7 * Math.abs(b ?? 0) + 1e-7,
    )
  }
  expect(row.status, what).toBe(answer.status)
  expect([...row.held].sort(), what).toEqual([...answer.held].sort())
  near(row.floor, answer.floor, 'floor')
  near(row.cost, answer.cost, 'cost')
  near(row.worstShare, answer.worstShare, 'worst share')
  for (const way of ['shim', 'side', 'axial'] as const)
    near(row.total?.[way], answer.total?.[way], way)
  const moved = new Map<string, number>()
  const fine = micrometresPer[document.units.fine]
  for (const { body, shim, side, axial } of answer.feet ?? [])
    moved.set(body, Math.max(moved.get(body) ?? 0, Math.hypot(shim, side, axial) * fine))
  const disturbed = [...moved].filter(([, by]) => by > 0.1).map(([id]) => id)
  expect([...row.disturbed].sort(), what).toEqual(disturbed.sort())
  const bodies = [...document.machines, ...(document.skids ?? [])]
  const effort = bodies
    .filter(({ id }) => disturbed.includes(id))
    .reduce((sum, body) => sum + (body.effort ?? 0), 0)
  if (row.cost !== undefined) near(row.costWithEffort, row.cost + effort, 'cost with effort')
  if (!row.binding) return
  expect(row.binding.length, what).toBe(answer.binding?.length ?? 0)
  row.binding.forEach((limit, i) => {
    const other = answer.binding?.[i]
    near(limit.price, other?.price, `price of ${limit.where}`)
    expect(limit.where).toBe(other?.where)
  })
}

describe('all choices in one go', () => {
  it.runIf(isWhole)(
    'agree with a file of its own for every choice of a train of six',
    () => {
      const document = longTrain(6)
      const rows = rowsOf(document, false)
      expect(rows).toHaveLength(64)
      for (const row of rows) agrees(document, row, `holding ${row.held.join(' ')}`)
      expect(rows.filter(({ status }) => status === 'planned').length).toBeGreaterThan(10)
    },
    600_000,
  )

  it.each(['piped-compressor', 'pump-and-motor'])(
    'agree with a file of its own for every choice of %s, prices included',
    (name) => {
      const document = exampleFile(name) as TrainDocument
      for (const row of rowsOf(document, true))
        agrees(document, row, `holding ${row.held.join(' ')}`)
    },
  )

  it.runIf(isWhole)('agree for random trains, with skids, keys, anchors and box tolerances', () => {
    const counts = new Map<string, number>()
    const count = (what: string) => counts.set(what, (counts.get(what) ?? 0) + 1)
    for (let seed = 801; seed <= 830; seed++) {
      const document = randomTrain(seed) as TrainDocument
      if (document.machines.length + (document.skids?.length ?? 0) > 4) continue
      for (const row of rowsOf(document, false)) {
        agrees(document, row, `seed ${seed} holding ${row.held.join(' ')}`)
        count(row.status)
      }
      if (document.skids) count('skid')
      const bodies = [...document.machines, ...(document.skids ?? [])]
      if (bodies.some(({ anchored }) => anchored !== undefined)) count('anchored')
    }
    for (const what of ['planned', 'impossible', 'in-tolerance', 'skid', 'anchored'])
      expect(counts.get(what) ?? 0, what).toBeGreaterThan(0)
  })
})

describe('the list of choices', () => {
  it('begins with what is held now, then nothing, then each body alone', () => {
    const train = read(exampleFile('bolt-bound-gearbox'))
    const rows = holdRows(new HoldSolver(train, solver), { prices: false })
    const held = Array.from({ length: 5 }, () => {
      const next = rows.next()
      return next.done ? undefined : next.value.row.held.join(' ')
    })
    expect(held).toEqual(['low-stage', '', 'turbine', 'gear', 'high-stage'])
  })

  it('says how far it is, and can be left at any row', () => {
    const train = read(exampleFile('bolt-bound-gearbox'))
    const seen: (readonly [number, number | undefined])[] = []
    for (const { done, total } of holdRows(new HoldSolver(train, solver), { prices: false })) {
      seen.push([done, total])
      if (done === 3) break
    }
    expect(seen).toEqual([
      [1, 16],
      [2, 16],
      [3, 16],
    ])
  })

  it('holds what is anchored in every choice', () => {
    const document = exampleFile('pump-and-motor') as TrainDocument
    const rows = rowsOf(document, false)
    expect(rows.map(({ held }) => held)).toEqual([['pump'], ['motor', 'pump']])
  })

  it('solves each part once: a train of eight has 36 parts for its 256 choices', () => {
    let calls = 0
    const counting = {
      ...solver,
      solve: (...args: Parameters<typeof solver.solve>) => {
        calls++
        return solver.solve(...args)
      },
    }
    const holds = new HoldSolver(read(longTrain(8)), counting)
    const rows = [...holdRows(holds, { prices: false })]
    expect(rows).toHaveLength(256)
    const first = calls
    expect([...holdRows(holds, { prices: false })]).toEqual(rows)
    expect(calls).toBe(first)
    // 36 parts of about 20 programs each; 256 choices by themselves would take some 4,000
    expect(first).toBeLessThan(1500)
  }, 600_000)

  it('is the same twice, byte for byte', () => {
    const document = exampleFile('base-bound-motor') as TrainDocument
    expect(JSON.stringify(rowsOf(document, true))).toBe(JSON.stringify(rowsOf(document, true)))
  })
})
