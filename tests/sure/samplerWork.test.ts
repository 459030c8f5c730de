import { describe, expect, test } from 'vitest'
import { fourFeet, twoMachines } from '../second/pairs'
import { still } from '../second/sure/bodies'
import type { Foot } from '../second/train'
import { exact, firstOf, known, run, sameChance, sameSpread, spread, wide } from './handWorked'
import { phi, within } from './phi'
import { isWhole } from '../counts'

describe.runIf(isWhole)('work', () => {
  const tolerance = { offset: wide, angle: wide }
  const axial = { found: 5, want: 5, tolerance: 100, u: 0 }
  const pair = (right = {}, rest = {}) =>
    twoMachines(tolerance, [known(0, 0, exact)], right, rest, { axial })

  test('errs at every shim and slide of a body that moves, through the line of its rows', () => {
    const answer = run(pair(), { B: { ...still, tz: 100 } })
    const reach = Math.hypot(1.9, 0.9)
    sameSpread(spread(answer, 'offset').z, (10 / Math.SQRT2) * reach)
    sameSpread(spread(answer, 'offset').y, 20 * reach)
    sameSpread(spread(answer, 'angle').z, 10 / 1000)
    sameSpread(spread(answer, 'angle').y, (20 * Math.SQRT2) / 1000)
    // the axis stands 400 mm above the feet, in the middle
    sameSpread(spread(answer, 'gap').x, (400 * 10) / 1000 / 1000)
  })

  test('errs nowhere where nothing moves, and not once it has been read again', () => {
    const idle = run(pair(), { B: { ...still, tz: 0.09 } })
    expect(spread(idle, 'offset').z).toBeLessThan(1e-5)
    const moved = run(twoMachines({ offset: 20 }, [known(0, -50, 10)]), {
      B: { ...still, tz: 50 },
    })
    const reach = Math.hypot(1.9, 0.9)
    const blind = (u: number) => within(0, Math.hypot(10, u * reach), 20)
    sameChance(moved.all, blind(20) * blind(10 / Math.SQRT2))
    sameChance(moved.reread, within(0, 10, 20) ** 2)
    const found = within(0, 10, 20) * (phi(-3) - phi(-7))
    sameChance(moved.asFound, found)
  })

  test('errs at no foot that is keyed, and a row of one shim in two by half of it', () => {
    const feet = firstOf(fourFeet(), { free: { shim: false, side: false } })
    const answer = run(pair({ feet }, { plan: { sure: { shim: 30, slide: 40 } } }), {
      B: { ...still, tz: 100 },
    })
    sameSpread(spread(answer, 'offset').z, Math.hypot((1.9 * 30) / 2, (0.9 * 30) / Math.SQRT2))
    sameSpread(spread(answer, 'offset').y, 0.9 * 40)
  })

  test('errs by the place of a row through pitch and yaw together', () => {
    const plan = { sure: { shim: 0, slide: 0, foot: 5 } }
    const answer = run(pair({}, { plan }), { B: { ...still, sz: 2, sy: -1 } })
    sameSpread(spread(answer, 'offset').z, 2 * 5 * Math.hypot(1.9, 0.9))
    sameSpread(spread(answer, 'offset').y, 1 * 5 * Math.hypot(1.9, 0.9))
    sameSpread(spread(answer, 'angle').z, (2 * 5 * Math.SQRT2) / 1000)
  })

  test('on a skid is carried to its machines, at the height of their axes', () => {
    const feet = fourFeet()
    const skids = [{ id: 'S', name: 'Skid', carries: ['B'], feet }]
    const answer = run(pair({ held: true, base: 600 }, { skids }), { S: { ...still, tz: 100 } })
    sameSpread(spread(answer, 'offset').z, (10 / Math.SQRT2) * Math.hypot(1.9, 0.9))
    sameSpread(spread(answer, 'gap').x, (1000 * 10) / 1000 / 1000)
  })

  test('on one row of feet tilts nothing', () => {
    const feet = fourFeet().slice(0, 2)
    const answer = run(pair({ feet }), { B: { ...still, tz: 100 } })
    sameSpread(spread(answer, 'offset').z, 10 / Math.SQRT2)
    expect(spread(answer, 'angle').z).toBeLessThan(1e-5)
  })

  test('leaves a bolt in its hole by the chance of its own errors and its slide', () => {
    const holed = (hole: Foot['hole']) => firstOf(fourFeet(), { hole })
    let feet = holed({ clearance: 600, y: -100, u: 120 })
    const plan = { reserve: 150, sure: { slide: 0 } }
    const centred = run(pair({ feet }, { plan }), { B: { ...still, ty: 100 } })
    sameChance(centred.bolts, 1 - Math.exp(-(300 ** 2) / 2 / 120 ** 2))
    // known along the train, it stands off across it by its slide alone
    feet = holed({ clearance: 60, y: -90, u: 0 })
    const slid = run(pair({ feet }), { B: { ...still, ty: 100 } })
    sameChance(slid.bolts, within(10, 20, 30))
    expect(run(pair({ feet }), { B: { ...still, tz: 100 } }).bolts).toBeUndefined()
  })
})
