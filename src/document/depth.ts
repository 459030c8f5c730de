/** Most levels of groups and lists within each other that a document may have: ten times what a train file has. */
export const mostLevels = 100

/** What is said of a document with more. */
export const tooDeep = `nested deeper than ${mostLevels} levels, which no train file needs`

/** Whether groups and lists of a document lie deeper within each other than `mostLevels`. */
export function isTooDeep(document: unknown): boolean {
  let level = [document].filter(isNested)
  for (let depth = 0; level.length > 0; depth++) {
    if (depth >= mostLevels) return true
    level = level.flatMap((node) => Object.values(node).filter(isNested))
  }
  return false
}

const isNested = (node: unknown): node is object => typeof node === 'object' && node !== null
