import { betweenWords } from '../../language/betweenWords'
import { tidy } from '../../language/tidy'
import { noMotion, type Motion } from '../../mechanics/motion'
import { growthQuantities, type ReadingSet, type State, type Train } from '../../mechanics/train'
import { toLength } from '../../mechanics/units'
import { doubtfulGrowth, isShutDown } from '../../mechanics/uncertainty/growthPoints'
import { uOfSag } from '../../mechanics/uncertainty/readingErrors'
import { usualU, workDoubtOf } from '../../mechanics/uncertainty/usual'
import { disturbedBodies } from '../plan/disturbed'
import type { AssumedAnswer } from './answer'
import { slidingBodies } from './bolts'

/**
 * Every usual value that stands for an uncertainty that the file leaves out and that counts; feet of a machine in one entry.
 * @param motions of the plan: where nothing is shimmed, slid or turned, nothing of that is unsure
 */
export function assumedOf(train: Train, motions: readonly Motion[]): AssumedAnswer[] {
  const moving = new Set(disturbedBodies(train, motions))
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
    ...ofSurveys(train),
    ...ofGrowth(train),
    ...ofWork(train, motions, moving),
    ...ofBolts(train, motions),
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
      ...one(!set.uGiven && given(set.offset), 'u', 'offset of a line', set.u, 'fine'),
      ...one(
        !set.uSlopeGiven && given(set.slope),
        'uSlope',
        'slope of a line',
        set.uSlope,
        'slope',
      ),
    ]
  return [
    ...one(!set.uGiven, 'u', 'reading', set.u, 'fine'),
    ...(set.kind === 'gap'
      ? []
      : one(
          set.uSag === undefined,
          'uSag',
          set.sagGiven ? 'sag of a bracket' : 'sag of a bracket, which is not entered',
          uOfSag(set),
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

const given = ({ y, z }: { readonly y?: number; readonly z?: number }): boolean =>
  y !== undefined || z !== undefined

/** A survey that joins the lines; what only tests them makes no plan less sure. */
const ofSurveys = (train: Train): AssumedAnswer[] =>
  train.surveys.flatMap(({ joins, points, place, name }): AssumedAnswer[] => {
    const without = points.find(({ uGiven }) => !uGiven)
    if (!joins || !without) return []
    return [
      {
        where: `${place}.u`,
        kind: 'place of an axis in a survey',
        of: name,
        value: without.u,
        quantity: 'fine',
      },
    ]
  })

const growthKinds = {
  rise: 'rise by growth',
  side: 'growth sideways',
  axial: 'growth along',
} as const

function ofGrowth(train: Train): AssumedAnswer[] {
  return train.states.flatMap((state, s): AssumedAnswer[] => {
    const between = train.machines.some(({ growthBetween }) => growthBetween.has(state.id))
    return [
      ...(between && state.between
        ? [
            {
              where: `states[${s}].between`,
              kind: `growth in ${state.name}`,
              of: '',
              value: `taken ${betweenWords(train, { ...state, between: state.between })}; that it grows so is not counted as unsure`,
            },
          ]
        : []),
      ...valuesIn(train, state),
    ]
  })
}

/** Usual values of growth that is entered in a state; a machine that stands between two states rests on theirs. */
function valuesIn(train: Train, state: State): AssumedAnswer[] {
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
    machine.growthBetween.has(state.id)
      ? []
      : growthQuantities.flatMap((quantity) =>
          doubtfulGrowth(train, m, state.id, quantity).flatMap(
            ({ by, u, x, axes }): AssumedAnswer[] => {
              if (by !== 'usual' && by !== 'not entered') return []
              const kind = growthKinds[quantity]
              return [
                {
                  where: `${machine.place}.growth`,
                  kind: by === 'usual' ? kind : `${kind}, which is not entered`,
                  of: machine.name,
                  detail: `${state.name}, x = ${tidy(toLength(x, train.units))}${axes.length === 1 ? `, ${axes[0] ?? ''} axis` : ''}`,
                  value: u,
                  quantity: 'fine',
                },
              ]
            },
          ),
        ),
  )
}

function ofWork(
  train: Train,
  motions: readonly Motion[],
  moving: ReadonlySet<number>,
): AssumedAnswer[] {
  const bodies = train.bodies.flatMap((body, b) =>
    moving.has(b) ? [{ body, motion: motions[b] ?? noMotion }] : [],
  )
  const given = train.plan.sure
  const doubt = workDoubtOf(given)
  const rows = [
    {
      key: 'shim',
      kind: 'shim as put in',
      quantity: 'fine',
      counts: bodies.some(({ body }) => body.may.rise),
    },
    {
      key: 'slide',
      kind: 'slide as done',
      quantity: 'fine',
      counts: bodies.some(({ body }) => body.may.slide),
    },
    {
      key: 'foot',
      kind: 'place of a foot along the train',
      quantity: 'length',
      counts: bodies.some(({ motion }) => motion.sy !== 0 || motion.sz !== 0),
    },
  ] as const
  return rows.flatMap(({ key, kind, quantity, counts }) =>
    counts && given?.[key] === undefined
      ? [{ where: `plan.sure.${key}`, kind, of: '', value: doubt[key], quantity }]
      : [],
  )
}

/** Bolts of bodies that slide, as the chance of the bolts counts them. */
const ofBolts = (train: Train, motions: readonly Motion[]): AssumedAnswer[] =>
  slidingBodies(train, motions).flatMap(({ body }): AssumedAnswer[] =>
    body.feet.some(({ hole }) => hole && hole.u === undefined)
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
  )
