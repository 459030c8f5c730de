import { describe, expect, it } from 'vitest'
import { settingFrom } from '../../src/document/edits/coldSetting'
import {
  copiedGrowth,
  newGrowthPoint,
  replacedBy,
  riseOf,
} from '../../src/document/edits/growthEdits'
import {
  goesWith,
  idFrom,
  renamedState,
  withState,
  withoutState,
} from '../../src/document/edits/stateEdits'
import { switchUnits } from '../../src/document/edits/switchUnits'
import type { GrowthPointDocument, TrainDocument } from '../../src/document/schema'

const inches = { length: 'in', fine: 'mil', temperature: 'F' } as const

function train(points: GrowthPointDocument[]): TrainDocument {
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'two',
    units: { ...inches },
    clock: { seenFrom: 'left' },
    machines: [
      {
        id: 'a',
        name: 'A',
        axis: { z: 20 },
        feet: [
          { id: '1', x: 10 },
          { id: '2', x: 40 },
        ],
        growth: { hot: points },
      },
      { id: 'b', name: 'B', axis: { z: 20 }, feet: [] },
    ],
    couplings: [
      {
        id: 'ab',
        left: { machine: 'a', plane: 50 },
        right: { machine: 'b', plane: 60 },
        tolerance: { flex: 0.5 },
        aim: { hot: { offset: { z: 1 } } },
        found: [],
      },
    ],
    states: [{ id: 'hot', name: 'Hot' }],
  }
}
const heat = { height: 17, expansion: 6.3, from: 78, to: 106 }
const growthIn = (document: TrainDocument, state: string) =>
  document.machines[0]?.growth?.[state] ?? []

describe('growth from height and temperature', () => {
  it('is 3.0 mil for 17 in from 78 to 106 F at 6.3e-6 per F (McMillan, example 8-3, pp. 149-153)', () => {
    expect(riseOf({ at: 0, heat }, inches)).toBeCloseTo(2.9988, 9)
    expect(riseOf({ at: 0, heat: { ...heat, height: 22, to: 138 } }, inches)).toBeCloseTo(8.316, 9)
  })

  it('adds to a given rise, and is open while a number lacks', () => {
    expect(riseOf({ at: 0, rise: 1, heat }, inches)).toBeCloseTo(3.9988, 9)
    expect(riseOf({ at: 0, heat: { height: 17 } } as GrowthPointDocument, inches)).toBeUndefined()
    expect(riseOf({ at: 0, rise: 2 }, inches)).toBe(2)
  })
})

describe('a state copied and scaled', () => {
  const document = train([
    { at: 10, rise: 4, side: -2, axial: 1, u: 0.5 },
    { at: 40, heat },
  ])
  it('scales lengths, and of heat only the warming', () => {
    const copied = copiedGrowth(document, 'hot', 'half', 0.5)
    expect(growthIn(copied, 'half')).toEqual([
      { at: 10, rise: 2, side: -1, axial: 0.5, u: 0.25 },
      { at: 40, heat: { ...heat, to: 92 } },
    ])
    expect(growthIn(copied, 'hot')).toBe(growthIn(document, 'hot'))
    expect(copied.machines[1]).toBe(document.machines[1])
  })

  it('is no measurement of the other state', () => {
    const by = { source: 'measured', when: '3 May', by: 'B. Hill', why: 'steady for 4 h' } as const
    const copied = copiedGrowth(train([{ at: 10, rise: 4, ...by }]), 'hot', 'half', 0.5)
    expect(growthIn(copied, 'half')).toEqual([{ at: 10, rise: 2, why: 'steady for 4 h' }])
  })

  it('gives the same growth in every unit: scaled and converted, or converted and scaled', () => {
    const to = { length: 'mm', fine: 'um', temperature: 'C' } as const
    const one = switchUnits(copiedGrowth(document, 'hot', 'half', 0.6), to)
    const other = copiedGrowth(switchUnits(document, to), 'hot', 'half', 0.6)
    const rises = (from: TrainDocument) => growthIn(from, 'half').map((point) => riseOf(point, to))
    // 2.9988 mil x 0.6 x 25.4 um
    expect(rises(one)[1]).toBeCloseTo(45.7017, 3)
    rises(one).forEach((rise, i) => {
      expect(rises(other)[i]).toBeCloseTo(rise ?? NaN, 6)
    })
  })

  it('turned round keeps its uncertainty above 0, and what it would replace is counted', () => {
    const turned = copiedGrowth(document, 'hot', 'half', -1)
    expect(growthIn(turned, 'half')[0]).toMatchObject({ rise: -4, u: 0.5 })
    expect(replacedBy(document, 'hot', 'half')).toBe(0)
    expect(replacedBy(turned, 'hot', 'half')).toBe(1)
  })

  it('can be of one machine', () => {
    expect(copiedGrowth(document, 'hot', 'half', 0.5, 'b')).toEqual(document)
  })
})

describe('states', () => {
  const document = train([{ at: 10, rise: 4 }])
  it('get ids from their names, each once', () => {
    expect(idFrom('Full load, été', [], 'state')).toBe('full-load-ete')
    expect(idFrom('Hot', ['hot'], 'state')).toBe('hot-2')
    expect(idFrom('***', [], 'state')).toBe('state')
    expect(withState(document, 'Hot').states?.map(({ id }) => id)).toEqual(['hot', 'hot-2'])
  })

  it('keep growth and aims through a new name', () => {
    const renamed = renamedState(document, 0, 'Full load')
    expect(renamed.states).toEqual([{ id: 'full-load', name: 'Full load' }])
    expect(growthIn(renamed, 'full-load')).toEqual([{ at: 10, rise: 4 }])
    expect(Object.keys(renamed.couplings[0]?.aim ?? {})).toEqual(['full-load'])
    expect(renamedState(renamed, 0, 'Hot')).toEqual(document)
  })

  it('keep an id that somebody chose', () => {
    const chosen = { ...document, states: [{ id: 'hot', name: 'Full load' }] }
    expect(renamedState(chosen, 0, 'Half load').states).toEqual([{ id: 'hot', name: 'Half load' }])
  })

  it('go with their growth and aims, and say so', () => {
    expect(goesWith(document, 'hot')).toBe(
      'the growth of 1 machine in it and the aim of 1 coupling',
    )
    const without = withoutState(document, 0)
    expect('states' in without).toBe(false)
    expect('growth' in (without.machines[0] ?? {})).toBe(false)
    expect('aim' in (without.couplings[0] ?? {})).toBe(false)
  })

  it('that lie between others follow their names, and lie nowhere once one of them is gone', () => {
    const states = [
      { id: 'hot', name: 'Hot', load: 100 },
      { id: 'idle', name: 'Idle', load: 0 },
      {
        id: 'half',
        name: 'Half',
        load: 50,
        between: { from: 'idle', to: 'hot', by: 'load' as const },
      },
    ]
    const three = { ...document, states }
    expect(renamedState(three, 0, 'Full load').states?.[2]?.between).toEqual({
      from: 'idle',
      to: 'full-load',
      by: 'load',
    })
    expect(goesWith(three, 'idle')).toBe('what is taken between it and another for Half')
    expect(withoutState(three, 1).states?.[1]).toEqual({ id: 'half', name: 'Half', load: 50 })
    expect(withoutState(three, 2).states).toEqual(states.slice(0, 2))
  })

  it('begin a point at the middle of the feet, or nowhere', () => {
    const [a, b] = document.machines
    expect(a && newGrowthPoint(a)).toEqual({ at: 25 })
    expect(b && newGrowthPoint(b).at).toBeUndefined()
  })
})

describe("a maker's cold setting", () => {
  const units = { length: 'mm', fine: 'mm', temperature: 'C' } as const
  it('of the left machine turns sign: driver 0.25 high is the driven 0.25 low', () => {
    expect(settingFrom({ subject: 'left', high: 0.25, toThree: 0.1 }, units)).toEqual({
      offset: { y: -0.1, z: -0.25 },
    })
    expect(settingFrom({ subject: 'right', high: 0.25 }, units)).toEqual({ offset: { z: 0.25 } })
  })

  it('open at the top falls to the right, whoever is described: 0.1 mm over 200 mm is -0.5 mrad', () => {
    const open = { openTop: 0.1, openThree: -0.04, diameter: 200 }
    for (const subject of ['left', 'right'] as const)
      expect(settingFrom({ subject, ...open }, units)).toEqual({ slope: { y: 0.2, z: -0.5 } })
    // 2 mil over 10 in
    expect(settingFrom({ subject: 'left', openTop: 2, diameter: 10 }, inches)).toEqual({
      slope: { z: -0.2 },
    })
  })
})
