import { describe, expect, test } from 'vitest'
import { reverseDial } from './cases'
import { fourFeet, given, twoMachines } from './pairs'
import { solveSecond } from './solve'
import type { Foot, Machine, State, Train } from './train'

/** Own vertical and lateral move of a machine at x (document units). */
async function movedAt(train: Train, id: string, x: number) {
  const answer = await solveSecond(train)
  const feet = train.machines.find((m) => m.id === id)?.feet ?? []
  const x0 = feet.reduce((sum, f) => sum + f.x, 0) / feet.length
  const move = answer.bodies[id]
  if (!move) throw new Error(`no body ${id}`)
  return { up: move.tz + move.sz * (x - x0), side: move.ty + move.sy * (x - x0) }
}

async function costOf(train: Train): Promise<number> {
  const answer = await solveSecond(train)
  expect(answer.status).toBe('planned')
  return answer.cost
}

function feet(change: (f: Foot) => Partial<Foot>): Partial<Machine> {
  return { feet: fourFeet().map((f) => ({ ...f, ...change(f) })) }
}

const first = (more: Partial<Foot>) => feet((f) => (f.x === 1000 ? more : {}))

describe('numbers worked by hand', () => {
  test('reverse dials: 16 and 30 mil up, 28 and 36 mil toward 9 o’clock', async () => {
    const at12 = await movedAt(reverseDial(), 'right', 12)
    const at24 = await movedAt(reverseDial(), 'right', 24)
    expect(at12.up).toBeCloseTo(16, 2)
    expect(at24.up).toBeCloseTo(30, 2)
    expect(at12.side).toBeCloseTo(-28, 2)
    expect(at24.side).toBeCloseTo(-36, 2)
  })

  test('an offset is mended where it counts most: 90 um through the near pair', async () => {
    expect(await costOf(twoMachines({ offset: 10 }, [given(0, -100)]))).toBeCloseTo(180 / 1.9, 3)
  })

  test('flex: 100 um over a span of 200 mm is 0.5 mrad at both planes', async () => {
    const train = twoMachines({ flex: 0.3 }, [given(0, -100)])
    expect((await solveSecond(train)).asFoundShares).toEqual({ c: { cold: 0.5 / 0.3 } })
    expect(await costOf(train)).toBeCloseTo(80 / 1.8, 3)
  })

  test('a round tolerance takes both directions together', async () => {
    const found = [given(60, -80)]
    const round = await solveSecond(twoMachines({ offset: 100, shape: 'round' }, found))
    const box = await solveSecond(twoMachines({ offset: 100 }, found))
    expect([round.worstShare, box.worstShare]).toEqual([1, 0.8])
  })

  test('a foot row slides once, however many feet stand in it', async () => {
    const train = twoMachines({ offset: 10 }, [given(-100, 0)])
    expect(await costOf(train)).toBeCloseTo(90 / 1.9, 3)
  })

  test('a pack with 30 um left under the near pair sends the rest to the far pair', async () => {
    const right = first({ pack: { now: 1000, min: 970 } })
    const train = twoMachines({ offset: 10 }, [given(0, 100)], right)
    expect(await costOf(train)).toBeCloseTo(2 * (30 + 33 / 0.9), 3)
  })

  test('a pack that already breaks its limit stays where it is', async () => {
    const right = first({ pack: { now: 1000, min: 1200, max: 1300 } })
    const train = twoMachines({ offset: 10 }, [given(0, 100)], right)
    expect(await costOf(train)).toBeCloseTo(200, 3)
  })

  test('a lift of 30 um at the near pair', async () => {
    const train = twoMachines({ offset: 10 }, [given(0, -100)], first({ lift: 30 }))
    expect(await costOf(train)).toBeCloseTo(2 * (30 + 33 / 0.9), 3)
  })

  test('a pitch of at most 0.02 mrad', async () => {
    const train = twoMachines({ offset: 10 }, [given(0, -100)], { tilt: 0.02 })
    expect(await costOf(train)).toBeCloseTo(2 * (72 + 52), 3)
  })

  test('a hole of 80 um at the near pair, which a yaw also carries along the train', async () => {
    const train = twoMachines({ offset: 10 }, [given(100, 0)], first({ hole: { clearance: 80 } }))
    // g1 on the circle g1^2 + (30 + g1/3)^2 = 40^2, g2 = 100 + 19/9 g1
    const g1 = (-20 - Math.sqrt(400 + (40 / 9) * 700)) / (20 / 9)
    expect(await costOf(train)).toBeCloseTo(-g1 + (100 + (19 / 9) * g1), 3)
  })

  test('a reserve of 10 um makes the hole 20 um smaller', async () => {
    const wide = first({ hole: { clearance: 100 } })
    const plan = { plan: { reserve: 10 } }
    const reserved = twoMachines({ offset: 10 }, [given(100, 0)], wide, plan)
    const small = twoMachines({ offset: 10 }, [given(100, 0)], first({ hole: { clearance: 80 } }))
    expect(await costOf(reserved)).toBeCloseTo(await costOf(small), 3)
  })

  test('a keyed near pair leaves the far pair to do it', async () => {
    const train = twoMachines({ offset: 10 }, [given(0, -100)], first({ free: { shim: false } }))
    expect(await costOf(train)).toBeCloseTo(200, 3)
  })

  test('a restraint on the axis over the near pair', async () => {
    const restraints = [{ id: 'n', x: 1000, z: 400, rise: [-5, 30] as [number, number] }]
    const train = twoMachines({ offset: 10 }, [given(0, -100)], { restraints })
    expect(await costOf(train)).toBeCloseTo(2 * (30 + 33 / 0.9), 3)
  })
})

const hotAndCold: State[] = [
  { id: 'cold', name: 'Cold', tolerance: 2 },
  { id: 'hot', name: 'Hot' },
]

describe('states, growth, skids and roll by hand', () => {
  test('growth of 100 um in one of two states: the floor lies between', async () => {
    const growth = { hot: [{ at: 0, rise: 100 }] }
    const train = twoMachines({ offset: 50 }, [given(0, 0)], { growth }, { states: hotAndCold })
    // e / (2 * 50) = (100 - e) / 50
    expect((await solveSecond(train)).floor).toBeCloseTo(2 / 3, 8)
  })

  test('heat: 500 mm * 12e-6 * 50 degrees is 300 um', async () => {
    const heat = { height: 500, expansion: 12, from: 20, to: 70 }
    const growth = { hot: [{ at: 0, heat }] }
    const train = twoMachines({ offset: 50 }, [given(0, 0)], { growth }, { states: hotAndCold })
    expect((await solveSecond(train)).asFoundShares).toEqual({ c: { cold: 0, hot: 6 } })
  })

  test('an aim is taken off before the check', async () => {
    const aim = { cold: { offset: { z: 30 }, slope: { z: 0.1 } } }
    const found = [given(0, 50, 0, 0.1)]
    const train = twoMachines({ offset: 10, angle: 1 }, found, {}, {}, { aim })
    expect((await solveSecond(train)).asFoundShares).toEqual({ c: { cold: 2 } })
  })

  test('readings of 0 (u 10) and 100 (u 20) weigh to 20', async () => {
    const found = [given(0, 0), { ...given(0, 100), u: 20 }]
    const answer = await solveSecond(twoMachines({ offset: 10 }, found))
    expect(answer.asFoundShares.c?.cold).toBeCloseTo(2, 10)
  })

  test('a skid’s pitch carries a shaft 600 mm above its feet along the train', async () => {
    const skid = { id: 's', name: 'Skid', carries: ['B'], feet: fourFeet(), free: { side: false } }
    const train = twoMachines(
      { offset: 1e5 },
      [given(0, 0)],
      { base: 200, held: true },
      { skids: [skid] },
      { axial: { found: 100.1, want: 100, tolerance: 0.05 } },
    )
    const answer = await solveSecond(train)
    expect(answer.cost).toBeCloseTo((2 * 1000 * 50) / 600, 3)
    expect(answer.bodies.s?.sz).toBeCloseTo(50 / 600, 6)
    expect(answer.binding).toContain('axial gap')
  })

  test('one row of feet rolls: the foot under the shaft is raised, 4/3 of it shows', async () => {
    const right: Partial<Machine> = {
      axis: { left: { y: 500, z: 0 }, right: { z: 0 } },
      feet: fourFeet().filter((f) => f.x === 1000),
      free: { roll: true },
    }
    const answer = await solveSecond(twoMachines({ offset: 10 }, [given(0, -100)], right))
    expect(answer.cost).toBeCloseTo(67.5, 3)
    expect(answer.bodies.B?.roll).toBeCloseTo(67.5 / 600, 6)
    expect(answer.bodies.B?.sz).toBe(0)
  })

  test('nothing moves when the share is met as found, and nothing helps when all is held', async () => {
    const fine = await solveSecond(twoMachines({ offset: 100 }, [given(0, -100)]))
    expect([fine.status, fine.cost]).toEqual(['in-tolerance', 0])
    const held = await solveSecond(twoMachines({ offset: 10 }, [given(0, -100)], { held: true }))
    expect([held.status, held.floor]).toEqual(['impossible', 10])
  })
})
