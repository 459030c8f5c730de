/** Longest line that holds a whole list or group. */
const line = 100

/**
 * The text of a train file as people read it: two spaces a level, and what fits a line in one line.
 * Parsing it gives the same document back.
 */
export function fileText(document: unknown): string {
  return `${written(document, '', 0)}\n`
}

function written(value: unknown, indent: string, before: number): string {
  if (typeof value !== 'object' || value === null) return plain(value)
  const flat = oneLine(value)
  if (indent !== '' && flat.length + before + indent.length <= line) return flat
  const inner = `${indent}  `
  const list = Array.isArray(value)
  const parts = list
    ? value.map((item) => `${inner}${written(item, inner, 1)}`)
    : named(value).map(([key, item]) => {
        const name = `${JSON.stringify(key)}: `
        return `${inner}${name}${written(item, inner, name.length + 1)}`
      })
  if (parts.length === 0) return list ? '[]' : '{}'
  const [open, close] = list ? '[]' : '{}'
  return `${open}\n${parts.join(',\n')}\n${indent}${close}`
}

function oneLine(value: unknown): string {
  if (typeof value !== 'object' || value === null) return plain(value)
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`
  const parts = named(value).map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`)
  return parts.length === 0 ? '{}' : `{ ${parts.join(', ')} }`
}

const named = (value: object): [string, unknown][] =>
  Object.entries(value).filter(([, item]) => item !== undefined)

const plain = (value: unknown): string => JSON.stringify(value ?? null)
