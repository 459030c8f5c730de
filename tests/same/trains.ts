import { shimmed } from '../packs/shimmed'
import { randomTrain } from '../second/randomTrain'

/** Random trains, every third with a store of shims. */
export function* trains(count: number): Generator<object> {
  for (let i = 0; i < count; i++) {
    const seed = 40_000 + i
    yield i % 3 === 2 ? shimmed(seed) : randomTrain(seed)
  }
}
