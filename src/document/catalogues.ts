import * as z from 'zod/mini'

/** The published catalogues under shared/, as far as entry offers their rows. */
const number = z.number()
const sourced = { source: z.string(), certainty: z.string(), note: z.optional(z.string()) }

export const toleranceCatalogue = z.object({
  flexPlane: z.array(z.object({ what: z.string(), most: number, unit: z.string(), ...sourced })),
  bySpeed: z.object({
    rows: z.array(
      z.object({
        rpm: number,
        shortOffset: z.optional(number),
        shortAngle: z.optional(number),
        spacerOffsetPerLength: z.optional(number),
        ...sourced,
      }),
    ),
  }),
  gearCouplingsBySurfaceSpeed: z.object({
    rows: z.array(
      z.object({
        from: number,
        below: z.optional(number),
        rimReading: number,
        facePerRadius: number,
        ...sourced,
      }),
    ),
  }),
  offsets: z.array(
    z.object({
      what: z.string(),
      rpm: z.optional(number),
      from: z.optional(number),
      most: number,
      unit: z.string(),
      ...sourced,
    }),
  ),
})
export type ToleranceCatalogue = z.infer<typeof toleranceCatalogue>

const coefficient = z.union([number, z.tuple([number, number])])

export const materialCatalogue = z.object({
  rows: z.array(
    z.object({
      /** What the trade calls it for short, of the materials that most machines stand on; one row a material. */
      usual: z.optional(z.string()),
      material: z.string(),
      perC: coefficient,
      perF: coefficient,
      range: z.optional(z.string()),
      ...sourced,
    }),
  ),
})
export type MaterialCatalogue = z.infer<typeof materialCatalogue>

export const limitCatalogue = z.object({
  pipeStrain: z.array(z.object({ what: z.string(), most: number, unit: z.string(), ...sourced })),
})
