import { harmless } from '../language/harmless'
import type { TrainDocument } from './schema'

/**
 * The document with every text safe wherever it is shown; names and ids are so already, or they would be refused.
 * The record stays as it is written.
 */
export function harmlessTexts({ record, ...document }: TrainDocument): TrainDocument {
  const walk = (node: unknown): unknown => {
    if (typeof node === 'string') return harmless(node)
    if (Array.isArray(node)) return node.map(walk)
    if (typeof node !== 'object' || node === null) return node
    return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, walk(value)]))
  }
  return { ...(walk(document) as TrainDocument), ...(record !== undefined && { record }) }
}
