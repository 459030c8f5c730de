import * as z from 'zod/mini'
import { pinKinds, pinStates, roles } from '../mechanics/train'
import {
  fine,
  length,
  mass,
  torque,
  open,
  plain,
  sliding,
  slope,
  speed,
  temperature,
} from './quantities'
import { axialGap } from './axialSchema'
import { growthPoint, range } from './growthSchema'
import { hotCheck } from './hotCheckSchema'
import { outage } from './outageSchema'
import { offsets, readingSet, slopes } from './readingSchema'
import { stator } from './statorSchema'
import { id, name, note, text } from './texts'
import { planSettings } from './planSchema'
import { survey } from './surveySchema'
import { pipeStrain, workRecord } from './work'

/**
 * The train file, version 1: the only definition of its shape. Numbers are as typed, in the
 * document's own units; each says what it measures, and conversion, unit switch and JSON Schema follow.
 * What a shape cannot say (neighbours, ids, sizes) is in `meaningRefusals.ts`.
 */

const axis = z.strictObject({ y: z.optional(length), z: length })

const pack = z.strictObject({
  now: fine.check(z.nonnegative()),
  min: z.optional(fine.check(z.nonnegative())),
  max: z.optional(fine.check(z.nonnegative())),
  plates: z.optional(z.array(fine.check(z.positive())).check(z.maxLength(50))),
})
const hole = z.strictObject({
  clearance: fine.check(z.nonnegative()),
  x: z.optional(fine),
  y: z.optional(fine),
  u: z.optional(fine.check(z.nonnegative())),
})
const gap = fine.check(z.nonnegative())

const foot = z.strictObject({
  id,
  x: length,
  y: z.optional(length),
  free: z.optional(
    z.strictObject({ shim: z.optional(z.boolean()), side: z.optional(z.boolean()) }),
  ),
  pack: z.optional(pack),
  lift: z.optional(fine),
  hole: z.optional(hole),
  soleplate: z.optional(fine),
  soft: z.optional(gap),
  gaps: z.optional(z.tuple([gap, gap, gap, gap])),
  torque: z.optional(
    z.strictObject({ value: torque.check(z.positive()), pattern: z.optional(text) }),
  ),
})

const restraint = z.strictObject({
  id,
  x: length,
  y: z.optional(length),
  z: length,
  axial: z.optional(range),
  side: z.optional(range),
  rise: z.optional(range),
})

const freedom = z.strictObject({
  shim: z.optional(z.boolean()),
  side: z.optional(z.boolean()),
  axial: z.optional(z.boolean()),
  roll: z.optional(z.boolean()),
})

/** A dowel or key block that keeps a body where it is. */
const pin = z.strictObject({
  id,
  kind: z.optional(z.enum(pinKinds)),
  now: z.optional(z.enum(pinStates)),
  effort: z.optional(fine.check(z.nonnegative())),
})

const bodyFields = {
  id,
  name,
  held: z.optional(z.boolean()),
  anchored: z.optional(text.check(z.minLength(1))),
  free: z.optional(freedom),
  weight: z.optional(plain.check(z.nonnegative())),
  effort: z.optional(fine.check(z.nonnegative())),
  tilt: z.optional(slope.check(z.nonnegative())),
  feet: z.array(foot).check(z.maxLength(1000)),
  restraints: z.optional(z.array(restraint).check(z.maxLength(1000))),
  pins: z.optional(z.array(pin).check(z.maxLength(100))),
  mass: z.optional(mass.check(z.positive())),
  jack: z.optional(mass.check(z.positive())),
  level: z.optional(slope),
}

const machine = z.strictObject({
  ...bodyFields,
  role: z.optional(z.enum(roles)),
  speed: z.optional(speed.check(z.nonnegative())),
  base: z.optional(length),
  axis: z.union([axis, z.strictObject({ left: axis, right: axis })]),
  stator: z.optional(stator),
  growth: z.optional(z.record(id, z.array(growthPoint).check(z.maxLength(1000)))),
})

const skid = z.strictObject({ ...bodyFields, carries: z.array(id).check(z.maxLength(1000)) })

const end = z.strictObject({ machine: id, plane: length })

export const tolerance = z.strictObject({
  flex: z.optional(slope.check(z.positive())),
  offset: z.optional(fine.check(z.positive())),
  angle: z.optional(slope.check(z.positive())),
  shape: z.optional(z.enum(['box', 'round'])),
  basis: z.optional(text),
})

/** How far the rim and the face of a half run out, over a full turn. */
const runOuts = z.strictObject({
  rim: z.optional(fine.check(z.nonnegative())),
  face: z.optional(fine.check(z.nonnegative())),
})

const coupling = z.strictObject({
  id,
  name: z.optional(name),
  left: end,
  right: end,
  speed: z.optional(speed.check(z.nonnegative())),
  tolerance,
  aim: z.optional(
    z.record(
      id,
      z.strictObject({
        offset: z.optional(offsets),
        slope: z.optional(slopes),
        why: z.optional(text),
      }),
    ),
  ),
  setting: z.optional(
    z.strictObject({
      offset: z.optional(offsets),
      slope: z.optional(slopes),
      from: z.optional(text),
      use: z.optional(z.boolean()),
      why: z.optional(text),
    }),
  ),
  axial: z.optional(axialGap),
  disengaged: z.optional(z.array(id).check(z.minLength(1), z.maxLength(200))),
  runOut: z.optional(
    z.strictObject({
      left: z.optional(runOuts),
      right: z.optional(runOuts),
      limit: z.optional(fine.check(z.positive())),
      basis: z.optional(text),
      when: z.optional(text),
      by: z.optional(text),
    }),
  ),
  gear: z.optional(
    z.strictObject({
      pitch: z.optional(length.check(z.positive())),
      least: z.optional(slope.check(z.positive())),
      sliding: z.optional(sliding.check(z.positive())),
      states: z.optional(z.array(id).check(z.minLength(1), z.maxLength(200))),
      basis: z.optional(text),
    }),
  ),
  strain: z.optional(open(pipeStrain)),
  found: z.array(readingSet).check(z.maxLength(1000)),
})

export const state = z.strictObject({
  id,
  name,
  tolerance: z.optional(plain.check(z.positive())),
  load: z.optional(plain.check(z.nonnegative())),
  temperature: z.optional(temperature),
  between: z.optional(z.strictObject({ from: id, to: id, by: z.enum(['load', 'temperature']) })),
})

export const trainDocument = z.strictObject({
  format: z.literal('holdfast-train'),
  version: z.literal(1),
  name,
  site: z.optional(text),
  note: z.optional(note),
  /** Months from one alignment to the next look at it. */
  checkEvery: z.optional(plain.check(z.int(), z.gte(1), z.lte(240))),
  units: z.strictObject({
    length: z.enum(['mm', 'in']),
    fine: z.enum(['um', 'mm', 'mil']),
    temperature: z.optional(z.enum(['C', 'F'])),
  }),
  clock: z.strictObject({ seenFrom: z.enum(['left', 'right']) }),
  sides: z.optional(z.strictObject({ three: name, nine: name })),
  machines: z.array(machine).check(z.minLength(2), z.maxLength(1000)),
  skids: z.optional(z.array(skid).check(z.maxLength(1000))),
  couplings: z.array(coupling).check(z.maxLength(1000)),
  states: z.optional(z.array(state).check(z.maxLength(200))),
  surveys: z.optional(z.array(survey).check(z.maxLength(6))),
  hotChecks: z.optional(z.array(hotCheck).check(z.maxLength(20))),
  outages: z.optional(z.array(outage).check(z.maxLength(40))),
  plan: z.optional(planSettings),
  record: z.optional(open(workRecord)),
})

export type TrainDocument = z.infer<typeof trainDocument>
export type MachineDocument = z.infer<typeof machine>
export type SkidDocument = z.infer<typeof skid>
export type FootDocument = z.infer<typeof foot>
export type RestraintDocument = z.infer<typeof restraint>
export type GrowthPointDocument = z.infer<typeof growthPoint>
export type CouplingDocument = z.infer<typeof coupling>
export type ReadingSetDocument = z.infer<typeof readingSet>
export type SurveyDocument = z.infer<typeof survey>
export type OutageDocument = z.infer<typeof outage>
export type HotCheckDocument = z.infer<typeof hotCheck>
export type StateDocument = z.infer<typeof state>
