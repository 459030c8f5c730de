import { Random } from '../random'

/** Standard normal draws that follow from a seed alone. */
export class Normals {
  private x: number
  private y: number
  private z: number
  private w: number
  private second: number | undefined

  constructor(seed: number) {
    const seeds = new Random(seed)
    const word = () => Math.floor(seeds.next() * 4294967296) | 0
    this.x = word()
    this.y = word()
    this.z = word()
    // a state of zeros alone would stay there
    this.w = word() | 1
    for (let i = 0; i < 16; i++) this.uniform()
  }

  /** Uniform above 0 and up to 1: Marsaglia, Xorshift RNGs, J. Stat. Softw. 8(14), 2003, the one of 128 bits (from memory). */
  private uniform(): number {
    const t = this.x ^ (this.x << 11)
    this.x = this.y
    this.y = this.z
    this.z = this.w
    this.w = this.w ^ (this.w >>> 19) ^ t ^ (t >>> 8)
    return ((this.w >>> 0) + 1) / 4294967296
  }

  /** Box and Muller, Ann. Math. Stat. 29, 1958, p. 610 (from memory): two draws at a time. */
  next(): number {
    if (this.second !== undefined) {
      const kept = this.second
      this.second = undefined
      return kept
    }
    const far = Math.sqrt(-2 * Math.log(this.uniform()))
    const angle = 2 * Math.PI * this.uniform()
    this.second = far * Math.sin(angle)
    return far * Math.cos(angle)
  }
}
