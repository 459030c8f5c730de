import type { Path } from './place'
import { numberPlaces, type NumberPlace, type Quantity, type Bounds } from './quantities'
import { trainDocument } from './schema'

/** The numbers of the train file as a tree of keys, `*` for any one. */
interface Branch {
  readonly next: Map<string, Branch>
  place?: NumberPlace
}
const root: Branch = { next: new Map() }
for (const place of numberPlaces(trainDocument)) {
  let branch = root
  for (const key of place.path) {
    const next: Branch = branch.next.get(key) ?? { next: new Map() }
    branch.next.set(key, next)
    branch = next
  }
  branch.place = place
}

const below = (branch: Branch | undefined, key: string | number): Branch | undefined =>
  branch?.next.get(String(key)) ?? branch?.next.get('*')

/** What the number at a path measures; "plain" where the train file knows no number. */
export const quantityAt = (path: Path): Quantity =>
  path.reduce<Branch | undefined>(below, root)?.place?.quantity ?? 'plain'

/** A number of a document, what it measures, where it stands. */
export interface NumberFound {
  readonly value: number
  readonly quantity: Quantity
  readonly bounds: Bounds
  /** Whether it stands in a part that the file leaves open (record, pipe strain). */
  readonly open: boolean
  readonly path: Path
}

/** A document, finished or not, with each number that the train file knows replaced; the rest stays. */
export function withNumbers<T>(document: T, change: (found: NumberFound) => number): T {
  const walk = (node: unknown, branch: Branch | undefined, path: Path): unknown => {
    if (!branch) return node
    if (typeof node === 'number') {
      const { quantity = 'plain', bounds = {}, open = false } = branch.place ?? {}
      return change({ value: node, quantity, bounds, open, path })
    }
    if (Array.isArray(node))
      return node.map((item, i) => walk(item, below(branch, i), [...path, i]))
    if (typeof node !== 'object' || node === null) return node
    return Object.fromEntries(
      Object.entries(node).map(([key, value]) => [
        key,
        walk(value, below(branch, key), [...path, key]),
      ]),
    )
  }
  return walk(document, root, []) as T
}
