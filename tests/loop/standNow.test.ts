import { describe, expect, it } from 'vitest'
import { planTrain } from '../planned'
import { standNow, type Round } from '../../src/engine/fieldwork/loop/standNow'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { at, fourFeet, given, pair, solver, type Json } from '../engine/pair'
import { everyField } from '../entry/everyField'
import { footLimitList } from '../second/footLimits'
import { skidPair } from '../steps/skidPair'

const sign = { when: '2031-04-02', by: 'Ada' }

function stood(document: Json, round: Partial<Round>) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return standNow(read.document, read.train, {
    actuals: [],
    readings: [],
    sign,
    after: 'step 2',
    ...round,
  })
}

function documentOf(document: Json, round: Partial<Round>): TrainDocument {
  const answer = stood(document, round)
  if (!answer.ok) throw new Error(answer.why)
  expect(readTrain(answer.document).ok).toBe(true)
  return answer.document
}

const feet = fourFeet.map((foot) => ({
  ...foot,
  pack: { now: 1000, min: 200 },
  lift: 700,
  hole: { clearance: 2000, y: 50 },
}))
const lifted = (shim: number, side: number) =>
  fourFeet.map(({ id }) => ({ body: 'B', foot: id, shim, side }))
const reading = { coupling: 'c', set: 0, offset: { y: 5, z: 15 }, slope: { y: 0, z: 0.01 } }

describe('where the train stands now', () => {
  it('has packs after the actual shims, hole centres after the actual slides, lifts less what was used', () => {
    const document = documentOf(pair({ right: { feet }, found: [given(0, 300)] }), {
      actuals: [...lifted(-310, 120), ...lifted(10, 0)],
      readings: [reading],
    })
    const foot = at(at(document.machines, 1).feet, 0)
    expect(foot.pack).toEqual({ now: 700, min: 200 })
    expect(foot.lift).toBe(1000)
    expect(foot.hole).toEqual({ clearance: 2000, x: 0, y: 170 })
  })

  it('counts air gaps no more once their rotor has moved', () => {
    const airGaps = [{ id: 'end', at: 1200, top: 5000, three: 5000, bottom: 5000, nine: 5000 }]
    const document = pair({ right: { feet, stator: { airGaps } }, found: [given(0, 300)] })
    const after = (actuals: Round['actuals']) =>
      at(documentOf(document, { actuals, readings: [reading] }).machines, 1).stator
    expect(after(lifted(200, 0))).toEqual({ airGaps, use: false, why: 'measured before step 2' })
    expect(after([])).toEqual({ airGaps })
  })

  it('turns feet that stand aside along the train when one end slides', () => {
    // 200 um at 1000 mm, none at 2000: the pump turns -0.2 mrad, a foot 300 mm aside goes 60 along
    const actuals = fourFeet.map(({ id, x }) => ({
      body: 'B',
      foot: id,
      side: x === 1000 ? 200 : 0,
    }))
    const document = documentOf(pair({ right: { feet } }), { actuals, readings: [reading] })
    expect(at(at(document.machines, 1).feet, 0).hole).toEqual({ clearance: 2000, x: 60, y: 250 })
    expect(at(at(document.machines, 1).feet, 1).hole).toEqual({ clearance: 2000, x: -60, y: 250 })
  })

  it('has the new readings; the old ones stay, unused, and say why', () => {
    const document = documentOf(pair({ right: { feet }, found: [given(0, 300)] }), {
      actuals: lifted(-290, 0),
      readings: [reading],
    })
    const { found } = at(document.couplings, 0)
    expect(found).toHaveLength(2)
    expect(found[0]).toMatchObject({ use: false, why: 'read before step 2', offset: { z: 300 } })
    expect(found[1]).toMatchObject({ use: true, when: '2031-04-02', by: 'Ada', offset: { z: 15 } })
    const plan = planTrain(document, solver)
    expect('refused' in plan ? plan : plan.status).toBe('in-tolerance')
  })

  it('keeps readings that are only repeated in use together', () => {
    const document = documentOf(pair({ found: [given(0, 300)] }), {
      readings: [{ ...reading, offset: { y: 0, z: 320 }, slope: { y: 0, z: 0 } }],
      repeated: true,
    })
    const plan = planTrain(document, solver, { prices: false })
    expect('refused' in plan ? plan : at(plan.asFound, 0).offset.z).toBeCloseTo(310, 6)
  })

  it('is not planned from readings older than the move', () => {
    const answer = stood(pair({ right: { feet } }), { actuals: lifted(100, 0) })
    expect(answer).toMatchObject({ ok: false, unread: ['c'] })
    expect(stood(pair({ right: { feet } }), { actuals: lifted(0, 0) }).ok).toBe(true)
  })

  it('is not planned from half of what a coupling takes: a rim alone says nothing of the angle', () => {
    const rim = (at: number, rides: string): Json => ({
      kind: 'rim',
      rides,
      at,
      readings: [12, 3, 6, 9].map((hour) => [hour, 0]),
    })
    const file = pair({ right: { feet }, found: [rim(0, 'left'), rim(200, 'right')] })
    const turn = (set: number) => ({
      coupling: 'c',
      set,
      readings: [12, 3, 6, 9].map((hour): [number, number] => [hour, hour]),
    })
    const actuals = lifted(100, 0)
    expect(stood(file, { actuals, readings: [turn(0)] })).toMatchObject({ unread: ['c'] })
    expect(stood(file, { actuals, readings: [turn(0), turn(1)] }).ok).toBe(true)
  })

  it('is not planned from readings older than work under soft feet, whatever was put there', () => {
    const answer = stood(pair({ right: { feet } }), { softDone: ['B'] })
    expect(answer).toMatchObject({ ok: false, unread: ['c'] })
    const again = stood(pair({ right: { feet } }), { softDone: ['B'], readings: [reading] })
    expect(again.ok).toBe(true)
  })

  it('counts a skid that moved under its machine', () => {
    const actuals = ['500a', '500b', '2500a', '2500b'].map((foot) => ({
      body: 'S',
      foot,
      shim: 100,
    }))
    expect(stood(skidPair(), { actuals })).toMatchObject({ ok: false, unread: ['c'] })
  })

  it('has flanges with the room that is left, own move and skid together, and less tilt both ways', () => {
    const restraints = [{ id: 'flange', x: 1500, z: 0, rise: [-500, 500] as [number, number] }]
    const actuals = [
      ...['500a', '500b', '2500a', '2500b'].map((foot) => ({ body: 'S', foot, shim: 300 })),
      ...fourFeet.map(({ id, x }) => ({ body: 'B', foot: id, shim: x === 1000 ? -200 : 0 })),
    ]
    const document = documentOf(skidPair({ restraints, tilt: 0.5 }), {
      actuals,
      readings: [reading],
    })
    // up 300 with the skid, down 100 in the middle of the pump, which is pitched 0.2 mrad
    expect(at(document.machines, 1).restraints?.[0]?.rise).toEqual([-700, 300])
    expect(at(document.machines, 1).tilt).toBeCloseTo(0.3, 9)
  })

  it('takes a gap that was measured again, else what the moves make of it', () => {
    const axial = { found: 100, want: 100, tolerance: 0.5 }
    const file = pair({ coupling: { axial }, right: { feet, free: { axial: true } } })
    const actuals = fourFeet.map(({ id }) => ({ body: 'B', foot: id, axial: 300 }))
    const moved = documentOf(file, { actuals, readings: [reading] })
    expect(at(moved.couplings, 0).axial?.found).toBeCloseTo(100.3, 9)
    const measured = documentOf(file, { actuals, readings: [reading], gaps: { c: 100.28 } })
    expect(at(measured.couplings, 0).axial?.found).toBe(100.28)
  })

  it('forgets gaps under feet that were shimmed, and the order and work of the round, not its pages', () => {
    const record = { order: ['B:vertical'], work: [], pages: [], signs: [] }
    const soft = feet.map((foot) => ({ ...foot, soft: 80 }))
    const document = documentOf(pair({ right: { feet: soft }, rest: { record } }), {
      actuals: [{ body: 'B', foot: '1000a', shim: 80 }],
      readings: [reading],
      softDone: ['B'],
    })
    expect(at(at(document.machines, 1).feet, 0)).not.toHaveProperty('soft')
    expect(at(at(document.machines, 1).feet, 0).pack?.now).toBe(1080)
    expect(document.record).toEqual({ pages: [], signs: [] })
  })

  it('is in the units of the document', () => {
    const file = pair({ right: { feet }, rest: { units: { length: 'in', fine: 'mil' } } })
    const document = documentOf(file, { actuals: lifted(10, -4), readings: [reading] })
    const foot = at(at(document.machines, 1).feet, 0)
    expect([foot.pack?.now, foot.hole?.y]).toEqual([1010, 46])
  })

  it.each(footLimitList.filter(({ name, band }) => band && !name.endsWith('key')))(
    'leaves of a foot what the moves have not used: $name',
    ({ band }) => {
      const file = everyField()
      const move = { shim: -40, side: 25 }
      const [foot] = at(file.machines, 0).feet
      const actuals = at(file.machines, 0).feet.map(({ id }) => ({
        body: 'motor',
        foot: id,
        ...move,
      }))
      const again = at(file.couplings, 0).found.map((_, set) => ({ coupling: 'motor-gear', set }))
      const read = readTrain(file)
      if (!read.ok || !foot) throw new Error('not a sound train')
      const expected = read.train.couplings.map(({ found }) => found)
      const readings = again.map((one) => {
        const set = expected[0]?.[one.set]
        return {
          ...one,
          readings:
            set && 'readings' in set
              ? set.readings.map(({ hour, value }): [number, number] => [hour, value])
              : [],
        }
      })
      const now = standNow(read.document, read.train, { actuals, readings, sign, after: 'step 1' })
      if (!now.ok) throw new Error(now.why)
      const [before, after] = [band?.(foot), band?.(at(at(now.document.machines, 0).feet, 0))]
      if (!before || !after) throw new Error('everyField.ts gives the foot no such limit')
      const used = { z: move.shim, y: move.side }[before.way]
      expect(after.low).toBeCloseTo(before.low - used, 9)
      expect(after.high).toBeCloseTo(before.high - used, 9)
    },
  )
})
