import type { Solver } from '../engine/lp/solver'
import type { ReadTrain } from '../engine/planningRun'

/** A run keeps its draws, some megabytes each. */
const mostKnown = 4

/**
 * The trains asked for last, by their documents: what is undone and made again, and a second question about one train,
 * need no second plan.
 */
export class KnownTrains<Known> {
  private readonly known = new Map<string, Known>()
  private readonly make: (read: ReadTrain, solver: Solver, work: number) => Known

  /** @param make what is known of a train that was not asked for lately */
  constructor(make: (read: ReadTrain, solver: Solver, work: number) => Known) {
    this.make = make
  }

  /** @param work how many times the usual work each question of it may take */
  of(read: ReadTrain, solver: Solver, work = 1): Known {
    const key = `${work} ${JSON.stringify(read.document)}`
    const train = this.known.get(key) ?? this.make(read, solver, work)
    // the last one asked for goes last
    this.known.delete(key)
    this.known.set(key, train)
    for (const oldest of this.known.keys()) {
      if (this.known.size <= mostKnown) break
      this.known.delete(oldest)
    }
    return train
  }
}
