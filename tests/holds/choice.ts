import { readFileSync } from 'node:fs'
import { readTrain } from '../../src/document/readTrain'
import type { Body, Train } from '../../src/mechanics/train'

/** Reads a document; a refusal is an error here. */
export function read(document: unknown): Train {
  const result = readTrain(document)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refused)}`)
  return result.train
}

export const exampleFile = (name: string): unknown =>
  JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as unknown

export const example = (name: string): Train => read(exampleFile(name))

/** The same train with exactly these bodies held, and the anchored ones. */
export function holding(train: Train, held: readonly string[]): Train {
  const choose = (body: Body): Body => ({
    ...body,
    held: body.anchored !== undefined || held.includes(body.id),
  })
  const bodies = train.bodies.map(choose)
  return { ...train, bodies, machines: bodies.slice(0, train.machines.length) }
}

/** Every set of bodies that may be held beside the anchored ones. */
export function subsets(train: Train): string[][] {
  const loose = train.bodies.filter(({ anchored }) => anchored === undefined)
  return Array.from({ length: 2 ** loose.length }, (_, bits) =>
    loose.filter((_body, i) => ((bits >> i) & 1) === 1).map(({ id }) => id),
  )
}
