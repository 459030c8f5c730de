const bits = new DataView(new ArrayBuffer(8))

/** An exact number, n times a power of two: every double is one, and so are sums and products of them. Nothing is rounded. */
export class Exact {
  private readonly n: bigint
  private readonly power: number

  private constructor(n: bigint, power: number) {
    this.n = n
    this.power = power
  }

  static readonly zero = new Exact(0n, 0)

  /** @throws RangeError of what is no finite number */
  static of(value: number): Exact {
    if (!Number.isFinite(value)) throw new RangeError(`${value} is no number to reckon with`)
    if (value === 0) return Exact.zero
    bits.setFloat64(0, value)
    const word = bits.getBigUint64(0)
    const power = Number((word >> 52n) & 0x7ffn)
    const part = word & 0xfffffffffffffn
    const size = power === 0 ? part : part | 0x10000000000000n
    return new Exact(value < 0 ? -size : size, Math.max(1, power) - 1075)
  }

  get sign(): number {
    return this.n === 0n ? 0 : this.n < 0n ? -1 : 1
  }

  plus(other: Exact): Exact {
    if (this.n === 0n) return other
    if (other.n === 0n) return this
    const power = Math.min(this.power, other.power)
    return new Exact(this.shifted(power) + other.shifted(power), power)
  }

  minus(other: Exact): Exact {
    return this.plus(other.negative())
  }

  times(other: Exact): Exact {
    const n = this.n * other.n
    return n === 0n ? Exact.zero : new Exact(n, this.power + other.power)
  }

  negative(): Exact {
    return new Exact(-this.n, this.power)
  }

  abs(): Exact {
    return this.n < 0n ? this.negative() : this
  }

  /** The double next to it, within some of its last digits: to look at, not to prove by. */
  near(): number {
    return this.over(new Exact(1n, 0))
  }

  /**
   * A double that is not over this divided by another, and under it by a last digit or two.
   * @param other above 0
   */
  overDown(other: Exact): number {
    let low = this.over(other)
    while (Exact.of(low).times(other).minus(this).sign > 0)
      low -= Math.max(Math.abs(low) * 2 ** -52, Number.MIN_VALUE)
    return low
  }

  private shifted(power: number): bigint {
    return this.n << BigInt(this.power - power)
  }

  private over(other: Exact): number {
    if (this.n === 0n) return 0
    const shift = Math.max(0, lengthOf(other.n) - lengthOf(this.n) + 70)
    const ratio = (this.n << BigInt(shift)) / other.n
    const extra = Math.max(0, lengthOf(ratio) - 64)
    const power = extra - shift + this.power - other.power
    // in two steps: the power alone may be smaller than any double
    const first = Math.trunc(power / 2)
    return Number(ratio >> BigInt(extra)) * 2 ** first * 2 ** (power - first)
  }
}

const lengthOf = (n: bigint): number => (n < 0n ? -n : n).toString(2).length
