import { randomTrain } from './randomTrain'
import { Streams } from './streams'
import { statesOf, type Coupling, type Train } from './train'

/** A random train of which half the couplings are clutches, open in some states. */
export const randomClutchTrain = (
  seed: number,
  made: (seed: number) => Train = randomTrain,
): Train => clutchesFrom(new Streams(seed), made(seed))

/** A train with clutches from streams of which some may be another train's. */
export function clutchesFrom(streams: Streams, train: Train): Train {
  const states = train.states ? statesOf(train).map(({ id }) => id) : []
  const couplings = train.couplings.map((c): Coupling => {
    const disengaged = states.filter((state) => streams.of('clutch', c.id, state).chance(0.5))
    const clutch =
      streams.of('clutch', c.id).chance(0.5) &&
      disengaged.length > 0 &&
      disengaged.length < states.length
    return clutch ? { ...c, disengaged } : c
  })
  return { ...train, couplings }
}
