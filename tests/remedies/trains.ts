import { example } from '../conflict/examples'
import { fourFeet, given, twoMachines } from '../second/pairs'
import type { Foot, Machine } from '../second/train'

const feet = (change: (f: Foot) => Partial<Foot>): Partial<Machine> => ({
  feet: fourFeet().map((f) => ({ ...f, ...change(f) })),
})

const sides = { three: 'toward the river', nine: 'toward the road' }

/** A train in which a kind of remedy is what it takes, or part of it. */
export interface Impossible {
  readonly name: string
  readonly kind: string
  readonly document: unknown
}

const tight = { offset: 10, angle: 0.05 }
const pair = (
  found: ReturnType<typeof given>,
  right: Partial<Machine>,
  rest: Parameters<typeof twoMachines>[3] = {},
  tolerance: Parameters<typeof twoMachines>[0] = tight,
) => ({ ...twoMachines(tolerance, [found], right, rest), sides })

const hotAndCold = [
  { id: 'cold', name: 'cold start' },
  { id: 'hot', name: 'hot' },
]

/** Two machines each, so that what is needed can be worked out by hand. */
export const small: readonly Impossible[] = [
  {
    name: 'two states that want 100 um between them, and 0.6 of the tolerance',
    kind: 'share',
    document: pair(
      given(0, 0),
      { growth: { hot: [{ at: 0, rise: 100 }] } },
      { states: hotAndCold, plan: { share: 0.6 } },
      { offset: 60, angle: 1 },
    ),
  },
  {
    name: '10 standard uncertainties kept free of 100 um, each of more than 10',
    kind: 'guard',
    document: {
      ...pair(given(0, -100), {}, {}, { offset: 100, angle: 1 }),
      plan: { guard: 10 },
    },
  },
  {
    name: 'growth anywhere between 120 down and 120 up, within 100 um',
    kind: 'intervals',
    document: pair(
      given(0, 0),
      { growth: { hot: [{ at: 0, range: { rise: [-120, 120] } }] } },
      { states: [{ id: 'hot', name: 'hot' }], plan: { worst: true } },
      { offset: 100, angle: 1 },
    ),
  },
  {
    name: 'two states that want 100 um between them',
    kind: 'state tolerance',
    document: pair(
      given(0, 0),
      { growth: { hot: [{ at: 0, rise: 100 }] } },
      { states: hotAndCold },
      { offset: 40, angle: 1 },
    ),
  },
  {
    name: 'one state, and a coupling that its feet cannot put right',
    kind: 'coupling tolerance',
    document: pair(
      given(0, 100),
      feet(() => ({ pack: { now: 1000, min: 930 } })),
      {},
      { offset: 15, angle: 0.01 },
    ),
  },
  {
    name: 'bolts that lean: 200 um of slide and 120 left of 300',
    kind: 're-centre',
    document: pair(
      given(-200, 0),
      feet(() => ({ hole: { clearance: 600, y: 180 } })),
    ),
  },
  {
    name: 'bolts with 120 um each way, and 300 um to slide',
    kind: 'shank',
    document: pair(
      given(-300, 0),
      feet(() => ({ hole: { clearance: 240 } })),
    ),
  },
  {
    name: 'bolts that touch their holes already, on the wrong side',
    kind: 'open hole',
    document: pair(
      given(-1900, 0),
      feet(() => ({ hole: { clearance: 200, y: 120 } })),
    ),
  },
  {
    name: 'packs at a minimum of 1000 um, and 300 um to go down',
    kind: 'minimum pack',
    document: pair(
      given(0, 300),
      feet(() => ({ pack: { now: 1000, min: 1000 } })),
    ),
  },
  {
    name: 'packs of 100 um, under their minimum, and 800 um to go down',
    kind: 'machine feet',
    document: pair(
      given(0, 800),
      feet(() => ({ pack: { now: 100, min: 300 } })),
    ),
  },
  {
    name: 'packs at their maximum, and 800 um to go up',
    kind: 'raise',
    document: pair(
      given(0, -800),
      feet(() => ({ pack: { now: 5000, min: 500, max: 5000 } })),
    ),
  },
  {
    name: 'a nozzle that may rise by 100 um, and 400 um to go up',
    kind: 'restraint',
    document: pair(given(0, -400), {
      restraints: [{ id: 'suction', x: 1500, z: 300, rise: [-100, 100], side: [-500, 500] }],
    }),
  },
  {
    name: 'a machine that may hardly be tilted, and is askew by 0.4 mrad',
    kind: 'tilt',
    document: pair(given(0, 0, 0, -0.4), { tilt: 0.1 }),
  },
  {
    name: 'a machine on dowels, and 100 um to slide',
    kind: 'dowel',
    document: pair(given(-100, 0), { anchored: 'dowelled after the last hot check' }),
  },
  {
    name: 'keyed feet, and 100 um to slide',
    kind: 'dowel',
    document: pair(
      given(-100, 0),
      feet(() => ({ free: { side: false } })),
    ),
  },
  {
    name: 'a machine that was held out of habit',
    kind: 'hold',
    document: pair(given(0, -100), { held: true }),
  },
]

/** Trains of the examples with something else held. */
export const large: readonly Impossible[] = [
  {
    name: 'the gear in the middle held',
    kind: 'hold',
    document: example('bolt-bound-gearbox', ['gear']),
  },
  {
    name: 'the fluid drive held beside a base-bound motor',
    kind: 'machine feet',
    document: example('base-bound-motor', ['fluid-drive']),
  },
  {
    name: 'only the base-bound motor free',
    kind: 'hold + hold',
    document: example('base-bound-motor', ['fluid-drive', 'gear', 'pump']),
  },
  {
    name: 'both ends held',
    kind: 'coupling tolerance',
    document: example('piped-compressor', ['motor', 'compressor']),
  },
  {
    name: 'the bedplate held',
    kind: 'skid',
    document: example('skid-as-one', ['turbine', 'bedplate']),
  },
]
