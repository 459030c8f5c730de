/** Splits a double into two halves of 26 bits whose products are exact (Veltkamp 1968). */
const splitter = 2 ** 27 + 1

/** What each product and sum here may be off by, of the size of its terms: 2^-104 and room for the count. */
const perTerm = 2 ** -98

/**
 * A sum of products carried in two doubles, about 32 digits: error-free sums and products after Knuth and Dekker (1971), as in
 * Ogita, Rump and Oishi, "Accurate sum and dot product", 2005. What it leaves open is known, so that a number can be told
 * that the true sum is not under.
 */
export class ExactSum {
  private high = 0
  private low = 0
  private size = 0

  /** Adds a * b. */
  add(a: number, b: number): void {
    const product = a * b
    this.take(product, productError(a, b, product))
  }

  /** Adds another sum times b; what the other leaves open counts times |b|. */
  addSum(other: ExactSum, b: number): void {
    const product = other.high * b
    this.take(product, productError(other.high, b, product) + other.low * b)
    this.size += other.size * Math.abs(b)
  }

  /** Its sign, of the digits that are carried. */
  get sign(): number {
    return Math.sign(this.high + this.low)
  }

  /** The largest double that the true sum is surely not under. */
  roundedDown(): number {
    const nearest = this.high + this.low
    const open = this.size * perTerm
    // nothing was lost in the last sum, and nothing before it that a double could show
    const lost = this.high - nearest + this.low
    return lost >= open ? nearest : nearest - (Math.abs(nearest) * 2 ** -52 + open - lost)
  }

  private take(value: number, rest: number): void {
    const sum = this.high + value
    const part = sum - this.high
    const error = this.high - (sum - part) + (value - part)
    const low = this.low + error + rest
    this.high = sum + low
    this.low = sum - this.high + low
    this.size += Math.abs(value)
  }
}

/** Lower bounds added up and told in another unit, rounded down: no true sum of them is under it. */
export function boundsTogether(bounds: readonly number[], unit: number): number {
  const sum = new ExactSum()
  for (const bound of bounds) sum.add(bound, unit)
  return sum.roundedDown()
}

/** What a product of doubles lost in rounding, exactly. */
function productError(a: number, b: number, product: number): number {
  const [aHigh, bHigh] = [upper(a), upper(b)]
  const [aLow, bLow] = [a - aHigh, b - bHigh]
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow)
}

function upper(a: number): number {
  const wide = splitter * a
  return wide - (wide - a)
}
