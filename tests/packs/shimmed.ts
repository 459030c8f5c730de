import { rounded } from '../second/random'
import { trainFrom } from '../second/randomTrain'
import { Streams } from '../second/streams'
import { fineFactor, type Plan, type Train } from '../second/train'

/** `plan.shims` of a train file, in the document's fine unit. */
interface Shims {
  step: number
  stock: number[]
  most?: number
  rebuild?: boolean
  flat?: number
}

export type Shimmed = Train & { plan: Plan & { shims: Shims; leave?: number } }

/** Inch set in mil and metric set in um, as `published-values` 3.3 has them (trade). */
export const inchSet = [1, 2, 3, 4, 5, 10, 15, 20, 25, 50, 75, 100, 125]
export const metricSet = [50, 100, 200, 250, 400, 500, 700, 1000, 2000]

/** A random train with a store of shims; packs mostly on the step, as packs made of that stock are. */
export const shimmed = (seed: number, leave?: number): Shimmed =>
  shimmedFrom(new Streams(seed), leave)

/** The same, from streams of which some may be another train's. */
export function shimmedFrom(streams: Streams, leave?: number): Shimmed {
  const train = trainFrom(streams)
  const random = streams.of('shims')
  const fine = fineFactor(train)
  const mil = train.units.fine === 'mil'
  const thin = random.chance(0.4)
  const step = mil ? random.pick([1, 1, 2]) : random.pick(thin ? [10, 20, 25] : [50, 50, 100])
  const stock = mil
    ? inchSet
    : [...(thin ? [step, 2 * step, 5 * step] : []), ...metricSet].filter((t) => t >= step)
  const typed = (v: number) => (mil ? v : rounded(v / fine, 1e-6))
  const shims: Shims = { step: typed(step), stock: stock.map(typed) }
  if (random.chance(0.3)) shims.most = random.pick([2, 3, 5])
  if (random.chance(0.4)) shims.rebuild = true
  if (random.chance(0.5)) shims.flat = typed(mil ? 1 : random.pick([10, 25, 50]))
  const onStep = streams.of('packs on the step').chance(0.8)
  for (const body of [...train.machines, ...(train.skids ?? [])])
    for (const foot of body.feet)
      if (foot.pack && onStep) {
        const now = Math.max(1, Math.round(foot.pack.now / shims.step)) * shims.step
        foot.pack.now = rounded(now, 1e-6)
      }
  const small = leave ?? streams.of('leave').pick([0, 20, 20, 20, 40])
  return {
    ...train,
    plan: { ...train.plan, shims, leave: rounded(small / fine, 1e-6) },
  }
}
