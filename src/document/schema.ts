import { z } from 'zod'
import { roles } from '../mechanics/train'

/**
 * The train file, version 1: the only definition of its shape. Numbers are as typed, in the
 * document's own units. What a shape cannot say (neighbours, ids, sizes) is in `refusals/`.
 */

const number = z.number()
const positive = z.number().positive()
const notNegative = z.number().nonnegative()
const text = z.string().max(100_000)
const id = z
  .string()
  .min(1)
  .max(100)
  .refine((value) => value !== '__proto__', 'is not a usable id')

export const vector = z.strictObject({ y: number.optional(), z: number.optional() })
const range = z.tuple([number, number])
const axis = z.strictObject({ y: number.optional(), z: number })

const pack = z.strictObject({
  now: notNegative,
  min: notNegative.optional(),
  max: notNegative.optional(),
})
const hole = z.strictObject({ clearance: notNegative, x: number.optional(), y: number.optional() })

export const foot = z.strictObject({
  id,
  x: number,
  y: number.optional(),
  free: z.strictObject({ shim: z.boolean().optional(), side: z.boolean().optional() }).optional(),
  pack: pack.optional(),
  lift: number.optional(),
  hole: hole.optional(),
  soft: notNegative.optional(),
  gaps: z.tuple([notNegative, notNegative, notNegative, notNegative]).optional(),
})

export const restraint = z.strictObject({
  id,
  x: number,
  y: number.optional(),
  z: number,
  axial: range.optional(),
  side: range.optional(),
  rise: range.optional(),
})

export const growthPoint = z.strictObject({
  at: number,
  axis: z.enum(['left', 'right']).optional(),
  rise: number.optional(),
  side: number.optional(),
  axial: number.optional(),
  heat: z
    .strictObject({
      height: number,
      expansion: number,
      from: number,
      to: number,
      material: text.optional(),
    })
    .optional(),
  u: notNegative.optional(),
})

const freedom = z.strictObject({
  shim: z.boolean().optional(),
  side: z.boolean().optional(),
  axial: z.boolean().optional(),
  roll: z.boolean().optional(),
})

const bodyFields = {
  id,
  name: text,
  held: z.boolean().optional(),
  anchored: z.string().min(1).optional(),
  free: freedom.optional(),
  weight: notNegative.optional(),
  effort: notNegative.optional(),
  tilt: notNegative.optional(),
  feet: z.array(foot),
  restraints: z.array(restraint).optional(),
  mass: positive.optional(),
  jack: positive.optional(),
  level: number.optional(),
}

export const machine = z.strictObject({
  ...bodyFields,
  role: z.enum(roles).optional(),
  speed: notNegative.optional(),
  base: number.optional(),
  axis: z.union([axis, z.strictObject({ left: axis, right: axis })]),
  growth: z.record(z.string(), z.array(growthPoint)).optional(),
})

export const skid = z.strictObject({ ...bodyFields, carries: z.array(id) })

/** Hour on a clock face, 0 < hour <= 12, and what the dial showed there. */
const reading = z.tuple([z.number().gt(0).lte(12), number])
const setFields = {
  use: z.boolean().optional(),
  why: text.optional(),
  when: text.optional(),
  by: text.optional(),
  u: positive.optional(),
}
const readings = z.array(reading).min(1)

export const readingSet = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rim'),
    rides: z.enum(['left', 'right']),
    at: number,
    sag: number.optional(),
    readings,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('face'),
    rides: z.enum(['left', 'right']),
    diameter: positive,
    face: z.enum(['front', 'back']).optional(),
    sag: number.optional(),
    readings,
    ...setFields,
  }),
  z.strictObject({ kind: z.literal('gap'), diameter: positive, readings, ...setFields }),
  z.strictObject({
    kind: z.literal('spool'),
    end: z.enum(['left', 'right']),
    diameter: positive,
    sag: number.optional(),
    readings,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('line'),
    at: number,
    offset: vector.optional(),
    slope: vector.optional(),
    uSlope: positive.optional(),
    ...setFields,
  }),
])

const end = z.strictObject({ machine: id, plane: number })

export const tolerance = z.strictObject({
  flex: positive.optional(),
  offset: positive.optional(),
  angle: positive.optional(),
  shape: z.enum(['box', 'round']).optional(),
  basis: text.optional(),
})

export const coupling = z.strictObject({
  id,
  name: text.optional(),
  left: end,
  right: end,
  speed: notNegative.optional(),
  tolerance,
  aim: z
    .record(z.string(), z.strictObject({ offset: vector.optional(), slope: vector.optional() }))
    .optional(),
  setting: z
    .strictObject({
      offset: vector.optional(),
      slope: vector.optional(),
      from: text.optional(),
      use: z.boolean().optional(),
      why: text.optional(),
    })
    .optional(),
  axial: z.strictObject({ found: number, want: number, tolerance: positive }).optional(),
  strain: z.unknown().optional(),
  found: z.array(readingSet),
})

export const state = z.strictObject({ id, name: text, tolerance: positive.optional() })

export const shims = z.strictObject({
  step: positive,
  stock: z.array(positive).min(1),
  most: z.number().int().positive().optional(),
  rebuild: z.boolean().optional(),
  flat: notNegative.optional(),
})

export const planSettings = z.strictObject({
  share: z.number().gt(0).lte(1).optional(),
  weights: z
    .strictObject({
      shim: notNegative.optional(),
      side: notNegative.optional(),
      axial: notNegative.optional(),
    })
    .optional(),
  guard: z.literal(0).optional(),
  reserve: notNegative.optional(),
  shims: shims.optional(),
  leave: notNegative.optional(),
  stage: positive.optional(),
})

export const trainDocument = z.strictObject({
  format: z.literal('holdfast-train'),
  version: z.literal(1),
  name: text,
  site: text.optional(),
  note: text.optional(),
  units: z.strictObject({
    length: z.enum(['mm', 'in']),
    fine: z.enum(['um', 'mm', 'mil']),
    temperature: z.enum(['C', 'F']).optional(),
  }),
  clock: z.strictObject({ seenFrom: z.enum(['left', 'right']) }),
  sides: z.strictObject({ three: text, nine: text }).optional(),
  machines: z.array(machine).min(2).max(1000),
  skids: z.array(skid).max(1000).optional(),
  couplings: z.array(coupling),
  states: z.array(state).optional(),
  plan: planSettings.optional(),
  record: z.unknown().optional(),
})

export type TrainDocument = z.infer<typeof trainDocument>
export type MachineDocument = z.infer<typeof machine>
export type SkidDocument = z.infer<typeof skid>
export type FootDocument = z.infer<typeof foot>
export type RestraintDocument = z.infer<typeof restraint>
export type GrowthPointDocument = z.infer<typeof growthPoint>
export type CouplingDocument = z.infer<typeof coupling>
export type ReadingSetDocument = z.infer<typeof readingSet>
export type StateDocument = z.infer<typeof state>
