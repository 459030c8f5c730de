import { judgedStates } from '../mechanics/engaged'
import { hasMoves } from '../engine/plan/moves'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { footFacts } from '../scene/footFacts'
import { largestMove } from '../engine/fieldwork/steps/moves'
import { answerMotions, movedAxis } from '../scene/axisLines'
import { shareText } from '../language/amounts'
import { bindingSentence } from '../text/bindingWords'
import { capital, inSentence, listed } from '../language/names'
import { lineValueAt } from '../mechanics/growth'
import { noMotion } from '../mechanics/motion'
import type { Misalignment } from '../mechanics/readings/equation'
import { asFound } from '../mechanics/readings/asFound'
import { stateShift } from '../mechanics/misalignment/stateShift'
import type { Coupling, State, Train } from '../mechanics/train'
import type { Drawn } from './job'
import type { Block } from './page'
import type { Pencil } from './pencil'
import type { Plane } from './arithmetic'

/** Feet of one machine at one x, up and to the side (um): + is up, toward 3 o'clock. */
export interface CentreRow {
  readonly machine: number
  readonly x: number
  /** Where its axis stands, against the other axis drawn on, and where it is wanted, cold. */
  readonly stands: Ways
  readonly wanted: Ways
  /** What the plan moves it there, and all that carries it. */
  readonly plan: Ways
}
type Ways = Readonly<Record<Plane, number>>

/** Skids as well as machines: what stands on one goes with it. */
const bodiesOf = (train: Train, { left, right }: Coupling): number[] =>
  [left, right].flatMap((m) => [m, train.machines[m]?.skid ?? m])

/** The largest move at any foot beside a coupling (um). */
export function moveBeside({ train, answer }: Drawn, coupling: Coupling): number {
  const motions = answerMotions(train, answer) ?? []
  return Math.max(
    0,
    ...bodiesOf(train, coupling).map((b) => {
      const body = train.bodies[b]
      return body ? largestMove(body, motions[b] ?? noMotion) : 0
    }),
  )
}

/**
 * What would bring one coupling to its exact centre in a state by one of its machines alone, beside what the plan does.
 * What is wanted cold is what growth and aim take off again; the left machine is seen from the right axis drawn on, so
 * that its signs turn.
 */
export function centreRows(job: Drawn, coupling: Coupling, state: State): CentreRow[] {
  const { train, answer } = job
  const motions = answerMotions(train, answer) ?? train.bodies.map(() => noMotion)
  const { line } = asFound(coupling)
  const wanted = wantedCold(train, coupling, state)
  return (['right', 'left'] as const).flatMap((end) => {
    const machine = coupling[end]
    const body = train.machines[machine]
    if (!body || isFixed(train, machine)) return []
    const sign = end === 'right' ? 1 : -1
    const moved = movedAxis(train, machine, end === 'right' ? 'left' : 'right', motions)
    return body.rows.map(({ x }): CentreRow => {
      const at = (d: Misalignment): Ways => ({
        up: sign * (d.z + d.sz * (x - coupling.mid)),
        side: sign * (d.y + d.sy * (x - coupling.mid)),
      })
      return {
        ...{ machine, x, stands: at(line), wanted: at(wanted) },
        plan: { up: lineValueAt(moved.rise, x), side: lineValueAt(moved.side, x) },
      }
    })
  })
}

/** Where the right axis has to stand against the left one, cold, to be exact in a state. */
function wantedCold(train: Train, coupling: Coupling, state: State): Misalignment {
  const { y, z, sy, sz } = stateShift(train, coupling, state.id).misalignment
  return { y: 0 - y, z: 0 - z, sy: 0 - sy, sz: 0 - sz }
}

const isFixed = (train: Train, machine: number): boolean =>
  train.machines[machine]?.held === true &&
  train.bodies[train.machines[machine].skid ?? machine]?.held === true

/** From where the feet stand to dead centre, what the plan does at the same feet instead, and why. */
export function centreBlocks(
  job: Drawn,
  coupling: Coupling,
  pencil: Pencil,
  state: State,
): Block[] {
  const { train } = job
  const rows = centreRows(job, coupling, state)
  if (rows.length === 0 || !hasMoves(job.answer)) return []
  const { y, z, sy, sz } = wantedCold(train, coupling, state)
  const slope = (value: number) => `${pencil.slope(value)} ${pencil.slopeUnit}`
  const table = (plane: Plane, head: string): Block => ({
    kind: 'table',
    columns: [
      { head: `${head}: axis of`, width: 3.4 },
      { head: `feet at x, ${pencil.lengthUnit}`, width: 1.7, align: 'right' },
      { head: 'wanted', width: 1.7, align: 'right' },
      { head: 'less as it stands', width: 1.7, align: 'right' },
      { head: 'move to the centre', width: 1.9, align: 'right' },
      { head: 'the plan moves it', width: 1.9, align: 'right' },
    ],
    rows: rows.map((row) => [
      capital(inSentence(train.machines[row.machine]?.name ?? '')),
      pencil.length(row.x),
      pencil.fine(row.wanted[plane]),
      pencil.fine(row.stands[plane]),
      pencil.fine(row.wanted[plane] - row.stands[plane]),
      pencil.fine(row.plan[plane]),
    ]),
  })
  return [
    {
      kind: 'heading',
      text: `To dead centre in "${state.name}", and what the plan does instead`,
      aside: `in ${pencil.unit}, + up and toward 3 o'clock`,
    },
    {
      kind: 'text',
      look: 'plain',
      text: `Either machine alone, the other one staying. Wanted, cold, so that nothing is left in this state: the right axis in the middle ${pencil.fine(z)} up and ${pencil.fine(y)} to the side, with slopes ${slope(sz)} and ${slope(sy)}; at a foot that and the slope times the way from the middle, for the left machine with the other sign.`,
    },
    table('up', 'up and down'),
    table('side', 'to the side'),
    { kind: 'list', look: 'dash', items: reasons(job, coupling, pencil, state) },
  ]
}

/** Why the plan does not go to the centre of this one coupling: what it may leave, and what else it has to serve. */
function reasons(
  { train, answer, plan }: Drawn,
  coupling: Coupling,
  pencil: Pencil,
  state: State,
): string[] {
  const used = hasMoves(answer)
    ? answer.couplings.find((row) => row.coupling === coupling.id && row.state === state.id)
    : undefined
  const centre = wantedCold(train, coupling, state)
  const elsewhere = judgedStates(train, coupling).flatMap(({ state: other }) => {
    const { y, z } = wantedCold(train, coupling, other)
    const [up, side] = [pencil.fine(z - centre.z), pencil.fine(y - centre.y)]
    return other.id === state.id || !/[1-9]/.test(up + side)
      ? []
      : [`${up} up and ${side} to the side in "${other.name}"`]
  })
  const beside = [coupling.left, coupling.right].flatMap((m) => {
    const others = train.couplings.filter(
      ({ id, left, right }) => id !== coupling.id && (left === m || right === m),
    )
    return isFixed(train, m)
      ? [`${capital(inSentence(train.machines[m]?.name ?? ''))} is fixed.`]
      : others.map(
          ({ name }) =>
            `What moves ${inSentence(train.machines[m]?.name ?? '')} moves ${inSentence(name)} as well.`,
        )
  })
  return [
    ...(used
      ? [
          `Nothing asks for the centre: ${shareText(used.share)} of the tolerance is used here in this state ${answer.status === 'in-tolerance' ? 'as found' : 'after the plan'}, ${shareText(answer.share)} may be; ${answer.status === 'in-tolerance' ? 'so nothing moves' : 'the plan is the least move of all machines together'}.`,
        ]
      : []),
    ...(elsewhere.length === 0
      ? []
      : [
          `The centre is elsewhere in each state, in the middle: ${listed(elsewhere)} of this one.`,
        ]),
    ...beside,
    ...limitsThere(train, coupling, answer),
    ...pricesThere(train, coupling, plan),
  ]
}

/** Most prices told: the dearest. */
const mostPrices = 3

/** What the limits of this coupling and under its machines cost, as the plan's prices have it, dearest first, where they were worked out. */
function pricesThere(train: Train, coupling: Coupling, plan: PlanAnswer): string[] {
  const prices = plan.status === 'planned' ? plan.prices : undefined
  if (!prices) return []
  const ids = bodiesOf(train, coupling).map((b) => train.bodies[b]?.id)
  const here = prices.filter(({ limit }) =>
    'coupling' in limit ? limit.coupling === coupling.id : ids.includes(limit.body),
  )
  if (here.length === 0)
    return prices.length === 0
      ? []
      : [
          'No limit at this coupling or under its machines has a price: more room in any one of them alone would save nothing.',
        ]
  return here
    .slice(0, mostPrices)
    .map((binding) => `What it costs: ${bindingSentence(train, binding)}.`)
}

/** Feet of its machines that stand at a limit of theirs, and tolerances that are used up as far as they may be. */
function limitsThere(train: Train, coupling: Coupling, answer: PlanAnswer): string[] {
  if (!hasMoves(answer)) return []
  const bodies = bodiesOf(train, coupling)
  const feet = footFacts(train, answer).flatMap(({ body, name, bound }) =>
    bodies.includes(body) && bound.length > 0
      ? [`foot ${name} of ${inSentence(train.bodies[body]?.name ?? '')} is ${listed(bound)}`]
      : [],
  )
  const full = train.couplings.flatMap(({ id, name }) => {
    const states = train.states.filter((state) =>
      answer.couplings.some(
        (row) =>
          row.coupling === id &&
          row.state === state.id &&
          shareText(row.share) === shareText(answer.share),
      ),
    )
    return states.length === 0
      ? []
      : [`${inSentence(name)} in ${listed(states.map((state) => `"${state.name}"`))}`]
  })
  return [
    ...(feet.length === 0 ? [] : [`${capital(listed(feet))}.`]),
    ...(full.length === 0 ? [] : [`Tolerance is used as far as it may be at ${listed(full)}.`]),
  ]
}
