import { growthQuantities, type ReadingSet, type Train } from '../../mechanics/train'
import { doubtfulGrowth, isShutDown } from '../../mechanics/uncertainty/growthPoints'
import { sagDoubt } from '../../mechanics/uncertainty/readingErrors'
import { usualU, workDoubtOf } from '../../mechanics/uncertainty/usual'
import type { AssumedAnswer } from './answer'

/** Every usual value that stands for an uncertainty that the file leaves out; feet of a machine in one entry. */
export function assumedOf(train: Train): AssumedAnswer[] {
  return [
    ...train.couplings.flatMap(({ found, name }) =>
      found.flatMap((set, i) => (set.used ? ofSet(set, i, name) : [])),
    ),
    ...train.couplings.flatMap(({ axial, place, name }): AssumedAnswer[] =>
      axial && axial.u === undefined
        ? [
            {
              where: `${place}.axial.u`,
              kind: 'gap between the shaft ends, as found',
              of: name,
              value: usualU.gap,
              quantity: 'length',
            },
          ]
        : [],
    ),
    ...ofGrowth(train),
    ...ofWork(train),
    ...train.bodies.flatMap((body): AssumedAnswer[] =>
      !body.held && body.feet.some(({ hole }) => hole && hole.u === undefined)
        ? [
            {
              where: `${body.place}.feet`,
              kind: 'where a bolt stands in its hole',
              of: body.name,
              value: usualU.bolt,
              quantity: 'fine',
            },
          ]
        : [],
    ),
  ]
}

function ofSet(set: ReadingSet, i: number, coupling: string): AssumedAnswer[] {
  const one = (
    missing: boolean,
    field: string,
    kind: string,
    value: number,
    quantity: 'fine' | 'length' | 'slope',
  ): AssumedAnswer[] =>
    missing
      ? [
          {
            where: `${set.place}.${field}`,
            kind,
            of: coupling,
            detail: `set ${i + 1}`,
            value,
            quantity,
          },
        ]
      : []
  if (set.kind === 'line')
    return [
      ...one(!set.uGiven, 'u', 'offset of a line', set.u, 'fine'),
      ...one(!set.uSlopeGiven, 'uSlope', 'slope of a line', set.uSlope, 'slope'),
    ]
  return [
    ...one(!set.uGiven, 'u', 'reading', set.u, 'fine'),
    ...(set.kind === 'gap'
      ? []
      : one(
          set.uSag === undefined,
          'uSag',
          set.sagGiven ? 'sag of a bracket' : 'sag of a bracket, which is not entered',
          sagDoubt(set),
          'fine',
        )),
    ...(set.kind === 'rim'
      ? one(set.uAt === undefined, 'uAt', 'place of a dial', usualU.at, 'length')
      : one(
          set.uDiameter === undefined,
          'uDiameter',
          'diameter of a circle',
          usualU.diameter,
          'length',
        )),
  ]
}

const growthKinds = {
  rise: 'rise by growth',
  side: 'growth sideways',
  axial: 'growth along',
} as const

function ofGrowth(train: Train): AssumedAnswer[] {
  return train.states.flatMap((state): AssumedAnswer[] => {
    if (isShutDown(train, state.id))
      return [
        {
          where: 'states',
          kind: `state ${state.name}`,
          of: '',
          value: 'no growth given, taken as shut-down',
        },
      ]
    return train.machines.flatMap((machine, m) =>
      growthQuantities.flatMap((quantity) =>
        doubtfulGrowth(train, m, state.id, quantity).flatMap(({ by, u, x }): AssumedAnswer[] => {
          if (by !== 'usual' && by !== 'not entered') return []
          const kind = growthKinds[quantity]
          return [
            {
              where: `${machine.place}.growth`,
              kind: by === 'usual' ? kind : `${kind}, which is not entered`,
              of: machine.name,
              detail: `${state.name}, x = ${x}`,
              value: u,
              quantity: 'fine',
            },
          ]
        }),
      ),
    )
  })
}

function ofWork(train: Train): AssumedAnswer[] {
  if (train.bodies.every(({ held }) => held)) return []
  const given = train.plan.sure
  const doubt = workDoubtOf(given)
  const rows = [
    { key: 'shim', kind: 'shim as put in', quantity: 'fine' },
    { key: 'slide', kind: 'slide as done', quantity: 'fine' },
    { key: 'foot', kind: 'place of a foot along the train', quantity: 'length' },
  ] as const
  return rows.flatMap(({ key, kind, quantity }) =>
    given?.[key] === undefined
      ? [{ where: `plan.sure.${key}`, kind, of: '', value: doubt[key], quantity }]
      : [],
  )
}
