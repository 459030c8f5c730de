import { answerJson, type AnswerJson } from '../../src/json/answerJson'
import { stepsJson } from '../../src/json/stepsJson'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planRead, stepsFor } from '../planned'
import { readTrain } from '../../src/document/readTrain'
import { solver } from '../engine/pair'
import { changeAt, slopeScale, sweepAt, type TrainFile } from './contract'
import { followed } from './followed'
import { onJacks } from './onJacks'

const folder = new URL('../../examples/', import.meta.url)
const files = readdirSync(folder).filter((name) => name.endsWith('.json'))

/** A limit may be passed by 1e-3 um in a plan, and numbers are written with 12 digits. */
const allowed = { um: 3e-3, mm: 3e-6, mil: 1.2e-4 }

describe.each(files)('the order of work of %s', (name) => {
  const file = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as TrainFile
  const read = readTrain(file)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const plan = planRead(read.train, solver, { prices: false })
  const order = stepsFor(read, plan)
  if (!order) throw new Error('no steps')
  const answer: AnswerJson = answerJson(plan, read.train)
  const steps = stepsJson(order, read.train.units)

  it('keeps every limit on the way, pose by pose, by other code, or says what being lifted passes', () => {
    const { by, what, step } = followed(file, steps)
    const told = steps.breaks.filter(({ limit }) => limit !== 'stage').map((one) => one.by)
    const over = Math.abs(by - Math.max(0, ...told))
    expect({ over: over < allowed[file.units.fine] ? 0 : over, what, step }).toMatchObject({
      over: 0,
    })
    // where nothing is passed where it ends, less room to slip shims keeps it
    for (const one of steps.breaks) expect(one.slip, one.words).toBeGreaterThan(0)
  })

  it('ends where the plan does, and tells the feet what takes them there', () => {
    const { standing, untold } = followed(file, steps)
    for (const { id, move } of answer.bodies ?? [])
      for (const [key, value] of Object.entries({ ...move }))
        expect(standing.get(id)?.[key as keyof typeof move] ?? 0).toBeCloseTo(value, 6)
    expect(untold).toBeLessThan(1e-6)
  })

  it('says what every changed coupling shows after each step', () => {
    const steady = new Map(
      answer.asFound.map(({ coupling, at, offset, slope }) => [coupling, { at, offset, slope }]),
    )
    const standing = new Map<
      string,
      Parameters<typeof changeAt>[2] extends ReadonlyMap<string, infer M> ? M : never
    >()
    const k = slopeScale(file)
    for (const step of steps.steps) {
      for (const { id, move } of step.standing) standing.set(id, move)
      for (const entry of step.expected) {
        const c = file.couplings.findIndex(({ id }) => id === entry.coupling)
        const coupling = file.couplings[c]
        const was = steady.get(entry.coupling)
        const set = coupling?.found[entry.set]
        if (!coupling || !was || !set) throw new Error(`${entry.coupling} is not in the file`)
        const line = (x: number) => {
          const { offset, slope } = changeAt(file, c, standing, x)
          const [sy, sz] = [was.slope.y * k, was.slope.z * k]
          return {
            offset: [
              offset[0] + was.offset.y + sy * (x - was.at),
              offset[1] + was.offset.z + sz * (x - was.at),
            ] as [number, number],
            slope: [slope[0] + sy, slope[1] + sz] as [number, number],
          }
        }
        if (!('readings' in entry)) {
          const { offset, slope } = line(set.at ?? 0)
          expect([entry.offset.y, entry.offset.z]).toEqual(
            offset.map((v) => expect.closeTo(v, 5) as number),
          )
          expect([entry.slope.y * k, entry.slope.z * k]).toEqual(
            slope.map((v) => expect.closeTo(v, 7) as number),
          )
          continue
        }
        const planes = { p: coupling.left.plane, q: coupling.right.plane }
        const plain = entry.readings.map(([hour]) => sweepAt(set, planes, line, hour))
        const shown = entry.readings.map(([, value]) => value)
        for (const [i, value] of shown.entries())
          expect(value - (shown[0] ?? 0)).toBeCloseTo((plain[i] ?? 0) - (plain[0] ?? 0), 5)
      }
    }
  })

  it('lifts every foot clear of its packs, and no end by more than the stage ahead of the other', () => {
    const slack = allowed[file.units.fine]
    for (const { step, lacks, below, ahead, ends, told } of onJacks(file, steps)) {
      const passed = steps.breaks.find((one) => one.step === step && one.limit === 'stage')
      expect(Math.max(lacks, below, ends, told), step).toBeLessThan(slack)
      expect(Math.abs(ahead - (passed?.by ?? 0)), step).toBeLessThan(slack)
    }
  })

  it('says that nothing is moved exactly where the plan moves nothing', () => {
    expect(steps.steps.length === 0).toBe(answer.status === 'in-tolerance')
    if (steps.steps.length === 0) expect(steps.words).toMatch(/^Nothing is moved/)
  })
})
