import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { linesAtStop } from '../../src/mechanics/hotCheck/atStop'
import { paperOf } from '../../src/paper/paperOf'
import { workSheet } from '../../src/paper/workSheet'
import { coolingChart } from '../../src/scene/coolingChart'
import type { Mark } from '../../src/scene/drawings/marks'
import { glpkSolver } from '../../src/solvers/glpk'

const example = JSON.parse(readFileSync('examples/hot-check.json', 'utf8')) as TrainDocument

function chartOf(document: TrainDocument) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const [check] = read.train.hotChecks
  if (!check) throw new Error('no hot check')
  return {
    train: read.train,
    lines: linesAtStop(read.train, check),
    chart: coolingChart(read.train, check, 560),
  }
}

/** Every number in the path of a mark. */
const numbersIn = (mark: Mark) =>
  mark.kind === 'path' ? (mark.d.match(/-?[\d.]+/g) ?? []).map(Number) : []
const dots = (marks: readonly Mark[], look: string) =>
  marks.flatMap((mark) => (mark.kind === 'circle' && mark.look === look ? [mark] : []))

describe('the readings after a stop over time', () => {
  const { lines, chart } = chartOf(example)
  if (!chart) throw new Error('no chart')

  test('stand on one scale: as far apart up the page as they are in height, and in time along it', () => {
    const solid = dots(chart.marks, 'solid')
    const read = lines.flatMap(({ times }) => times)
    expect(solid).toHaveLength(read.length)
    // one coupling below the other: compared within each
    let from = 0
    for (const { times } of lines) {
      const own = solid.slice(from, from + times.length)
      from += times.length
      const [first, last] = [times[0], times.at(-1)]
      const [low, high] = [own[0], own.at(-1)]
      if (!first || !last || !low || !high) throw new Error('two readings at least')
      const perMinute = (high.x - low.x) / (last.after - first.after)
      const perMicrometre = (low.y - high.y) / ((last.numbers[2] ?? 0) - (first.numbers[2] ?? 0))
      expect(perMicrometre).toBeGreaterThan(0)
      for (const [i, { after, numbers }] of times.entries()) {
        expect(own[i]?.x).toBeCloseTo(low.x + perMinute * (after - first.after), 1)
        const height = perMicrometre * ((numbers[2] ?? 0) - (first.numbers[2] ?? 0))
        expect(own[i]?.y).toBeCloseTo(low.y - height, 1)
      }
    }
  })

  test('are joined by a curve that starts at what is told of the stop and loses an equal part in equal times', () => {
    const hollow = dots(chart.marks, 'outline')
    expect(hollow).toHaveLength(lines.length)
    const curves = chart.marks.filter(
      (mark) =>
        mark.kind === 'path' && mark.look === 'fine' && !mark.dash && numbersIn(mark).length > 20,
    )
    expect(curves).toHaveLength(lines.length)
    for (const [c, curve] of curves.entries()) {
      const heights = numbersIn(curve).filter((_, i) => i % 2 === 1)
      expect(heights[0]).toBeCloseTo(hollow[c]?.y ?? NaN, 1)
      const { cooling } = { cooling: undefined, ...lines[c] }
      if (cooling?.time === undefined) throw new Error('the example cools by a time constant')
      // Newton's law: what is left after each piece is the same part of what was left before it
      const pieces = heights.length - 1
      const last = Math.max(...lines.flatMap(({ times }) => times.map(({ after }) => after)))
      const part = Math.exp(-last / pieces / cooling.time)
      for (let i = 2; i <= pieces; i++) {
        const [a = 0, b = 0, now = 0] = heights.slice(i - 2, i + 1)
        expect(Math.abs(now - b - part * (b - a))).toBeLessThan(0.03)
      }
    }
  })

  test('are left away where nothing was read after the stop', () => {
    const [check] = example.hotChecks ?? []
    if (!check) throw new Error('no hot check')
    const couplings = check.couplings?.map((one) => ({
      ...one,
      times: one.times.slice(0, 1).map((time) => ({ ...time, after: 0 })),
    }))
    expect(chartOf({ ...example, hotChecks: [{ ...check, couplings }] }).chart).toBeUndefined()
  })

  test('stand in the print for the office with every sentence of the check', async () => {
    const read = readTrain(example)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const sheet = workSheet(read, await glpkSolver(), { size: 'a4', print: 'office' })
    if (sheet.status === 'stopped') throw new Error(sheet.why)
    const text = JSON.stringify(paperOf(sheet.job, { size: 'a4', print: 'office' })).replaceAll(
      '\u00a0',
      ' ',
    )
    for (const said of [
      'Hot check: June, full load',
      'In “full load” turbine to compressor ran at 161 %',
      'carried back to the stop',
      'hollow: carried back to the stop',
    ])
      expect(text).toContain(said)
  })
})
