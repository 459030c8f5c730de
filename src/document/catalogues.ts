import { z } from 'zod'

/** The published catalogues under shared/, as far as entry offers their rows. */
const number = z.number()
const sourced = { source: z.string(), certainty: z.string(), note: z.string().optional() }

export const toleranceCatalogue = z.object({
  flexPlane: z.array(z.object({ what: z.string(), most: number, unit: z.string(), ...sourced })),
  bySpeed: z.object({
    rows: z.array(
      z.object({
        rpm: number,
        shortOffset: number.optional(),
        shortAngle: number.optional(),
        spacerOffsetPerLength: number.optional(),
        ...sourced,
      }),
    ),
  }),
  gearCouplingsBySurfaceSpeed: z.object({
    rows: z.array(
      z.object({
        from: number,
        below: number.optional(),
        rimReading: number,
        facePerRadius: number,
        ...sourced,
      }),
    ),
  }),
  offsets: z.array(
    z.object({
      what: z.string(),
      rpm: number.optional(),
      from: number.optional(),
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
      usual: z.string().optional(),
      material: z.string(),
      perC: coefficient,
      perF: coefficient,
      range: z.string().optional(),
      ...sourced,
    }),
  ),
})
export type MaterialCatalogue = z.infer<typeof materialCatalogue>

export const limitCatalogue = z.object({
  pipeStrain: z.array(z.object({ what: z.string(), most: number, unit: z.string(), ...sourced })),
})
