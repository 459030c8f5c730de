/**
 * Standard normal draws that depend on a seed, a name and a block alone: the same error is drawn alike in every plan that
 * is compared, and an error more changes no other. Uniform numbers by xoshiro128** (Blackman and Vigna, "Scrambled linear
 * pseudorandom number generators", 2018), its state filled from a hash; normal ones from them by the polar method
 * (Marsaglia and Bray 1964). Only 32-bit integers, four operations, square root and logarithm: the same bytes wherever
 * those are the same.
 * @param out filled with draws
 */
export function fillNormals(out: Float64Array, seed: number, name: string, block: number): void {
  const next = xoshiro(stateOf(seed, name, block))
  const n = out.length
  for (let i = 0; i < n; i += 2) {
    let u: number, v: number, s: number
    do {
      u = next() / 0x80000000 - 1
      v = next() / 0x80000000 - 1
      s = u * u + v * v
    } while (s >= 1 || s === 0)
    const by = Math.sqrt((-2 * Math.log(s)) / s)
    out[i] = u * by
    if (i + 1 < n) out[i + 1] = v * by
  }
}

export type GeneratorState = readonly [number, number, number, number]

/** Whole numbers of 32 bits, from a state that is not all 0. */
export function xoshiro([a, b, c, d]: GeneratorState): () => number {
  let [s0, s1, s2, s3] = [a | 0, b | 0, c | 0, d | 0]
  return () => {
    const five = Math.imul(s1, 5)
    const out = Math.imul((five << 7) | (five >>> 25), 9)
    const t = s1 << 9
    s2 ^= s0
    s3 ^= s1
    s1 ^= s2
    s0 ^= s3
    s2 ^= t
    s3 = (s3 << 11) | (s3 >>> 21)
    return out >>> 0
  }
}

/** Four words from seed, name and block: FNV-1a over the name, then a 32-bit finaliser for each. */
function stateOf(seed: number, name: string, block: number): GeneratorState {
  let hash = 0x811c9dc5
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  const word = (k: number) =>
    mixed(mixed(mixed(hash ^ Math.imul(seed, 0x9e3779b1)) + block) + Math.imul(k, 0x85ebca77))
  return [word(1), word(2), word(3), word(4) | 1]
}

/** The finaliser of MurmurHash3 (Appleby, public domain): every bit of the input reaches every bit of the output. */
function mixed(value: number): number {
  let h = value | 0
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return h ^ (h >>> 16)
}
