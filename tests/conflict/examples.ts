import { readFileSync } from 'node:fs'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'

const folder = new URL('../../examples/', import.meta.url)

/** An example with exactly these bodies held. */
export function example(file: string, held: readonly string[]): TrainDocument {
  const text = readFileSync(new URL(`${file}.json`, folder), 'utf8')
  const read = readTrain(JSON.parse(text) as unknown)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const choose = <Body extends { id: string }>(body: Body) => ({
    ...body,
    held: held.includes(body.id),
  })
  const { document } = read
  return {
    ...document,
    machines: document.machines.map(choose),
    ...(document.skids && { skids: document.skids.map(choose) }),
  }
}

/** A document as the engine reads it; a refused one fails the test with its refusals. */
export function trainOf(document: unknown) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train
}
