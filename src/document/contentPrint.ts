import { canonicalJson } from './canonicalJson'
import { fnv32, utf16Of } from './fingerprint'

/** What a text says, whatever its spaces and the order of its fields; the text itself if it is no JSON. */
export function contentOf(text: string): string {
  try {
    return canonicalJson(JSON.parse(text))
  } catch {
    return text
  }
}

/** Where the second run of a print begins. */
const second = 0x9747b28c

/**
 * A short print of what a text says, to find it among versions: two runs of 32 bits each. Whoever
 * finds one compares the texts: prints of different texts may agree by accident.
 */
export function printOf(text: string): string {
  const content = contentOf(text)
  return `${fnv32(utf16Of(content))}${fnv32(utf16Of(content), second)}`
}
