/** The same document in one spelling: fields in the order of the alphabet, no spaces. */
function canonical(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(canonical)
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).filter(([, inside]) => inside !== undefined)
  entries.sort(([a], [b]) => (a < b ? -1 : 1))
  return Object.fromEntries(entries.map(([key, inside]) => [key, canonical(inside)]))
}

/** What a text says, whatever its spaces and the order of its fields; the text itself if it is no JSON. */
export function contentOf(text: string): string {
  try {
    return JSON.stringify(canonical(JSON.parse(text)))
  } catch {
    return text
  }
}

/**
 * A short print of what a text says, to find it among versions: two runs of FNV-1a, 32 bits each.
 * Whoever finds one compares the texts: prints of different texts may agree by accident.
 */
export function printOf(text: string): string {
  const content = contentOf(text)
  return `${fnv(content, 0x811c9dc5)}${fnv(content, 0x9747b28c)}`
}

function fnv(text: string, seed: number): string {
  let hash = seed
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return (hash >>> 0).toString(16).padStart(8, '0')
}
