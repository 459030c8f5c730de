/** Longest name that the formats take. */
export const longestName = 255

/**
 * Turns names of columns or rows into ones that CPLEX LP and free MPS both take: ASCII letters,
 * digits, "_" and ".", beginning with a letter other than e (which could be read as an exponent).
 * Names that fall together are numbered, in order.
 */
export class ExportNames {
  private readonly taken = new Set<string>()

  take(name: string): string {
    const legal = legalName(name)
    let candidate = legal
    for (let n = 2; this.taken.has(candidate.toLowerCase()); n++) {
      const suffix = `_no${n}`
      candidate = legal.slice(0, longestName - suffix.length) + suffix
    }
    this.taken.add(candidate.toLowerCase())
    return candidate
  }
}

function legalName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/ \+$/, ' plus')
    .replace(/ -$/, ' minus')
    .replace(/[^A-Za-z0-9.]+/g, '_')
    .replace(/^_+|_+$/g, '')
  return (/^[A-DF-Za-df-z]/.test(plain) ? plain : `n_${plain}`).slice(0, longestName)
}
