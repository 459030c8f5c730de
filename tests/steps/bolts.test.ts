import { expect, it } from 'vitest'
import { noMotion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { instructionsOf } from '../../src/engine/fieldwork/steps/instructions'
import { orderOfWork } from '../../src/engine/fieldwork/steps/orderOfWork'
import { fourFeet, pair, trainOf, type Json } from '../engine/pair'
import { skidPair } from './skidPair'

/** The instructions of a pump that is shimmed and slid. */
function told(document: Json, move = { tz: 100, ty: 50 }, id = 'B') {
  const train = trainOf(document)
  const motions = train.bodies.map((body) => ({ ...noMotion, ...(body.id === id && move) }))
  return instructionsOf(train, orderOfWork(train, train.couplings.map(asFound), motions))
}

const torqued = (torque: Json): Json =>
  pair({ right: { feet: fourFeet.map((foot) => ({ ...foot, torque })) } })

it('opens the coupling and loosens the bolts of what moves, from the end that goes first', () => {
  const [shims, slide, read] = told(pair())
  const first = [
    'Open, before any bolt is loosened: the coupling Motor to Pump, its bolts out, nothing that could draw the shafts along.',
    'Loosen the bolts of the pump a little at a time and crosswise, in the order of feet 1000a, 1000b, 2000a and 2000b, its dials watched; every bolt of the other machines stays tight.',
  ]
  expect(shims?.before).toEqual(first)
  // nothing was tightened since: what is open stays open
  expect(slide?.before).toEqual([
    'The coupling stays open: Motor to Pump.',
    'Loosen the bolts of the pump again, crosswise as before, its dials watched; every other bolt stays tight.',
  ])
  expect(read?.before).toEqual([])
  expect(shims?.stop).toMatch(/^Jacks down, its bolts snug; then read/)
})

it('opens what a skid is moved against and leaves the bolts on it tight', () => {
  const [shims] = told(skidPair(), { tz: 100, ty: 50 }, 'S')
  expect(shims?.before[1]).toMatch(/of the other machines, those on it too, stays tight\.$/)
})

it('tightens in rounds to the torque of the file, in its units and pattern', () => {
  // 30, 70 and 100 % of 360
  expect(told(torqued({ value: 360, pattern: 'crosswise' })).at(-1)?.words).toBe(
    'Tighten the pump, jackscrews backed off: all its bolts to 108, then 252, then 360 N·m, crosswise. Then read Motor to Pump.',
  )
  const inches = { ...torqued({ value: 265 }), units: { length: 'in', fine: 'mil' } }
  expect(told(inches).at(-1)?.words).toContain('to 79.5, then 185.5, then 265 ft·lb.')
})

it('leaves a blank where no torque is entered, and names no percent of nothing else', () => {
  expect(told(pair()).at(-1)?.words).toBe(
    "Tighten the pump, jackscrews backed off: all its bolts to ______ N·m, in rounds of 30, 70 and 100 % of it (not entered: from the drawing or the site's table). Then read Motor to Pump.",
  )
})

it('says which way the dial on a neighbour points', () => {
  const document = pair({ left: { feet: fourFeet.map((foot) => ({ ...foot, x: foot.x - 3000 })) } })
  const [shims, slide] = told(document)
  expect(shims?.dials.at(-1)).toBe(
    'One more on the base, stem down on foot 2000a of Motor: it must stay at 0, good from −20 µm to +20 µm.',
  )
  expect(slide?.dials.at(-1)).toBe(
    "One more on the base, on the 3 o'clock side, stem against foot 2000a of Motor: it must stay at 0, good from −20 µm to +20 µm.",
  )
})

it('turns a gear in its loaded direction alone wherever one reads beside it', () => {
  const loaded = (document: Json) => told(document).at(-1)?.cautions.join(' ')
  expect(loaded(pair())).not.toContain('in which it is loaded')
  expect(loaded(pair({ right: { role: 'gearbox' } }))).toContain('in which it is loaded')
  expect(loaded(pair({ left: { role: 'gearbox' } }))).toContain('in which it is loaded')
})
