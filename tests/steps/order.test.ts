import { describe, expect, it } from 'vitest'
import { type Motion, noMotion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { stepsJson, type StepsJson } from '../../src/json/stepsJson'
import { orderOfWork, type OrderOptions } from '../../src/engine/fieldwork/steps/orderOfWork'
import { at, fourFeet, given, pair, trainOf, type Json } from '../engine/pair'
import { followed, withStop } from './followed'
import { worstPassed, type Move, type TrainFile } from './contract'
import { skidPair } from './skidPair'

/** Steps for motions of the bodies by id. */
function stepsOf(
  document: Json,
  moves: Record<string, Partial<Motion>>,
  options: OrderOptions = {},
): StepsJson {
  const train = trainOf(document)
  const motions = train.bodies.map(({ id }) => ({ ...noMotion, ...moves[id] }))
  return stepsJson(orderOfWork(train, train.couplings.map(asFound), motions, options), train.units)
}

const stepOf = (steps: StepsJson, id: string) => {
  const step = steps.steps.find((entry) => entry.id === id)
  if (!step) throw new Error(`no step ${id}`)
  return step
}

const holes = (clearance: number, x = 0, y = 0) =>
  fourFeet.map((foot) => ({ ...foot, hole: { clearance, x, y } }))

describe('a body on its jacks', () => {
  const whys = (document: Json, motion: Partial<Motion>) =>
    stepOf(stepsOf(document, { B: motion }), 'B:vertical').poses.map(({ why }) => why)

  it('goes up and down end by end, none ahead by more than a stage beyond its own change', () => {
    // 1200 um at 1000 mm and 800 at 2000: own lean 400, so the left end may be ahead by 900, the right one by 500.
    // Clear of the packs, old and new, with 1 mm to slip shims: 2200 and 1800.
    const steps = stepsOf(pair(), { B: { tz: 1000, sz: -0.4 } })
    const step = stepOf(steps, 'B:vertical')
    expect(step.poses.map(({ why }) => why)).toEqual([
      'as it stands',
      'left end up to +900 µm',
      'right end up to +1400 µm',
      'left end up to +2200 µm: room to change the packs of feet 1000a and 1000b',
      'right end up to +1800 µm: room to change the packs of feet 2000a and 2000b',
      'left end down to +1300 µm',
      'right end down to +800 µm',
      'left end down to +1200 µm: it stands on its packs',
    ])
    // 900 um on the left end alone: 450 in the middle, falling 0.9 mrad
    expect(step.poses[1]?.move).toEqual({ tx: 0, ty: 0, tz: 450, sy: 0, sz: -0.9, roll: 0 })
    expect(step.stops).toEqual({ count: 7, each: 1400, first: 'left' })
    expect(step.feet.map(({ shim }) => shim)).toEqual([1200, 1200, 800, 800])
    expect(step.words).toBe(
      'Shim the pump: put in 1200 µm under feet 1000a and 1000b; put in 800 µm under feet 2000a and 2000b. Jack one end at a time, the left end first, none more than 900 µm ahead of the other.',
    )
  })

  it('is told the lifts of its poses and no others', () => {
    const told = (document: Json, motion: Partial<Motion>) =>
      stepOf(stepsOf(document, { B: motion }), 'B:vertical')
    const lifts = (document: Json, motion: Partial<Motion>) =>
      told(document, motion).feet.map(({ lift }) => lift)
    expect(lifts(pair(), { tz: 1000, sz: -0.4 })).toEqual([2200, 2200, 1800, 1800])
    // what only comes out needs room to be slipped
    expect(lifts(pair(), { tz: -300 })).toEqual([1000, 1000, 1000, 1000])
    const tight = pair({ rest: { plan: { slip: 400 } } })
    expect(lifts(tight, { tz: -300 })).toEqual([400, 400, 400, 400])
    // the numbers stand in the moves of the jacks alone
    const { cautions } = told(tight, { tz: -300 })
    expect(cautions).toContain(
      'Lift no higher than the jacking says. A block beside each jack, no hand between foot and base; slip shims with a tool.',
    )
  })

  it('lifts one end after the other where a stage lets it', () => {
    // 300 um and 400 to slip them: 700, within a stage of 800
    expect(whys(pair({ rest: { plan: { slip: 400, stage: 800 } } }), { tz: 300 })).toEqual([
      'as it stands',
      'left end up to +700 µm: room to change the packs of feet 1000a and 1000b',
      'right end up to +700 µm: room to change the packs of feet 2000a and 2000b',
      'left end down to +300 µm',
      'right end down to +300 µm: it stands on its packs',
    ])
  })

  it('lifts an end along that gets no shims, where the other may not be so far ahead', () => {
    expect(whys(pair(), { tz: 150, sz: 0.3 })).toEqual([
      'as it stands',
      'left end up to +500 µm',
      'right end up to +1300 µm: room to change the packs of feet 2000a and 2000b',
      'right end down to +300 µm',
      'left end down to 0: it stands on its packs',
    ])
  })

  it('by a stage of the file', () => {
    const document = pair({ rest: { plan: { stage: 250 } } })
    // 2000 up and 1000 down: the first and the last of either way are shared between the ends
    expect(stepOf(stepsOf(document, { B: { tz: 1000 } }), 'B:vertical').stops?.count).toBe(14)
  })

  it('less far ahead where an end would be tilted too far', () => {
    // 0.2 mrad over 1000 mm: 200 um ahead, so a third of a stage of 500
    const document = pair({ right: { tilt: 0.2 } })
    const step = stepOf(stepsOf(document, { B: { tz: 300 } }), 'B:vertical')
    expect(Math.max(...step.poses.map(({ move }) => Math.abs(move.sz)))).toBeCloseTo(1 / 6, 9)
    expect(step.breaks).toEqual([])
  })

  it('is lifted with its flange in mind: one end at a time carries the middle half as far', () => {
    // 1 mm each: both ends up carry the flange in the middle 1000 um, one after the other 750 (250 behind 1000)
    const flange = (rise: number) => {
      const restraints = [{ id: 'flange', x: 1500, z: 0, rise: [-500, rise] }]
      return stepsOf(pair({ right: { restraints } }), { B: { tz: -100 } })
    }
    expect(flange(1000).breaks).toEqual([])
    expect(flange(760).breaks).toEqual([])
    const poses = stepOf(flange(760), 'B:vertical').poses
    expect(Math.max(...poses.map(({ move }) => move.tz))).toBeCloseTo(750, 6)
    const [passed] = flange(600).breaks
    expect(passed).toMatchObject({ limit: 'restraint', step: 'B:vertical', unit: 'µm' })
    expect(passed?.by).toBeCloseTo(150, 6)
    // with 850 to slip shims one end is up 850 and the other 350: 600 in the middle
    expect(passed?.slip).toBe(850)
    expect(passed?.instead).toBe(
      'With 850 in place of 1000 µm of room to slip shims this step keeps every limit. Or break flange of the pump loose before it is lifted, make it up afterwards and prove pipe strain again.',
    )
    const [lift] = stepsOf(
      pair({ right: { feet: fourFeet.map((foot) => ({ ...foot, lift: 800 })) } }),
      { B: { tz: 100 } },
    ).breaks
    expect([lift?.limit, lift?.by, lift?.slip]).toEqual(['lift', 300, 700])
    expect(lift?.instead).toContain('its nut off or a longer bolt')
    // four feet pass it: one of them freed leaves three that pass it still
    expect(lift?.instead).toMatch(
      /and so with every other limit that this step passes by being lifted\.$/,
    )
  })

  it('turns about an end that cannot be shimmed, and says how far that is ahead', () => {
    const feet = fourFeet.map((foot) =>
      foot.x === 1000 ? { ...foot, free: { shim: false } } : foot,
    )
    const [ahead] = stepsOf(pair({ right: { feet } }), { B: { tz: 50, sz: 0.1 } }).breaks
    // 100 and 1000 to slip it: 1100 ahead, where 100 and a stage of 500 may be
    expect([ahead?.limit, ahead?.by, ahead?.slip]).toEqual(['stage', 500, 500])
  })

  it('with both ends in step where no end may be ahead at all', () => {
    const document = pair({ right: { tilt: 0 } })
    const step = stepOf(stepsOf(document, { B: { tz: 300 } }), 'B:vertical')
    expect(step.stops).toEqual({ count: 2, each: 1300, first: 'together' })
    expect(step.cautions.join(' ')).toContain('move both ends in step')
    expect(step.breaks).toEqual([])
  })
})

describe('a slide is cut into pieces', () => {
  it('where one end ahead would turn a foot into its bolt', () => {
    // both rows 400 um: one ahead turns the pump 0.4 mrad, which carries a foot 300 mm aside 120 um
    // along; hypot(400, 120) = 417.6 > 410. In two pieces it is hypot(400, 60) = 404.5.
    const step = stepOf(
      stepsOf(pair({ right: { feet: holes(820) } }), { B: { ty: 400 } }),
      'B:lateral',
    )
    expect(step.stops).toEqual({ count: 2, each: 200, first: 'left' })
    const wide = stepsOf(pair({ right: { feet: holes(836) } }), { B: { ty: 400 } })
    expect(stepOf(wide, 'B:lateral').stops?.count).toBe(1)
  })
})

describe('the order', () => {
  it('is axial, skid, then outward, up and down before sideways, each machine read when it is done', () => {
    const steps = stepsOf(skidPair(), {
      B: { tx: 50, ty: 100, tz: 100 },
      S: { ty: 100, tz: 100 },
    })
    expect(steps.steps.map(({ id }) => id)).toEqual([
      'B:axial',
      'S:vertical',
      'S:lateral',
      'S:read',
      'B:vertical',
      'B:lateral',
      'B:read',
    ])
  })

  it('goes from what stays outward, not from left to right', () => {
    const train = fiveInLine()
    const moves = Object.fromEntries(['A', 'B', 'D', 'E'].map((id) => [id, { tz: 100 }]))
    const steps = stepsOf(train, moves)
    expect(steps.order).toEqual(['B:vertical', 'D:vertical', 'A:vertical', 'E:vertical'])
  })

  it('takes another order where the one of the rules would pass a bolt', () => {
    // hole centre from (0, -450) to (-400, 0), radius 500: along first is hypot(400, 450) = 602
    const document = pair({
      right: { feet: holes(1000, 0, -450), free: { axial: true } },
    })
    const steps = stepsOf(document, { B: { tx: -400, ty: 450 } })
    expect(steps.order).toEqual(['B:lateral', 'B:axial'])
    expect(steps.breaks).toEqual([])
    expect(steps.words).toMatch(/^Not in the usual order, in which more limits would be passed/)
  })

  it('is told by what this train has to put in order, and by nothing else', () => {
    const words = (moves: Record<string, Partial<Motion>>) => stepsOf(skidPair(), moves).words
    const kept =
      ' Every step was tried out where all machines then stand and keeps every limit entered.'
    expect(words({ B: { tz: 100 } })).toBe(`One move.${kept}`)
    expect(words({ B: { ty: 100, tz: 100 } })).toBe(`Up and down before sideways.${kept}`)
    expect(words({ B: { tx: 50, ty: 100, tz: 100 }, S: { tz: 100 } })).toBe(
      `First moves along the train, then the skid, then the machine; up and down before sideways.${kept}`,
    )
    const five = Object.fromEntries(['A', 'B', 'D', 'E'].map((id) => [id, { tz: 100 }]))
    expect(stepsOf(fiveInLine(), five).words).toBe(`Outward from what stays.${kept}`)
  })

  it('takes turns in portions where no order of whole moves keeps a flange', () => {
    // the skid carries the flange 300 um aside, the pump brings it back 250; it may go 100 either way.
    // In thirds, the pump first: -83, 17, -67, 33, -50, 50.
    const document = skidPair({
      restraints: [{ id: 'flange', x: 1500, z: 0, side: [-100, 100] }],
    })
    const steps = stepsOf(document, { B: { ty: -250 }, S: { ty: 300 } })
    expect(steps.order).toEqual([
      'B:lateral:1',
      'S:lateral:1',
      'B:lateral:2',
      'S:lateral:2',
      'B:lateral:3',
      'S:lateral:3',
    ])
    expect(steps.breaks).toEqual([])
    expect(followed(document as unknown as TrainFile, steps).by).toBeLessThan(1e-6)
    expect(steps.words).toContain('portions that take turns')
  })

  it('says which step passes which limit by how much where nothing keeps it', () => {
    const document = skidPair({
      restraints: [{ id: 'flange', x: 1500, z: 0, side: [0, 0] }],
    })
    const steps = stepsOf(document, { B: { ty: -240 }, S: { ty: 240 } })
    // eight portions of 30 um each: one is always ahead of the other
    const first = at(steps.breaks, 0)
    expect(first).toMatchObject({ limit: 'restraint', where: 'Pump, flange, side', unit: 'µm' })
    expect(Math.max(...steps.breaks.map(({ by }) => by))).toBeCloseTo(30, 6)
    expect(first.instead).toContain('in step with each other')
    expect(followed(document as unknown as TrainFile, steps).by).toBeCloseTo(30, 6)
  })
})

describe('an order that somebody chose', () => {
  const document = skidPair({
    restraints: [{ id: 'flange', x: 1500, z: 0, side: [-100, 350] }],
  })
  const moves = { B: { ty: -200 }, S: { ty: 300 } }

  it('is kept, and what it passes is said', () => {
    const steps = stepsOf(document, moves, { order: ['B:lateral', 'S:lateral'] })
    expect(steps.order).toEqual(['B:lateral', 'S:lateral'])
    expect(steps.chosen).toBe(true)
    expect(steps.found).toEqual(['S:lateral', 'B:lateral'])
    expect(at(steps.breaks, 0)).toMatchObject({ step: 'B:lateral', limit: 'restraint' })
    expect(at(steps.breaks, 0).by).toBeCloseTo(100, 9)
    expect(at(steps.breaks, 0).instead).toContain('The order that the rules give keeps it')
    expect(followed(document as unknown as TrainFile, steps)).toMatchObject({ step: 'B:lateral' })
  })

  it('may pass a bolt: the hole is measured by its circle', () => {
    const axial = pair({ right: { feet: holes(1000, 0, -450), free: { axial: true } } })
    const steps = stepsOf(axial, { B: { tx: -400, ty: 450 } }, { order: ['B:axial', 'B:lateral'] })
    expect(steps.breaks).toHaveLength(4)
    for (const { step, limit, by } of steps.breaks) {
      expect([step, limit]).toEqual(['B:axial', 'hole'])
      expect(by).toBeCloseTo(Math.hypot(400, 450) - 500, 9)
    }
  })

  it('is the order of the rules where it names nothing, or the same', () => {
    const order = ['S:lateral', 'S:read', 'B:lateral']
    expect(stepsOf(document, moves, { order })).toEqual(stepsOf(document, moves))
  })

  it('keeps every step it does not name, and says what it does not know', () => {
    const steps = stepsOf(document, moves, { order: ['B:lateral', 'C:vertical'] })
    expect(steps.order).toEqual(['B:lateral', 'S:lateral'])
    expect(steps.unknown).toEqual(['C:vertical'])
  })
})

describe('a stop on the way', () => {
  /** The flange may go 100 um toward 9; the skid goes 300 toward 3, the pump 200 back. */
  const flange = (low: number, high: number) =>
    skidPair({ restraints: [{ id: 'flange', x: 1500, z: 0, side: [low, high] }] })
  const moves = { B: { ty: -200 }, S: { ty: 300 } }
  const order = ['B:lateral', 'S:lateral']

  it('is proposed where an order somebody chose passes a limit that a stop keeps', () => {
    // the pump may go back 100 of its 200 first: half; then the skid, then the rest
    const first = at(stepsOf(flange(-100, 350), moves, { order }).breaks, 0)
    expect(first).toMatchObject({ step: 'B:lateral', limit: 'restraint' })
    expect(first.by).toBeCloseTo(100, 9)
    expect(first.stop).toEqual({ part: 0.5, then: ['S:lateral'] })
    expect(first.instead).toBe(
      'Stop the slide of the pump after 50 % of it, at most 100 µm at a foot; then the slide of the bedplate; then the rest. That keeps it. The order that the rules give keeps it too.',
    )
  })

  it('is kept by other code, and not a hundredth more is', () => {
    const file = flange(-100, 350)
    const steps = stepsOf(file, moves, { order })
    const stop = at(steps.breaks, 0).stop
    if (!stop) throw new Error('no stop')
    const by = (part: number) =>
      withStop(file as unknown as TrainFile, steps, 'B:lateral', { ...stop, part }).by
    expect(by(stop.part)).toBeLessThan(3e-3)
    expect(by(stop.part + 0.01)).toBeCloseTo(2, 6)
  })

  it('is none where nothing of the step may come first', () => {
    const first = at(stepsOf(flange(0, 350), moves, { order }).breaks, 0)
    expect(first.stop).toEqual({ part: 0, then: ['S:lateral'] })
    expect(first.instead).toContain('Make the slide of the bedplate before it. That keeps it.')
  })

  it('is none where the step before has passed the limit already', () => {
    // 100 toward 9 is the room: the pump goes 200, then comes up, still past it
    const more = { B: { ty: -200, tz: 40 }, S: { ty: 300 } }
    const steps = stepsOf(
      {
        ...skidPair({
          restraints: [{ id: 'flange', x: 1500, z: 0, side: [-100, 350], rise: [-9, 99] }],
        }),
        plan: { slip: 50 },
      },
      more,
      { order: ['B:lateral', 'B:vertical', 'S:lateral'] },
    )
    expect(steps.breaks.map(({ step }) => step)).toEqual(['B:lateral', 'B:vertical'])
    expect(at(steps.breaks, 0).stop).toEqual({ part: 0.5, then: ['B:vertical', 'S:lateral'] })
    expect(at(steps.breaks, 1).stop).toBeUndefined()
    expect(at(steps.breaks, 1).instead).toBe(
      'A step before this one passes it already: see what would keep it there.',
    )
  })

  it('comes again and again where no order keeps every limit in eight portions', () => {
    // 15 um of room and 240 to go against each other: sixteen times 15
    const tight = flange(-15, 15)
    const steps = stepsOf(tight, { B: { ty: -240 }, S: { ty: 240 } })
    const first = at(steps.breaks, 0)
    expect(first).toMatchObject({ limit: 'restraint', where: 'Pump, flange, side' })
    expect(first.stop).toEqual({ part: 1 / 16, then: [], pieces: 16 })
    expect(first.instead).toBe(
      'No order of single moves keeps it in 8 portions: let the slide of the bedplate and the slide of the pump take turns, a stop after every sixteenth of each. That keeps every limit.',
    )
    // sixteenths in turn, by other code
    const standing = new Map<string, Move>()
    const nought = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }
    for (let k = 1; k <= 16; k++)
      for (const [id, whole] of [
        ['S', 240],
        ['B', -240],
      ] as const) {
        standing.set(id, { ...nought, ty: (whole * k) / 16 })
        expect(worstPassed(tight as unknown as TrainFile, standing).by).toBeLessThan(1e-9)
      }
  })

  it('is not made up where there is no room at all', () => {
    const none = flange(0, 0)
    const first = at(stepsOf(none, { B: { ty: -240 }, S: { ty: 240 } }).breaks, 0)
    expect(first.stop).toBeUndefined()
    expect(first.instead).toContain('in step with each other')
  })
})

describe('shaft ends', () => {
  // 3 mm apart: the motor goes 4 mm to the right and the pump 5
  const close = (found: number) =>
    pair({
      left: {
        anchored: undefined,
        feet: fourFeet.map((foot) => ({ ...foot, x: foot.x - 3000 })),
        free: { axial: true },
      },
      right: { free: { axial: true } },
      coupling: { axial: { found, want: 4, tolerance: 0.5 } },
    })
  const moves = { A: { tx: 4000 }, B: { tx: 5000 } }

  it('never meet on the way: who stands in the way goes first', () => {
    const steps = stepsOf(close(3), moves)
    expect(steps.order).toEqual(['B:axial', 'A:axial'])
    expect(steps.breaks).toEqual([])
    expect(followed(close(3) as unknown as TrainFile, steps).by).toBe(0)
  })

  it('are told at stop points with how far apart they should be, and where that is good', () => {
    // 0.1 mm unsure each time they are measured, 0.02 mm each move along (usual values):
    // 1.96 sqrt(2 0.1^2 + 0.02^2) = 0.280 once the pump has moved, 1.96 sqrt(2 0.1^2 + 2 0.02^2) = 0.283 with the motor too
    const { steps } = stepsOf(close(3), moves)
    expect(steps.map(({ id, hold }) => [id, hold])).toEqual([
      [
        'B:axial',
        'Stop point: between the shaft ends of Motor to Pump 8.00 mm, good from 7.72 mm to 8.28 mm, cold.',
      ],
      // nothing to judge while the motor has still to move
      ['B:read', expect.not.stringContaining('shaft ends') as string],
      [
        'A:axial',
        'Stop point: between the shaft ends of Motor to Pump 4.00 mm, good from 3.72 mm to 4.28 mm, cold.',
      ],
      [
        'A:read',
        expect.stringContaining(
          'Between the shaft ends of Motor to Pump 4.00 mm, good from 3.72 mm to 4.28 mm, cold.',
        ) as string,
      ],
    ])
    const sure = {
      ...close(3),
      couplings: [
        {
          ...at(close(3)['couplings'] as Json[], 0),
          axial: { found: 3, want: 4, tolerance: 0.5, u: 0.02 },
        },
      ],
    }
    // 1.96 sqrt(2 0.02^2 + 0.02^2) = 0.068
    expect(at(stepsOf(sure, moves).steps, 0).hold).toContain('good from 7.93 mm to 8.07 mm')
  })

  it('are said to meet in an order that makes them', () => {
    const steps = stepsOf(close(3), moves, { order: ['A:axial', 'B:axial'] })
    expect(at(steps.breaks, 0)).toMatchObject({
      step: 'A:axial',
      limit: 'shaft ends',
      where: 'Motor to Pump',
      stop: { part: 0.75, then: ['B:axial'] },
    })
    expect(at(steps.breaks, 0).by).toBeCloseTo(1000, 6)
    expect(at(steps.breaks, 0).words).toBe(
      'Motor to Pump: the shaft ends would meet, by 1000 µm, on the way.',
    )
    expect(followed(close(3) as unknown as TrainFile, steps).by).toBeCloseTo(1000, 6)
  })
})

describe('readings on the way', () => {
  it('can be judged only when the machines on both sides are done', () => {
    const steps = stepsOf(pair(), { B: { tz: 700, ty: 100 } })
    const [lift, slide] = steps.steps.map(({ judge }) => at(judge, 0))
    expect(lift).toEqual({
      coupling: 'c',
      judge: 'not yet',
      why: 'the pump still has to move up to 100 µm',
      left: 100,
    })
    expect(slide).toMatchObject({ judge: 'good to judge', why: '', left: 0 })
  })

  it('say that the rest is coarse above a stage', () => {
    const { judge } = at(stepsOf(pair(), { B: { tz: 100, ty: 700 } }).steps, 0)
    expect(at(judge, 0).why).toBe('the pump still has to move up to 700 µm; it is still coarse')
  })
})

describe('packs of real plates', () => {
  it('are what the feet are told, and what the dials then show', () => {
    const packs = fourFeet.map(({ id }) => ({
      body: 'B',
      foot: id,
      change: 105,
      packAfter: 1105,
      out: [1000],
      use: [1000, 100, 5],
    }))
    const feet = fourFeet.map((foot) => ({ ...foot, pack: { now: 1000 } }))
    const steps = stepsOf(pair({ right: { feet } }), { B: { tz: 104.2 } }, { packs })
    const step = stepOf(steps, 'B:vertical')
    expect(at(step.feet, 0)).toEqual({
      foot: '1000a',
      shim: 105,
      packBefore: 1000,
      packAfter: 1105,
      out: [1000],
      use: [1000, 100, 5],
      lift: 1105,
    })
    expect(at(step.dials, 0).shows).toBe(105)
  })
})

describe('soft feet', () => {
  it('come first, end with new readings, and make what follows provisional', () => {
    const soft = [{ body: 'B', foot: '1000a', shim: 80 }]
    const steps = stepsOf(pair(), { B: { tz: 100 } }, { soft })
    expect(steps.steps.map(({ id, provisional }) => [id, provisional])).toEqual([
      ['B:soft', false],
      ['B:vertical', true],
      ['B:read', true],
    ])
    expect(at(steps.steps, 0).hold).toContain('read every coupling anew')
    expect(at(steps.steps, 0).words).toContain('put in 80 µm under foot 1000a')
  })
})

describe('dials', () => {
  const steps = stepsOf(
    pair({ rest: { sides: { three: 'toward the pipe rack', nine: 'toward the road' } } }),
    { B: { tz: -120, ty: -60 } },
  )

  it("read + for up and for the 3 o'clock side, since their stems are pushed in", () => {
    const [down] = stepOf(steps, 'B:vertical').dials
    expect(down).toEqual({
      foot: '1000a',
      where: 'on the base, stem down on foot 1000a: + is up',
      way: 'vertical',
      shows: -120,
      // 10 um of the dial and 10 um of the shim: 1.96 * sqrt(200)
      good: [expect.closeTo(-147.7, 1), expect.closeTo(-92.3, 1)],
    })
    const [aside] = stepOf(steps, 'B:lateral').dials
    expect(aside).toEqual({
      foot: '1000a',
      where:
        'on the base, on the pipe rack side, stem against foot 1000a: + is toward the pipe rack',
      way: 'lateral',
      shows: -60,
      // 10 um of the dial and 20 um of the slide: 1.96 * sqrt(500)
      good: [expect.closeTo(-103.8, 1), expect.closeTo(-16.2, 1)],
    })
  })

  it('watch the neighbour that has feet, and only that', () => {
    expect(stepOf(steps, 'B:vertical').dials).toHaveLength(4)
    const withFeet = pair({ left: { feet: fourFeet.map((f) => ({ ...f, x: f.x - 3000 })) } })
    const watched = stepOf(stepsOf(withFeet, { B: { tz: 50 } }), 'B:vertical').dials
    expect(at(watched, 4)).toMatchObject({
      where: expect.stringContaining('Motor') as string,
      shows: 0,
      good: [expect.closeTo(-19.6, 9), expect.closeTo(19.6, 9)],
    })
  })
})

/** Five machines a metre long, C anchored. */
function fiveInLine(): Json {
  const ids = ['A', 'B', 'C', 'D', 'E']
  return {
    ...pair(),
    machines: ids.map((id, i) => ({
      id,
      name: id,
      axis: { z: 400 },
      feet: [0, 800].map((x) => ({ id: `${x}`, x: 1000 * i + x })),
      ...(id === 'C' && { anchored: 'piped' }),
    })),
    couplings: ids.slice(1).map((id, i) => ({
      id: `c${i}`,
      left: { machine: ids[i], plane: 1000 * i + 850 },
      right: { machine: id, plane: 1000 * i + 950 },
      tolerance: { offset: 100 },
      found: [{ kind: 'line', at: 1000 * i + 900, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }],
    })),
  }
}

describe('an order of work is chosen with its lifts', () => {
  // A flange on the machine that the skid carries may rise 1100 um. The skid gets 500 um more, the machine on it 500 less,
  // each with 1000 um to slip shims. The skid first: one end at 500 + 1000, the other a stage of 500 behind it, so 1250 in
  // the middle, where the flange is: passed by 150. The machine first: 750, then -500 + 1250 = 750.
  const flange = { id: 'flange', x: 1500, z: 0, rise: [-2000, 1100] }
  const kept = skidPair({ restraints: [flange] })

  it('in which none passes a limit, where the rules have one that does', () => {
    const moves = { S: { tz: 500 }, B: { tz: -500 } }
    expect(stepsOf(skidPair(), moves).order).toEqual(['S:vertical', 'B:vertical'])
    const steps = stepsOf(kept, moves)
    expect(steps.order).toEqual(['B:vertical', 'S:vertical'])
    expect(steps.breaks).toEqual([])
  })

  it('among so many moves that not every order is looked at, too', () => {
    // three more machines ride on the skid, nine moves in all: only that of the flange has to come before the skid's
    const [motor, pump] = kept['machines'] as Json[]
    const [coupling] = kept['couplings'] as Json[]
    const apart = (k: number) => 3000 * k
    const more = [1, 2, 3].map((k): Json => ({
      ...pump,
      ...{ id: `B${k}`, name: `Pump ${k}`, restraints: [] },
      feet: fourFeet.map((foot) => ({ ...foot, x: foot.x + apart(k) })),
    }))
    const ids = ['B', 'B1', 'B2', 'B3']
    const couplings = more.map((_, k) => ({
      ...coupling,
      id: `c${k}`,
      left: { machine: ids[k], plane: apart(k + 1) },
      right: { machine: ids[k + 1], plane: apart(k + 1) + 200 },
      found: [{ ...given(0, 0), at: apart(k + 1) + 100 }],
    }))
    const [skid] = kept['skids'] as Json[]
    const train = {
      ...kept,
      machines: [motor, pump, ...more],
      couplings: [coupling, ...couplings],
      skids: [{ ...skid, carries: ids }],
    }
    const both = { ty: 100, tz: 200 }
    const moves = { S: { tz: 500 }, B: { tz: -500 }, B1: both, B2: both, B3: both }
    const steps = stepsOf(train, moves)
    expect(steps.order).toHaveLength(8)
    expect(steps.order.indexOf('B:vertical')).toBeLessThan(steps.order.indexOf('S:vertical'))
    expect(steps.breaks).toEqual([])
    expect(steps.words).toContain('Not in the usual order')
  })

  it('by the rules where no other order passes less', () => {
    // 1250 for the skid alone, whatever else is done
    const { order, breaks } = stepsOf(kept, { S: { tz: 500 }, B: { ty: 100 } })
    expect(order).toEqual(['S:vertical', 'B:lateral'])
    expect(breaks.map(({ limit, by }) => [limit, by])).toEqual([['restraint', 150]])
  })
})
