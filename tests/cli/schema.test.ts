import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { trainSchema } from '../../src/dev/trainSchema'

test('the JSON Schema under shared/ is the one that the definition gives', () => {
  const current = readFileSync('shared/train.schema.json', 'utf8') === trainSchema()
  expect(current, 'run "npm run schema" after changing the definition').toBe(true)
})

test('the schema refuses unknown fields and knows every reading kind', () => {
  const schema = JSON.parse(trainSchema()) as {
    additionalProperties: boolean
    properties: Record<string, unknown>
    required: string[]
  }
  expect(schema.additionalProperties).toBe(false)
  expect(schema.required).toEqual([
    ...['format', 'version', 'name', 'units', 'clock', 'machines', 'couplings'],
  ])
  const text = JSON.stringify(schema.properties.couplings)
  for (const kind of ['rim', 'face', 'gap', 'spool', 'line'])
    expect(text).toContain(`"const":"${kind}"`)
})
