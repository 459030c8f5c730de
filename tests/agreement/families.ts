import { longTrain } from '../holds/longTrain'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import type { Body, Train } from '../second/train'

/** Random trains of one kind by a seed: those that usual ones are seldom. */
type Family = (seed: number) => Promise<Train> | Train

const bodiesOf = ({ machines, skids = [] }: Train): Body[] => [...machines, ...skids]

/** The first train from a seed on that is of a kind. */
function having(kind: (train: Train) => boolean): Family {
  return (seed) => {
    for (let next = seed * 1000; ; next++) {
      const train = randomTrain(next)
      if (kind(train)) return train
    }
  }
}

const asking = (train: Train, share: number): Train => ({
  ...train,
  plan: { ...train.plan, share },
})

/** The share asked for set by the least that any move reaches. */
const nearFloor =
  (shareOf: (floor: number, random: Random) => number): Family =>
  async (seed) => {
    for (let next = seed * 1000; ; next++) {
      const train = randomTrain(next)
      const { floor } = await solveSecond(train)
      const share = shareOf(floor, new Random(next))
      if (share > 0.01 && share <= 1) return asking(train, share)
    }
  }

/** Every tolerance so many times as large. */
const scaled = (train: Train, times: number): Train => ({
  ...train,
  couplings: train.couplings.map((coupling) => ({
    ...coupling,
    tolerance: Object.fromEntries(
      Object.entries(coupling.tolerance).map(([key, value]) => [
        key,
        typeof value === 'number' ? Number((value * times).toPrecision(6)) : value,
      ]),
    ),
  })),
})

/** Ten families; by name, as they are told. */
export const families: Readonly<Record<string, Family>> = {
  tight: nearFloor((floor) => floor * 1.02),
  'a hair over and under the floor': nearFloor(
    (floor, random) => floor + random.pick([1e-6, -1e-6, 1e-5, -1e-5, 1e-4, -1e-4]),
  ),
  'tiny and huge numbers': (seed) =>
    scaled(randomTrain(seed * 1000), new Random(seed).pick([0.02, 0.1, 10, 100])),
  skids: having(({ skids = [] }) => skids.length > 0),
  'six feet': having((train) => bodiesOf(train).some(({ feet }) => feet.length >= 6)),
  'roll with axial': having((train) =>
    bodiesOf(train).some(({ free }) => free?.roll === true && free.axial !== false),
  ),
  'one row': having((train) =>
    bodiesOf(train).some(({ feet }) => new Set(feet.map(({ x }) => x)).size === 1),
  ),
  '30 machines': (seed) => {
    const random = new Random(seed)
    const train = longTrain(30) as unknown as Train
    const held = train.machines.map(() => random.chance(0.15))
    return asking(
      { ...train, machines: train.machines.map((one, m) => ({ ...one, held: held[m] === true })) },
      random.pick([0.6, 0.7, 0.85]),
    )
  },
  'round everywhere': (seed) => {
    const train = randomTrain(seed * 1000)
    return {
      ...train,
      couplings: train.couplings.map((coupling) => ({
        ...coupling,
        tolerance: { ...coupling.tolerance, shape: 'round' as const },
      })),
    }
  },
  'nothing held': (seed) => {
    const train = randomTrain(seed * 1000)
    const loose = <One extends Body>(body: One): One => ({
      ...body,
      held: undefined,
      // what has no feet stands as it is
      anchored: body.feet.length === 0 ? body.anchored : undefined,
    })
    return JSON.parse(
      JSON.stringify({
        ...train,
        machines: train.machines.map(loose),
        ...(train.skids && { skids: train.skids.map(loose) }),
      }),
    ) as Train
  },
}
