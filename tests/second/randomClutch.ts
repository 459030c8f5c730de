import { Random } from './random'
import { randomTrain } from './randomTrain'
import { statesOf, type Coupling, type Train } from './train'

/** A random train of which half the couplings are clutches, open in some states, drawn by a stream of its own. */
export function randomClutchTrain(
  seed: number,
  made: (seed: number) => Train = randomTrain,
): Train {
  const random = new Random(seed + 1_100_000)
  const train = made(seed)
  const states = train.states ? statesOf(train).map(({ id }) => id) : []
  const couplings = train.couplings.map((c): Coupling => {
    const disengaged = states.filter(() => random.chance(0.5))
    const clutch = random.chance(0.5) && disengaged.length > 0 && disengaged.length < states.length
    return clutch ? { ...c, disengaged } : c
  })
  return { ...train, couplings }
}
