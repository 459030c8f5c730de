import { coverage95 } from '../../../mechanics/coverage'
import { toldNought, toldText } from '../../../language/amounts'
import { capital, inSentence, listed } from '../../../language/names'
import { towardSide } from '../../../language/sides'
import type { Body, Train } from '../../../mechanics/train'
import type { FittedSuspect, WalkedMachine, Since } from './since'

/** What changed since a train was last read, as people say it. */
export interface SinceWords {
  readonly headline: string
  /** A sentence for each cause that cannot be told from the others. */
  readonly causes: readonly string[]
  /** Where each other machine stands now against one that is taken to have stayed, a sentence each. */
  readonly places: readonly string[]
  readonly stayed: string
}

export function sinceWords(train: Train, { differs, causes, places }: Since): SinceWords {
  return {
    headline: headlineOf(differs, causes),
    causes: causes.map((cause) => causeSentence(train, cause)),
    places: places.moved.map((moved) => {
      const body = train.bodies[moved.body]
      return body ? `${capital(inSentence(body.name))}: ${placeWords(train, body, moved)}.` : ''
    }),
    stayed: inSentence(train.bodies[places.stayed]?.name ?? ''),
  }
}

function headlineOf(differs: boolean, causes: readonly FittedSuspect[]): string {
  if (!differs)
    return 'Nothing walked that these readings can tell: all that changed lies within their uncertainties.'
  const [first, ...more] = causes
  if (!first?.explains)
    return 'More than one thing changed: no machine alone, no coupling alone and no bend of the base explains it.'
  return more.length === 0
    ? 'One thing explains all that changed.'
    : 'Each of these alone explains what changed, and these readings cannot tell them apart.'
}

function causeSentence(train: Train, cause: FittedSuspect): string {
  const { suspect } = cause
  const far = cause.explains ? '' : ' It explains part of it only.'
  switch (suspect.kind) {
    case 'nothing':
      return ''
    case 'body': {
      const body = train.bodies[suspect.body]
      if (!body) return ''
      const moved = widened(cause, suspect.body, suspect.way)
      return `${capital(inSentence(body.name))} walked: ${placeWords(train, body, moved)}.${whereToLook(body)}${far}`
    }
    case 'readings': {
      const name = train.couplings[suspect.coupling]?.name ?? ''
      return `The readings of ${name}, then or now, are wrong: a bracket, a distance, a dial. Read it again before anything else.${far}`
    }
    case 'base': {
      const [by = 0] = cause.by
      const u = Math.sqrt(cause.covariance[0]?.[0] ?? 0)
      return `The base bends: its middle stands ${within(train, Math.abs(by), u)} ${by > 0 ? 'higher' : 'lower'} over a straight line from end to end than it did. Look at anchor bolts, grout and what the ground does.${far}`
    }
  }
}

/** What holds a machine where it is, and so may have let it go. */
function whereToLook({ held, anchored, restraints }: Body): string {
  const parts = [
    ...(held || anchored !== undefined
      ? ['it is fixed, so that its dowels, bolts or grout let go']
      : []),
    ...(restraints.length > 0 ? ['pipes are joined to it, and may have moved it'] : []),
  ]
  return parts.length === 0 ? '' : ` ${capital(listed(parts))}.`
}

/** Amounts of one way alone among all four: `[ty, sy, tz, sz]`. */
function widened(
  { by, covariance }: FittedSuspect,
  body: number,
  way: 'sideways' | 'up and down' | undefined,
): WalkedMachine {
  if (way === undefined) return { body, by, covariance }
  const at = way === 'sideways' ? 0 : 2
  const inside = (k: number) => k >= at && k < at + 2
  return {
    body,
    by: [0, 1, 2, 3].map((k) => (inside(k) ? (by[k - at] ?? 0) : 0)),
    covariance: [0, 1, 2, 3].map((k) =>
      [0, 1, 2, 3].map((j) => (inside(k) && inside(j) ? (covariance[k - at]?.[j - at] ?? 0) : 0)),
    ),
  }
}

/** How far a body stands from where it stood, at its feet farthest left and right, 19 times of 20. */
function placeWords(train: Train, body: Body, moved: WalkedMachine): string {
  return placesAt(body)
    .map(({ x, name }) => {
      const { rise, side } = movedAt(body, moved, x)
      const up = rise.by > 0 ? 'higher' : 'lower'
      const parts = [
        ...(isNone(rise) ? [] : [`${within(train, Math.abs(rise.by), rise.u)} ${up}`]),
        ...(isNone(side)
          ? []
          : [`${within(train, Math.abs(side.by), side.u)} ${towardSide(train, side.by)}`]),
      ]
      return `${name} ${listed(parts)}`
    })
    .join('; ')
}

/** Where people look at a machine: its feet farthest left and farthest right, or its middle where it has none. */
export function placesAt(body: Body): { x: number; name: string }[] {
  const xs = body.feet.map(({ x }) => x)
  if (xs.length === 0) return [{ x: body.x0, name: 'its middle' }]
  const [low, high] = [Math.min(...xs), Math.max(...xs)]
  return low === high
    ? [{ x: low, name: 'its feet' }]
    : [
        { x: low, name: 'left feet' },
        { x: high, name: 'right feet' },
      ]
}

/** A way in which nothing was fitted. */
const isNone = ({ by, u }: Amount): boolean => by === 0 && u === 0

interface Amount {
  readonly by: number
  readonly u: number
}

/** Rise and side of a body at x (mm) from `[ty, sy, tz, sz]` (um, mrad), each with its standard uncertainty (um). */
export function movedAt(
  body: Body,
  { by, covariance }: WalkedMachine,
  x: number,
): { rise: Amount; side: Amount } {
  const arm = x - body.x0
  const at = (k: number): Amount => {
    const c = (i: number, j: number) => covariance[k + i]?.[k + j] ?? 0
    return {
      by: (by[k] ?? 0) + arm * (by[k + 1] ?? 0),
      u: Math.sqrt(Math.max(0, c(0, 0) + 2 * arm * c(0, 1) + arm * arm * c(1, 1))),
    }
  }
  return { side: at(0), rise: at(2) }
}

/** "0.12 mm (± 0.02 mm)"; um. */
const within = (train: Train, value: number, u: number): string => {
  const band = coverage95 * u
  return `${toldText(value, train.units)} (±${toldNought(band, train.units) ? 'next to none' : toldText(band, train.units)})`
}
