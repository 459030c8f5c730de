import { pathFromPlace } from '../../document/place'
import { placeOf } from '../../document/refusal'
import { betweenWords } from '../../language/betweenWords'
import { tol } from '../../mechanics/tolerances'
import { listed } from '../../language/names'
import { setName } from '../../language/readingSets'
import type { Body, Coupling, Train } from '../../mechanics/train'
import type { NotEntered } from './answer'

/** Everything the plan had to do without, and what it did instead; nothing is taken as zero in silence. */
export function notEnteredOf(train: Train): NotEntered[] {
  return [
    ...ofChoices(train),
    ...train.bodies.flatMap((body) => ofFeet(train, body)),
    ...ofGrowth(train),
    ...train.couplings.flatMap((coupling) => [
      ...atThePlane(coupling),
      ...coupling.found.flatMap((set, i) =>
        set.used && set.kind !== 'line' && set.kind !== 'gap' && !set.sagGiven
          ? [
              {
                where: `${set.place}.sag`,
                what: `sag of ${setName(train, set, i)}, at ${coupling.name}`,
                instead: 'taken as none',
              },
            ]
          : [],
      ),
      ...(coupling.setting?.used === true && coupling.setting.lacks.length > 0
        ? [
            {
              where: `${coupling.place}.setting`,
              what: `${coupling.setting.lacks.join(', ')} of the cold setting at ${coupling.name}`,
              instead: 'taken as 0',
            },
          ]
        : []),
      ...(coupling.gear && (coupling.gear.pitch === undefined || coupling.gear.speed === undefined)
        ? [
            {
              where: `${coupling.place}.${coupling.gear.pitch === undefined ? 'gear.pitch' : 'speed'}`,
              what: `${coupling.gear.pitch === undefined ? 'pitch diameter of the teeth' : 'speed'} at ${coupling.name}`,
              instead: 'how fast its teeth slide is not told',
            },
          ]
        : []),
      ...(coupling.axial
        ? ofRotors(coupling)
        : [
            {
              where: `${coupling.place}.axial`,
              what: `gap between the shaft ends at ${coupling.name}`,
              instead: 'not checked',
            },
          ]),
    ]),
  ]
}

/** A gap alone says nothing of what rotors and the coupling do while they run. */
function ofRotors({ axial, name, place }: Coupling): NotEntered[] {
  const { stretch, rotors: { left, right } = {} } = axial ?? {}
  return [
    ...((left ?? right)
      ? []
      : [
          {
            where: `${place}.axial.rotors`,
            what: `float and magnetic centre of the rotors at ${name}`,
            instead: 'taken to run where they lay when the gap was found',
          },
        ]),
    ...(stretch
      ? []
      : [
          {
            where: `${place}.axial.stretch`,
            what: `stretch that the maker of ${name} allows`,
            instead: 'not checked, but for the tolerance of the gap',
          },
        ]),
  ]
}

/**
 * Dials that stand just where their shaft's flex plane does, which is where a set that is begun puts them; not of a set that
 * says how sure that place is.
 */
function atThePlane({ found, p, q, name }: Train['couplings'][number]): NotEntered[] {
  const sets = found.filter(
    (set) =>
      set.used &&
      set.kind === 'rim' &&
      set.uAt === undefined &&
      Math.abs(set.at - (set.rides === 'left' ? p : q)) < tol.sameX,
  )
  const [first] = sets
  if (!first) return []
  const dials = sets.length === 1 ? 'the dial rides' : 'the dials ride'
  return [
    {
      where: `${first.place}.at`,
      what: `where ${dials} at ${name}`,
      instead: 'taken to be at the flex plane',
    },
  ]
}

/** What decides between machines, and what turns amounts into plates. */
function ofChoices({ bodies, plan }: Train): NotEntered[] {
  const piped = bodies.filter(
    ({ restraints, effort, anchored }) =>
      restraints.length > 0 && effort === 0 && anchored === undefined,
  )
  return [
    ...(bodies.some(({ held }) => held)
      ? []
      : [
          {
            where: 'machines[0].held',
            what: 'which machine is fixed',
            instead: 'every one may move',
          },
        ]),
    ...piped.map((body) => ({
      where: `${body.place}.effort`,
      what: `effort of moving ${body.name}, which is piped`,
      instead: 'taken as none when choices are ranked',
    })),
    ...(plan.shims === undefined && bodies.some(({ held, may }) => !held && may.rise)
      ? [
          {
            where: 'plan.shims',
            what: 'shims in the store',
            instead: 'amounts are told as worked out, not in plates',
          },
        ]
      : []),
  ]
}

/** One line for all feet of a body that lack the same thing. */
function ofFeet(train: Train, body: Body): NotEntered[] {
  if (body.held) return []
  const lacking = (
    what: string,
    field: string,
    instead: string,
    lacks: (foot: Body['feet'][number]) => boolean,
  ) => {
    const feet = body.feet.filter(lacks)
    if (feet.length === 0) return []
    const all = feet.length === body.feet.length
    const which = all ? 'every foot' : `foot ${feet.map(({ id }) => id).join(', ')}`
    // the first of them, where it is entered
    const first = body.feet.findIndex(lacks)
    const where = `${body.place}.feet[${first}].${field}`
    return [{ where, what: `${what}, ${body.name} ${which}`, instead }]
  }
  return [
    ...(body.may.rise
      ? lacking(
          'shim pack',
          'pack.now',
          'any change taken as possible',
          (foot) => foot.mayShim && !foot.pack,
        )
      : []),
    ...(body.may.slide || body.may.axial
      ? lacking(
          'hole and bolt',
          'hole.clearance',
          'any slide taken as possible',
          (foot) => foot.maySlide && !foot.hole,
        )
      : []),
    ...(body.may.slide || body.may.axial
      ? lacking(
          'where the bolt stands in its hole',
          'hole.y',
          'taken as in the middle',
          (foot) => foot.hole?.centred === false,
        )
      : []),
    ...(train.plan.reserve === 0 &&
    body.feet.some((foot) => foot.hole) &&
    body.place === firstWithHoles(train)
      ? [
          {
            where: 'plan.reserve',
            what: 'room to keep between bolt and hole',
            instead: 'taken as none',
          },
        ]
      : []),
  ]
}

const firstWithHoles = (train: Train) =>
  train.bodies.find((body) => !body.held && body.feet.some((foot) => foot.hole))?.place

/**
 * True where every coupling of a machine is judged by its maker's cold setting, which has growth in
 * it; along the train none can be there, and that counts only where a gap is checked.
 */
function bySettings(train: Train, machine: number): boolean {
  return train.couplings
    .filter(({ left, right }) => left === machine || right === machine)
    .every(({ setting, axial }) => setting?.used === true && !axial)
}

/**
 * States without growth, machine by machine; a state in which nothing grows is one line, and so is one that is taken
 * between two others.
 */
function ofGrowth(train: Train): NotEntered[] {
  return train.states.flatMap((state, s) => {
    const counts = train.machines.filter((_, m) => !bySettings(train, m))
    const between = counts.filter(({ growthBetween }) => growthBetween.has(state.id))
    const without = counts.filter(
      (machine) => !between.includes(machine) && (machine.growth.get(state.id) ?? []).length === 0,
    )
    if (without.length === train.machines.length)
      return [
        {
          where: growthPlace(train.machines[0]?.place ?? '', state.id),
          what: everyMachineIn(state.name),
          instead: 'taken as none: judged as the train stands shut down',
        },
      ]
    return [
      ...(between.length > 0 && state.between
        ? [
            {
              where: `states[${s}].between`,
              what: `growth of ${between.length === train.machines.length ? 'every machine' : listed(between.map(({ name }) => name))} in "${state.name}"`,
              instead: `taken ${betweenWords(train, { ...state, between: state.between })}`,
            },
          ]
        : []),
      ...without.map((machine) => ({
        where: growthPlace(machine.place, state.id),
        what: `growth of ${machine.name} in "${state.name}"`,
        instead: 'taken as none',
      })),
    ]
  })
}

/** The growth of a state in which no machine has any. */
export const everyMachineIn = (state: string): string => `growth of every machine in "${state}"`

/** Where the growth of a machine in a state is entered. */
const growthPlace = (machine: string, state: string): string =>
  placeOf([...pathFromPlace(machine), 'growth', state])
