import { z } from 'zod'
import { trainDocument } from '../document/schema'

/** The JSON Schema of the train file as text, made from the one definition that the engine reads by. */
export function trainSchema(): string {
  const schema = z.toJSONSchema(trainDocument, { target: 'draft-2020-12', io: 'input' })
  const titled = {
    $schema: schema.$schema,
    title: 'Train file, version 1',
    description:
      'The shape of a train file. What a shape cannot say (neighbours joined, ids used once, sizes, readings that suffice) is checked when the file is read; `holdfast check FILE` says it in words.',
    ...schema,
  }
  return `${JSON.stringify(titled, null, 2)}\n`
}
