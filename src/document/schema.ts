import { z } from 'zod'
import { roles } from '../mechanics/train'
import {
  expansion,
  fine,
  fromSize,
  length,
  mass,
  torque,
  open,
  plain,
  slope,
  speed,
  temperature,
} from './quantities'
import { offsets, readingSet, slopes } from './readingSchema'
import { id, name, note, text } from './texts'
import { pipeStrain, workRecord } from './work'

/**
 * The train file, version 1: the only definition of its shape. Numbers are as typed, in the
 * document's own units; each says what it measures, and conversion, unit switch and JSON Schema follow.
 * What a shape cannot say (neighbours, ids, sizes) is in `meaningRefusals.ts`.
 */

const range = z.tuple([fine, fine])
const axis = z.strictObject({ y: length.optional(), z: length })

const pack = z.strictObject({
  now: fine.nonnegative(),
  min: fine.nonnegative().optional(),
  max: fine.nonnegative().optional(),
  plates: z.array(fine.positive()).max(50).optional(),
})
const hole = z.strictObject({
  clearance: fine.nonnegative(),
  x: fine.optional(),
  y: fine.optional(),
  u: fine.nonnegative().optional(),
})
const gap = fine.nonnegative()

const foot = z.strictObject({
  id,
  x: length,
  y: length.optional(),
  free: z.strictObject({ shim: z.boolean().optional(), side: z.boolean().optional() }).optional(),
  pack: pack.optional(),
  lift: fine.optional(),
  hole: hole.optional(),
  soft: gap.optional(),
  gaps: z.tuple([gap, gap, gap, gap]).optional(),
  torque: z.strictObject({ value: torque.positive(), pattern: text.optional() }).optional(),
})

const restraint = z.strictObject({
  id,
  x: length,
  y: length.optional(),
  z: length,
  axial: range.optional(),
  side: range.optional(),
  rise: range.optional(),
})

export const growthPoint = z.strictObject({
  at: length,
  axis: z.enum(['left', 'right']).optional(),
  rise: fine.optional(),
  side: fine.optional(),
  axial: fine.optional(),
  heat: z
    .strictObject({
      height: length,
      expansion,
      from: temperature,
      to: temperature,
      material: text.optional(),
    })
    .optional(),
  u: fine.nonnegative().optional(),
  range: z
    .strictObject({
      rise: range.optional(),
      side: range.optional(),
      axial: range.optional(),
    })
    .optional(),
  source: z.enum(['given', 'measured']).optional(),
  use: z.boolean().optional(),
  when: text.optional(),
  by: text.optional(),
  why: text.optional(),
})

const freedom = z.strictObject({
  shim: z.boolean().optional(),
  side: z.boolean().optional(),
  axial: z.boolean().optional(),
  roll: z.boolean().optional(),
})

const bodyFields = {
  id,
  name,
  held: z.boolean().optional(),
  anchored: text.min(1).optional(),
  free: freedom.optional(),
  weight: plain.nonnegative().optional(),
  effort: fine.nonnegative().optional(),
  tilt: slope.nonnegative().optional(),
  feet: z.array(foot).max(1000),
  restraints: z.array(restraint).max(1000).optional(),
  mass: mass.positive().optional(),
  jack: mass.positive().optional(),
  level: slope.optional(),
}

const machine = z.strictObject({
  ...bodyFields,
  role: z.enum(roles).optional(),
  speed: speed.nonnegative().optional(),
  base: length.optional(),
  axis: z.union([axis, z.strictObject({ left: axis, right: axis })]),
  growth: z.record(id, z.array(growthPoint).max(1000)).optional(),
})

const skid = z.strictObject({ ...bodyFields, carries: z.array(id).max(1000) })

const end = z.strictObject({ machine: id, plane: length })

export const tolerance = z.strictObject({
  flex: slope.positive().optional(),
  offset: fine.positive().optional(),
  angle: slope.positive().optional(),
  shape: z.enum(['box', 'round']).optional(),
  basis: text.optional(),
})

const coupling = z.strictObject({
  id,
  name: name.optional(),
  left: end,
  right: end,
  speed: speed.nonnegative().optional(),
  tolerance,
  aim: z
    .record(id, z.strictObject({ offset: offsets.optional(), slope: slopes.optional() }))
    .optional(),
  setting: z
    .strictObject({
      offset: offsets.optional(),
      slope: slopes.optional(),
      from: text.optional(),
      use: z.boolean().optional(),
      why: text.optional(),
    })
    .optional(),
  axial: z
    .strictObject({
      found: length,
      want: length,
      tolerance: length.positive(),
      u: length.nonnegative().optional(),
    })
    .optional(),
  strain: open(pipeStrain).optional(),
  found: z.array(readingSet).max(1000),
})

/** Shaft axes at places of the train against a straight line of the survey's own; what the numbers are: trainFile.md. */
const surveyPoint = z.strictObject({
  machine: id,
  x: length,
  axis: z.enum(['left', 'right']).optional(),
  z: fine.optional(),
  y: fine.optional(),
  u: fine.positive().optional(),
})

const survey = z.strictObject({
  id,
  name: name.optional(),
  method: text.optional(),
  u: fine.positive().optional(),
  use: z.boolean().optional(),
  joins: z.boolean().optional(),
  why: text.optional(),
  when: text.optional(),
  by: text.optional(),
  points: z.array(surveyPoint).min(1).max(40),
})

export const state = z.strictObject({
  id,
  name,
  tolerance: plain.positive().optional(),
  load: plain.nonnegative().optional(),
  temperature: temperature.optional(),
  between: z.strictObject({ from: id, to: id, by: z.enum(['load', 'temperature']) }).optional(),
})

const shims = z.strictObject({
  step: fine.positive(),
  stock: z.array(fine.positive()).min(1).max(1000),
  most: plain.int().positive().max(100).optional(),
  rebuild: z.boolean().optional(),
  flat: fine.nonnegative().optional(),
})

/** Asks for the chance that every state is in; how far the work is unsure. */
const sure = z.strictObject({
  shim: fine.nonnegative().optional(),
  slide: fine.nonnegative().optional(),
  foot: length.nonnegative().optional(),
  chance: plain.gt(0).lt(1).optional(),
  draws: plain.int().min(100).max(100_000).optional(),
  seed: plain.int().nonnegative().max(4_294_967_295).optional(),
})

const planSettings = z.strictObject({
  share: plain.gt(0).lte(1).optional(),
  weights: z
    .strictObject({
      shim: plain.nonnegative().optional(),
      side: plain.nonnegative().optional(),
      axial: plain.nonnegative().optional(),
    })
    .optional(),
  guard: plain.nonnegative().max(10).optional(),
  worst: z.boolean().optional(),
  sure: sure.optional(),
  reserve: fine.nonnegative().optional(),
  shims: shims.optional(),
  leave: fine.nonnegative().optional(),
  stage: fromSize(fine.positive(), { value: 1, said: '1 µm' }).optional(),
  slip: fine.positive().optional(),
})

export const trainDocument = z.strictObject({
  format: z.literal('holdfast-train'),
  version: z.literal(1),
  name,
  site: text.optional(),
  note: note.optional(),
  units: z.strictObject({
    length: z.enum(['mm', 'in']),
    fine: z.enum(['um', 'mm', 'mil']),
    temperature: z.enum(['C', 'F']).optional(),
  }),
  clock: z.strictObject({ seenFrom: z.enum(['left', 'right']) }),
  sides: z.strictObject({ three: name, nine: name }).optional(),
  machines: z.array(machine).min(2).max(1000),
  skids: z.array(skid).max(1000).optional(),
  couplings: z.array(coupling).max(1000),
  states: z.array(state).max(200).optional(),
  surveys: z.array(survey).max(6).optional(),
  plan: planSettings.optional(),
  record: open(workRecord).optional(),
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
export type StateDocument = z.infer<typeof state>
