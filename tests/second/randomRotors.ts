import type { Random } from './random'
import { randomTrain } from './randomTrain'
import { Streams } from './streams'
import type { Coupling, Room, Rotor, Train } from './train'

type Axial = NonNullable<Coupling['axial']>

/** Numbers of up to five digits, as somebody would type them. */
const typed = (value: number): number => Number(value.toPrecision(5))

/** A range around a place, each end so far from it, with 0 in it. */
const around = (random: Random, place: number, size: number): Room => [
  typed(Math.min(0, place - size * random.between(0.3, 1.6))),
  typed(Math.max(0, place + size * random.between(0.3, 1.6))),
]

/** What a coupling's maker and the bearings allow, of the size of the tolerance, so that any of them may bind. */
function rotorsOf(random: Random, axial: Axial): Axial {
  const size = axial.tolerance
  const centre = typed(random.about(1.5 * size))
  const thrust = (): Rotor => ({ float: around(random, 0, 0.15 * size) })
  const carried = (): Rotor => ({
    centre,
    float: random.maybe(0.8, () => around(random, centre, 0.55 * size)),
  })
  const side = random.pick(['left', 'right', 'none'] as const)
  const rotors = {
    left: side === 'left' ? carried() : random.maybe(0.5, thrust),
    right: side === 'right' ? carried() : random.maybe(0.5, thrust),
  }
  // what is wanted is wanted of rotors on their magnetic centres
  const open = { left: -centre, right: centre, none: 0 }[side]
  return {
    ...axial,
    want: typed(axial.want + open),
    stretch: random.maybe(0.7, () => around(random, 0, 0.9 * size)),
    rotors,
  }
}

/** A random train in which every gap has rotors. */
export const randomRotorTrain = (
  seed: number,
  made: (seed: number) => Train = randomTrain,
): Train => rotorsFrom(new Streams(seed), made(seed))

/** A train with rotors from streams of which some may be another train's. */
export function rotorsFrom(streams: Streams, train: Train): Train {
  const couplings = train.couplings.map((c) =>
    c.axial ? { ...c, axial: rotorsOf(streams.of('rotors', c.id), c.axial) } : c,
  )
  return JSON.parse(JSON.stringify({ ...train, couplings })) as Train
}
