/** One reason why a document is refused: where, and what is wrong, found and right. */
export interface Refusal {
  /** Place in the document, such as `couplings[1].found[0].readings[2]`; "" is the document itself. */
  readonly at: string
  /** One sentence: what is wrong, the value found, what would be right. */
  readonly why: string
}

/** Writes a path of keys and indices as people read it. */
export const placeOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((place, key) => {
    if (typeof key === 'number') return `${place}[${key}]`
    const name = String(key)
    if (!/^[A-Za-z_$][\w$]*$/.test(name)) return `${place}[${JSON.stringify(name)}]`
    return place === '' ? name : `${place}.${name}`
  }, '')

/** Shows any value in a message, shortened so that a message stays one sentence. */
export const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  const text = JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}
