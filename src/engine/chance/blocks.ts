import { fillNormals } from '../../mechanics/uncertainty/normals'
import type { CouplingError, CouplingErrors } from './couplingErrors'
import { addBlock, addError, type ErrorBlock } from './judge'

/** Draws are worked on in blocks of so many, which stay near the processor. */
const blockSize = 1000
/** Numbers that are kept from one plan to the next (8 bytes each); beyond it they are drawn again. */
const mostKept = 8_000_000

/** Blocks of draws of one seed; what no plan changes is kept from plan to plan as far as there is room. */
export class ErrorBlocks {
  readonly seed: number
  /** Draws in each block. */
  readonly sizes: readonly number[]
  private readonly standing: readonly CouplingErrors[]
  private readonly sums = new Map<string, ErrorBlock>()
  private readonly draws = new Map<string, Float64Array>()
  private kept = 0

  constructor(standing: readonly CouplingErrors[], draws: number, seed: number) {
    this.standing = standing
    this.seed = seed
    this.sizes = Array.from({ length: Math.ceil(draws / blockSize) }, (_, b) =>
      Math.min(blockSize, draws - b * blockSize),
    )
  }

  /** Standard normal draws of one error in one block. */
  normals(key: string, block: number): Float64Array {
    return this.remembered(this.draws, `${block} ${key}`, () => {
      const out = new Float64Array(this.sizes[block] ?? 0)
      fillNormals(out, this.seed, key, block)
      return out
    })
  }

  /** Sum of errors at a coupling in one block: of the numbers that are judged there. */
  sum(errors: readonly CouplingError[], numbers: number, block: number): ErrorBlock {
    const out = new Float64Array(numbers * (this.sizes[block] ?? 0))
    for (const { key, gains } of errors) addError(out, this.normals(key, block), gains)
    return out
  }

  /** What no plan changes, at a coupling in a state: readings, brackets, gap and growth. */
  standingAt(coupling: number, state: number, block: number): ErrorBlock {
    return this.remembered(this.sums, `${block} ${coupling} ${state}`, () => {
      const errors = this.standing[coupling]
      if (!errors) throw new RangeError(`no coupling ${coupling}`)
      const alike = this.remembered(this.sums, `${block} ${coupling}`, () =>
        this.sum(errors.alike, errors.numbers, block),
      )
      const own = this.sum(errors.byState[state] ?? [], errors.numbers, block)
      addBlock(own, alike)
      return own
    })
  }

  private remembered(
    map: Map<string, Float64Array>,
    key: string,
    make: () => Float64Array,
  ): Float64Array {
    const known = map.get(key)
    if (known) return known
    const made = make()
    this.kept += made.length
    if (this.kept > mostKept) {
      this.sums.clear()
      this.draws.clear()
      this.kept = made.length
    }
    map.set(key, made)
    return made
  }
}
