/** A small seeded generator: the same seed gives the same train on every machine. */
export class Random {
  private state: number

  constructor(seed: number) {
    this.state = (Math.imul(seed, 2654435761) + 1013904223) >>> 0
    for (let i = 0; i < 4; i++) this.next()
  }

  /** Uniform in [0, 1): mulberry32 (public domain, from memory). */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0
    let t = this.state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next()
  }

  /** Whole number from low to high, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor((high - low + 1) * this.next())
  }

  chance(probability: number): boolean {
    return this.next() < probability
  }

  pick<T>(items: readonly [T, ...T[]]): T {
    return items[Math.floor(items.length * this.next())] ?? items[0]
  }

  /** Roughly normal with this standard deviation (sum of uniforms: no far tails). */
  about(deviation: number): number {
    const six = Array.from({ length: 6 }, () => this.next()).reduce((a, b) => a + b, 0)
    return (six - 3) * deviation * Math.SQRT2
  }

  /** Log-uniform between two positive numbers. */
  scale(low: number, high: number): number {
    return low * Math.exp(this.next() * Math.log(high / low))
  }

  /** A value with this probability, else undefined. */
  maybe<T>(probability: number, make: () => T): T | undefined {
    return this.chance(probability) ? make() : undefined
  }
}

/** Rounds to a whole number of steps, without the tail that binary fractions leave. */
export function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6))
}
