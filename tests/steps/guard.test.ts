import { describe, expect, it } from 'vitest'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { guardOf, type Guard } from '../../src/engine/fieldwork/steps/guard'
import { orderOfWork } from '../../src/engine/fieldwork/steps/orderOfWork'
import { close, fourFeet, pair, trainOf, type Json } from '../engine/pair'

const sides = { three: 'toward the pipe rack', nine: 'toward the road' }
const holes = (clearance: number) => fourFeet.map((foot) => ({ ...foot, hole: { clearance } }))

/** Guards foot 1000a of a pump that makes one move. */
function guard(
  move: Partial<Motion>,
  shown: number,
  { rest, right, lifted }: { rest?: Json; right?: Json; lifted?: boolean } = {},
): Guard {
  const train = trainOf(pair({ right: right ?? {}, rest: { sides, ...rest } }))
  const motions = [noMotion, { ...noMotion, ...move }]
  const { steps } = orderOfWork(train, train.couplings.map(asFound), motions)
  return guardOf(train, {
    steps,
    at: 0,
    foot: '1000a',
    shown,
    ...(lifted !== undefined && { lifted }),
  })
}

describe('what is left to go', () => {
  it("goes by the sign of the dial: + is up and toward 3 o'clock, from whichever end the clock is seen", () => {
    for (const seenFrom of ['left', 'right']) {
      const rest = { clock: { seenFrom } }
      expect(guard({ tz: 350 }, 200, { rest })).toMatchObject({
        target: 350,
        left: 150,
        words: '150 µm to go, up.',
        there: false,
      })
      expect(guard({ tz: -350 }, -400, { rest }).words).toBe('50 µm to go, up.')
      expect(guard({ ty: 350 }, 200, { rest }).words).toBe('150 µm to go, toward the pipe rack.')
      expect(guard({ ty: -350 }, -200, { rest })).toMatchObject({
        left: -150,
        words: '150 µm to go, toward the road.',
      })
    }
  })

  it('is told in the unit of the document', () => {
    const rest = { units: { length: 'in', fine: 'mil' } }
    expect(guard({ ty: 254 }, 4 * 25.4, { rest })).toMatchObject({
      target: 254,
      left: close(152.4),
      words: '6.0 mil to go, toward the pipe rack.',
    })
    const inMm = { units: { length: 'mm', fine: 'mm' } }
    expect(guard({ ty: -500 }, -500, { rest: inMm })).toMatchObject({
      words: 'There.',
      there: true,
    })
  })
})

describe('the wrong way', () => {
  it('is called after 50 um of a large move, not before, and names what should be', () => {
    expect(guard({ ty: 350 }, -49).wrong).toBeUndefined()
    expect(guard({ ty: 350 }, -50).wrong).toBe(
      'Stop, the wrong way: the dial shows −50 µm and should go to +350 µm, toward the pipe rack.',
    )
    expect(guard({ tz: -350 }, 60).wrong).toContain('should go to −350 µm, down')
    expect(guard({ ty: 350 }, 60).wrong).toBeUndefined()
  })

  it('is called after a third of a small move, though never below a division of the dial', () => {
    expect(guard({ ty: 90 }, -29).wrong).toBeUndefined()
    expect(guard({ ty: 90 }, -31).wrong).toContain('should go to +90 µm')
    expect(guard({ tz: -60 }, 21).wrong).toContain('should go to −60 µm, down')
    expect(guard({ ty: 15 }, -9).wrong).toBeUndefined()
    expect(guard({ ty: 15 }, -10).wrong).toContain('should go to +15 µm')
    // the end at 1000 stays, the one at 2000 goes up 60
    expect(guard({ tz: 30, sz: 0.06 }, 21).wrong).toContain('this foot should stay')
    const rest = { units: { length: 'in', fine: 'mil' } }
    expect(guard({ ty: 25.4 }, -0.4 * 25.4, { rest }).wrong).toBeUndefined()
    expect(guard({ ty: 25.4 }, -0.5 * 25.4, { rest }).wrong).toContain('should go to +1.0 mil')
  })

  it('is called at 2 mil in a document in mils', () => {
    const rest = { units: { length: 'in', fine: 'mil' } }
    expect(guard({ ty: -254 }, 1.9 * 25.4, { rest }).wrong).toBeUndefined()
    expect(guard({ ty: -254 }, 2 * 25.4, { rest }).wrong).toContain('should go to −10.0 mil')
  })

  it('is no matter while the foot is on jacks to take shims out', () => {
    expect(guard({ tz: -350 }, 1200, { lifted: true }).wrong).toBeUndefined()
    expect(guard({ tz: -350 }, 1200).wrong).toBeDefined()
  })

  it('is any way for a foot that should stay', () => {
    // the end at 1000 stays, the one at 2000 goes up 300
    const turn = { tz: 150, sz: 0.3 }
    expect(guard(turn, 60).wrong).toBe('Stop: this foot should stay, and its dial shows +60 µm.')
  })
})

describe('lift and bolt room', () => {
  it('warns of more lift than its shims need: what is added, 1 mm to slip, and 0.1 mm on the jack', () => {
    expect(guard({ tz: 300 }, 1400, { lifted: true }).liftWarning).toBeUndefined()
    expect(guard({ tz: 300 }, 1401, { lifted: true }).liftWarning).toBe(
      'Foot 1000a is lifted 101 µm more than the 1300 µm its shims need: let it down to that, a block beside the jack.',
    )
    expect(guard({ tz: -300 }, 1101, { lifted: true }).liftWarning).toBeDefined()
    const rest = { plan: { slip: 400 } }
    expect(guard({ tz: 300 }, 801, { rest, lifted: true }).liftWarning).toContain('700 µm its')
  })

  it('warns of a lift past what the bolt allows', () => {
    const feet = fourFeet.map((foot) => ({ ...foot, lift: 500 }))
    expect(guard({ tz: 300 }, 620, { right: { feet }, lifted: true }).liftWarning).toBe(
      'Foot 1000a is 120 µm above its lift limit: no higher.',
    )
  })

  it('measures the room where the foot is now', () => {
    const right = { feet: holes(1200) }
    expect(guard({ ty: 400 }, 250, { right })).toMatchObject({ room: 350 })
    expect(guard({ ty: 400 }, 250, { right }).roomWarning).toBeUndefined()
    expect(guard({ ty: 400 }, 310, { right }).roomWarning).toBe(
      'Only 290 µm left between bolt and hole at foot 1000a.',
    )
    expect(guard({ ty: 400 }, 610, { right }).roomWarning).toContain('stop and look')
  })
})
