import { fineText, signedText } from '../../../language/amounts'
import type { Micrometres } from '../../../mechanics/units'
import type { Body, Foot, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import { showsNought, towardSide } from '../../../language/sides'
import { capital } from '../../../language/names'
import type { StepAnswer, StepFootAnswer } from './answer'
import { practice } from './cautions'

/** A dial that has gone a third of its way the other way goes the wrong way, at most this far (um); common practice, no source. */
const wrongAtMost: Micrometres = 50

/** What a dial shows for sure: one division of a common one, 0.01 mm or half a thousandth of an inch (um). */
const division = (train: Train): Micrometres => (train.units.fine === 'mil' ? 12.7 : 10)

/**
 * How far the wrong way a dial may go before it is called: a small move gone wrong by as much as it was to go right
 * would be through before 50 um are reached.
 * @param move what the foot has to go; of one that stays, the largest that another foot of the step goes (um)
 */
const wrongAfter = (train: Train, move: Micrometres): Micrometres =>
  Math.max(division(train), Math.min(wrongAtMost, Math.abs(move) / 3))

/** What a foot's dial says while the work goes on; + as the dial reads. */
export interface Guard {
  /** What the dial should show at the end. */
  readonly target: Micrometres
  /** Still to go, with the sign of the dial. */
  readonly left: Micrometres
  /** "0.12 mm to go, toward the pipe rack", or that it is there. */
  readonly words: string
  readonly there: boolean
  /** Stop: it goes the wrong way, or moves where it should stay. */
  readonly wrong?: string
  /** Room between bolt and hole where the foot is now. */
  readonly room?: Micrometres
  readonly roomWarning?: string
  readonly liftWarning?: string
}

export interface Watch {
  /** Steps done and the one in hand, in their order. */
  readonly steps: readonly StepAnswer[]
  /** Index of the step in hand. */
  readonly at: number
  readonly foot: string
  /** What the foot's dial shows, zeroed before the step. */
  readonly shown: Micrometres
  /** True while the foot stands on jacks: its dial shows the lift, not what the packs give. */
  readonly lifted?: boolean
}

/**
 * Guards one foot while it is moved, by the dial at it: what is left, the wrong way, the room between
 * bolt and hole, the lift.
 * @throws RangeError where the step moves no such foot
 */
export function guardOf(
  train: Train,
  { steps, at, foot, shown: now, lifted = false }: Watch,
): Guard {
  const step = steps[at]
  const body = train.bodies.find(({ id }) => id === step?.body)
  const part = body?.feet.find(({ id }) => id === foot)
  const row = step?.feet.find((entry) => entry.foot === foot)
  if (!step || !body || !part || !row) throw new RangeError(`the step moves no foot ${foot}`)
  const way = wayOf(step)
  const target = row[way] ?? 0
  const left = target - now
  const there = showsNought(left, train)
  const before = standingBefore(steps, at, body.id)
  const wrong = lifted ? undefined : wrongWay(train, step, target, now)
  return {
    target,
    left,
    words: there ? 'There.' : capital(`${toGo(train, way, left)}.`),
    there,
    ...(wrong !== undefined && { wrong }),
    ...(way === 'shim'
      ? liftOf(train, part, footMove(body, before, part).shim, row, now)
      : roomOf(train, body, part, before, step, target, now)),
  }
}

const wayOf = ({ kind }: StepAnswer): 'shim' | 'side' | 'axial' =>
  kind === 'axial' ? 'axial' : kind === 'lateral' ? 'side' : 'shim'

/** "0.12 mm to go, toward the pipe rack". */
function toGo(train: Train, way: 'shim' | 'side' | 'axial', left: number): string {
  return `${fineText(Math.abs(left), train.units)} to go, ${directionOf(train, way, left)}`
}

function directionOf(train: Train, way: 'shim' | 'side' | 'axial', by: number): string {
  if (way === 'shim') return by > 0 ? 'up' : 'down'
  if (way === 'side') return towardSide(train, by)
  return `to the ${by > 0 ? 'right' : 'left'}`
}

function wrongWay(train: Train, step: StepAnswer, target: number, now: number): string | undefined {
  const way = wayOf(step)
  const stays = showsNought(target, train)
  const most = Math.max(0, ...step.feet.map((foot) => Math.abs(foot[way] ?? 0)))
  if (Math.abs(now) < wrongAfter(train, stays ? most : target)) return undefined
  if (stays)
    return `Stop: this foot should stay, and its dial shows ${signedText(now, train.units)}.`
  return Math.sign(now) === Math.sign(target)
    ? undefined
    : `Stop, the wrong way: the dial shows ${signedText(now, train.units)} and should go to ${signedText(target, train.units)}, ${directionOf(train, way, target)}.`
}

/** Lifting more than it takes to slip shims, and past what the bolt allows. */
function liftOf(
  train: Train,
  foot: Foot,
  before: number,
  { shim = 0, lift: told = Math.max(0, shim) + train.plan.slip }: StepFootAnswer,
  now: number,
): Pick<Guard, 'liftWarning'> {
  if (foot.lift !== undefined && before + now > foot.lift)
    return {
      liftWarning: `Foot ${foot.id} is ${fineText(before + now - foot.lift, train.units)} above its lift limit: no higher.`,
    }
  return now > told + practice.above
    ? {
        liftWarning: `Foot ${foot.id} is lifted ${fineText(now - told, train.units)} more than the ${fineText(told, train.units)} its shims need: let it down to that, a block beside the jack.`,
      }
    : {}
}

/** Room where the foot is now: a slide that is half done has turned the body half way too. */
function roomOf(
  train: Train,
  body: Body,
  foot: Foot,
  before: Motion,
  step: StepAnswer,
  target: number,
  now: number,
): Pick<Guard, 'room' | 'roomWarning'> {
  const { hole } = foot
  if (!hole) return {}
  const was = footMove(body, before, foot)
  const row = step.feet.find((entry) => entry.foot === foot.id)
  const lateral = step.kind === 'lateral'
  const along = lateral && target !== 0 ? ((row?.axial ?? 0) * now) / target : 0
  const x = hole.x + was.axial + (lateral ? along : now)
  const y = hole.y + was.side + (lateral ? now : 0)
  const room = hole.clearance / 2 - Math.hypot(x, y)
  const warning =
    room <= 0
      ? `The bolt of foot ${foot.id} should touch its hole by now: stop and look.`
      : `Only ${fineText(room, train.units)} left between bolt and hole at foot ${foot.id}.`
  return {
    room,
    ...(room < practice.room && { roomWarning: warning }),
  }
}

/** Own motion of a body as the steps before leave it. */
function standingBefore(steps: readonly StepAnswer[], at: number, body: string): Motion {
  const last = steps
    .slice(0, at)
    .flatMap((step) => step.standing.filter(({ id }) => id === body))
    .at(-1)
  return last?.move ?? noMotion
}
