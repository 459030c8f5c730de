import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { planTrain } from '../planned'
import { solver } from '../engine/pair'
import type { TrainFile } from './contract'
import { followed } from './followed'

it('orders the work of packs from the store: feet are told whole steps, every limit is kept on the way', () => {
  const file = JSON.parse(
    readFileSync(new URL('../../examples/piped-compressor.json', import.meta.url), 'utf8'),
  ) as TrainFile & { plan: object }
  const step = 25
  const shims = { step, stock: [25, 50, 100, 200, 500, 1000], most: 6 }
  const answer = planTrain({ ...file, plan: { ...file.plan, shims } }, solver, { reasons: false })
  if ('refused' in answer || !answer.steps) throw new Error('no steps')
  expect(answer.rounded?.status).toBe('rounded')
  const lifts = answer.steps.steps.filter(({ kind }) => kind === 'vertical')
  expect(lifts.length).toBeGreaterThan(0)
  for (const { body, feet } of lifts)
    for (const { foot, shim = NaN, packBefore = NaN, packAfter = NaN, use } of feet) {
      expect(Math.abs(shim / step - Math.round(shim / step))).toBeLessThan(1e-9)
      expect(packAfter - packBefore).toBeCloseTo(shim, 6)
      const pack = answer.packs?.find((row) => row.body === body && row.foot === foot)
      expect(use ?? []).toEqual(pack?.use ?? [])
    }
  const { by, standing, untold } = followed(file, answer.steps)
  expect(by).toBeLessThan(3e-3)
  expect(untold).toBeLessThan(1e-3)
  for (const { id, move } of answer.rounded?.bodies ?? [])
    expect(standing.get(id)?.tz ?? 0).toBeCloseTo(move.tz, 6)
})
