import type { ReadingSet, Train } from '../../mechanics/train'
import { growthQuantities } from '../../mechanics/train'
import { doubtfulGrowth, isShutDown } from '../../mechanics/uncertainty/growthPoints'
import { sagDoubt } from '../../mechanics/uncertainty/readingErrors'
import { usualU, workDoubtOf } from '../../mechanics/uncertainty/usual'
import type { AssumedAnswer } from './answer'

/** Every usual value that stands for an uncertainty that the file leaves out; feet of a machine in one line. */
export function assumedOf(train: Train): AssumedAnswer[] {
  return [
    ...train.couplings.flatMap(({ found, name }) =>
      found.flatMap((set, i) => (set.used ? ofSet(set, `set ${i + 1} at ${name}`) : [])),
    ),
    ...train.couplings.flatMap(({ axial, place, name }) =>
      axial && axial.u === undefined
        ? [
            {
              where: `${place}.axial.u`,
              what: `gap between the shaft ends at ${name}, as found`,
              value: usualU.gap,
              quantity: 'length' as const,
            },
          ]
        : [],
    ),
    ...ofGrowth(train),
    ...ofWork(train),
    ...train.bodies.flatMap((body) =>
      !body.held && body.feet.some(({ hole }) => hole && hole.u === undefined)
        ? [
            {
              where: `${body.place}.feet`,
              what: `where the bolts of ${body.name} stand in their holes`,
              value: usualU.bolt,
              quantity: 'fine' as const,
            },
          ]
        : [],
    ),
  ]
}

function ofSet(set: ReadingSet, said: string): AssumedAnswer[] {
  const one = (
    missing: boolean,
    field: string,
    what: string,
    value: number,
    quantity: 'fine' | 'length' | 'slope',
  ): AssumedAnswer[] =>
    missing ? [{ where: `${set.place}.${field}`, what: `${what}, ${said}`, value, quantity }] : []
  if (set.kind === 'line')
    return [
      ...one(!set.uGiven, 'u', 'offsets', set.u, 'fine'),
      ...one(!set.uSlopeGiven, 'uSlope', 'slopes', set.uSlope, 'slope'),
    ]
  return [
    ...one(!set.uGiven, 'u', 'every reading', set.u, 'fine'),
    ...(set.kind === 'gap'
      ? []
      : one(set.uSag === undefined, 'uSag', 'sag of the bracket', sagDoubt(set), 'fine')),
    ...(set.kind === 'rim'
      ? one(set.uAt === undefined, 'uAt', 'place of the dial', usualU.at, 'length')
      : one(
          set.uDiameter === undefined,
          'uDiameter',
          'diameter of the circle',
          usualU.diameter,
          'length',
        )),
  ]
}

const growthNames = { rise: 'rise', side: 'growth sideways', axial: 'growth along' } as const

function ofGrowth(train: Train): AssumedAnswer[] {
  return train.states.flatMap((state): AssumedAnswer[] => {
    if (isShutDown(train, state.id))
      return [
        {
          where: 'states',
          what: `state "${state.name}"`,
          value: 'no growth given, taken as shut-down',
        },
      ]
    return train.machines.flatMap((machine, m) =>
      growthQuantities.flatMap((quantity): AssumedAnswer[] => {
        const points = doubtfulGrowth(train, m, state.id, quantity)
        const where = `${machine.place}.growth`
        const what = `${growthNames[quantity]} of ${machine.name} in "${state.name}"`
        const usual = points.filter(({ by }) => by === 'usual')
        const missing = points.filter(({ by }) => by === 'not entered')
        return [
          ...usual.map(({ u, x }) => ({
            where,
            what: `${what}, at x = ${x}`,
            value: u,
            quantity: 'fine' as const,
          })),
          ...missing.slice(0, 1).map(({ u }) => ({
            where,
            what: `${what}, which is not entered`,
            value: u,
            quantity: 'fine' as const,
          })),
        ]
      }),
    )
  })
}

function ofWork(train: Train): AssumedAnswer[] {
  if (train.bodies.every(({ held }) => held)) return []
  const given = train.plan.sure
  const doubt = workDoubtOf(given)
  const rows = [
    { key: 'shim', what: 'every shim as put in', quantity: 'fine' },
    { key: 'slide', what: 'every slide as done', quantity: 'fine' },
    { key: 'foot', what: 'places of feet along the train', quantity: 'length' },
  ] as const
  return rows.flatMap(({ key, what, quantity }) =>
    given?.[key] === undefined
      ? [{ where: `plan.sure.${key}`, what, value: doubt[key], quantity }]
      : [],
  )
}
