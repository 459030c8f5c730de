import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { findingsOf } from '../../src/engine/plan/findings'
import { standNow } from '../../src/engine/fieldwork/loop/standNow'
import { orderOfWork } from '../../src/engine/fieldwork/steps/orderOfWork'
import { holdsOf } from '../../src/engine/studies/holds/holdRows'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { drawPins, pinsAfter, pinsOut } from '../../src/language/pinWords'
import { at, fourFeet, given, pair, solver, trainOf, type Json } from '../engine/pair'

type Pins = readonly Json[]
const withPins = (pins: Pins): Json => pair({ right: { pins } })
const body = (pins: Pins) => at(trainOf(withPins(pins)).bodies, 1)

describe('dowels and key blocks', () => {
  const stepsOf = (document: Json, motion: Partial<Motion>) => {
    const train = trainOf(document)
    const motions = train.bodies.map(({ id }) => ({ ...noMotion, ...(id === 'B' ? motion : {}) }))
    return orderOfWork(train, train.couplings.map(asFound), motions).steps
  }

  it('are drawn before the first bolt is loosened, once, and stay out after the last reading', () => {
    const steps = stepsOf(withPins([{ id: 'road' }, { id: 'tank', kind: 'key' }]), {
      tz: 400,
      ty: 300,
    })
    const drawn = steps.flatMap(({ before }, i) =>
      before.flatMap((words, line) => (words.startsWith('Draw ') ? [{ i, line, words }] : [])),
    )
    expect(drawn).toEqual([
      {
        i: 0,
        line: 1,
        words:
          'Draw dowel road and key block tank of the pump while its bolts are tight, and mark each and where it goes.',
      },
    ])
    expect(steps[0]?.before.map((words) => words.split(' ')[0])).toEqual([
      'Open,',
      'Draw',
      'Loosen',
    ])
    expect(steps.at(-1)?.kind).toBe('read')
    expect(steps.at(-1)?.words).toMatch(
      /Leave dowel road and key block tank out until the hot check agrees; then fit them anew, the holes of dowels reamed\.$/,
    )
  })

  it('that are out already are drawn by nobody, and told in every answer', () => {
    expect(drawPins(body([{ id: 'road', now: 'out' }]))).toEqual([])
    expect(pinsOut(body([{ id: 'a' }, { id: 'b', now: 'out' }, { id: 'c', now: 'ream' }]))).toEqual(
      [
        'dowel b of the pump is out: fit it once the hot check agrees',
        'dowel c of the pump is out: ream its hole anew and fit it once the hot check agrees',
      ],
    )
    expect(pinsAfter(body([]))).toEqual([])
    const train = trainOf(withPins([{ id: 'b', now: 'out' }]))
    expect(findingsOf(train, train.couplings.map(asFound))).toContainEqual({
      where: 'machines[1].pins',
      what: 'dowel b of the pump is out: fit it once the hot check agrees',
    })
  })

  it('of a machine that is not moved say nothing in the steps', () => {
    expect(stepsOf(withPins([{ id: 'road' }]), {})).toEqual([])
  })

  it('need a new hole once their machine has moved, and not before', () => {
    const document = pair({
      right: {
        pins: [{ id: 'road' }, { id: 'tank', now: 'out' }],
        feet: fourFeet.map((foot) => ({ ...foot, pack: { now: 1000, min: 200 } })),
      },
    })
    const read = readTrain(document)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const pinsAfterMove = (shim: number) => {
      const stood = standNow(read.document, read.train, {
        actuals: fourFeet.map(({ id }) => ({ body: 'B', foot: id, shim, side: 0 })),
        readings: [{ coupling: 'c', set: 0, offset: { y: 5, z: 15 }, slope: { y: 0, z: 0.01 } }],
        sign: { when: '2031-04-02', by: 'Ada' },
        after: 'step 2',
      })
      if (!stood.ok) throw new Error(stood.why)
      return stood.document.machines[1]?.pins?.map(({ now = 'in' }) => now)
    }
    expect(pinsAfterMove(0)).toEqual(['in', 'out'])
    expect(pinsAfterMove(250)).toEqual(['ream', 'ream'])
  })

  it('cost their effort where choices are ranked, as long as they are in', () => {
    // the motor alone is fixed, so the pump is disturbed: its own effort and that of the pin that is in
    const effortOf = (pins: Pins) => {
      const train = trainOf(pair({ right: { pins, effort: 100 }, found: [given(400, 0)] }))
      const { rows } = holdsOf(train, solver, { prices: false, bodies: 2 })
      const row = rows.find(({ disturbed }) => disturbed.join() === 'B')
      if (row?.status !== 'planned') throw new Error('no plan that moves the pump alone')
      return row.costWithEffort - row.cost
    }
    expect(effortOf([])).toBeCloseTo(100, 6)
    expect(
      effortOf([
        { id: 'road', effort: 60 },
        { id: 'tank', effort: 30, now: 'out' },
      ]),
    ).toBeCloseTo(160, 6)
  })
})
