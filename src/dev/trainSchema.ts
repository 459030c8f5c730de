import * as z from 'zod/mini'
import { boundsOf, quantityOf, type Quantity } from '../document/quantities'
import { inAnyUnit } from '../document/unitConverter'
import { trainDocument } from '../document/schema'

/** What a number is written in. */
const writtenIn: Record<Quantity, string> = {
  length: 'in units.length',
  fine: 'in units.fine',
  slope: 'in mrad (the same number in mil/in)',
  temperature: 'in degrees of units.temperature',
  expansion: 'in 1e-6 per degree of units.temperature',
  torque: 'in N·m, or in ft·lb where units.length is "in"',
  mass: 'in kg, or in lb where units.length is "in"',
  speed: 'in rpm',
  sliding: 'in mm/s, or in in/s where units.length is "in"',
  hour: 'hour on a clock face',
  time: 'in minutes',
  plain: 'the same in all units',
}

/** The JSON Schema of the train file as text, made from the one definition that the engine reads by. */
export function trainSchema(): string {
  const schema = z.toJSONSchema(trainDocument, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      const quantity = quantityOf(zodSchema)
      if (!quantity) return
      jsonSchema.description = writtenIn[quantity]
      const { least, most } = boundsOf(zodSchema)
      // the widest that any unit allows: a shape does not know the units of a document
      const largest = most && inAnyUnit(quantity, most).high
      if (largest === undefined) return
      if (jsonSchema.exclusiveMaximum === undefined) jsonSchema.maximum ??= largest
      if (!least) {
        jsonSchema.minimum ??= -largest
        return
      }
      const smallest = inAnyUnit(quantity, least).low
      if (jsonSchema.exclusiveMinimum === 0) {
        delete jsonSchema.exclusiveMinimum
        jsonSchema.minimum = smallest
      } else jsonSchema.not = { exclusiveMinimum: 0, exclusiveMaximum: smallest }
    },
  })
  const titled = {
    $schema: schema.$schema,
    title: 'Train file, version 1',
    description:
      'The shape of a train file. What a shape cannot say (neighbours joined, ids used once, sizes, readings that suffice) is checked when the file is read; `holdfast check FILE` says it in words.',
    ...schema,
  }
  return `${JSON.stringify(titled, null, 2)}\n`
}
