import { tol } from '../../../mechanics/tolerances'
import { fineText, signedText } from '../../../language/amounts'
import { capital, listed } from '../../../language/names'
import { tidy } from '../../../language/tidy'
import { towardSide } from '../../../language/sides'
import type { Body, Train } from '../../../mechanics/train'
import type { Micrometres } from '../../../mechanics/units'
import type { Motion } from '../../../mechanics/motion'
import type { Action } from './action'
import type { PoseAnswer } from './answer'
import { endMoves, type BodyEnd, type EndPlaces } from './endHeights'
import type { LiftPath } from './liftPath'
import { leftOver } from './moves'

const ends: readonly BodyEnd[] = ['left', 'right']
const still: EndPlaces = { left: 0, right: 0 }
const asItStands = 'as it stands'

/** What stands over the poses of a step that lifts. */
export const liftsTitle = 'Jacking, dials from 0'

/**
 * The poses of a step that shims, heights as dials show them that were zeroed before it.
 * @param packs where the packs leave the ends: on three rows of real plates a little beside the plane of the body, and
 * an end that is let down on its packs is told by them, as its dials are
 */
export function liftPoses(
  train: Train,
  body: Body,
  { poses }: LiftPath,
  packs: EndPlaces = poses.at(-1)?.ends ?? still,
): PoseAnswer[] {
  let before = still
  const down = poses.at(-1)?.ends ?? still
  const shown = (places: EndPlaces, end: BodyEnd) =>
    Math.abs(places[end] - down[end]) > tol.dust ? places[end] : packs[end]
  return poses.map(({ ends: here, motion, clear }, i) => {
    const gone = ends.filter((end) => Math.abs(here[end] - before[end]) > tol.dust)
    const parts = grouped(
      train,
      gone.map((end) => ({ end, up: here[end] > before[end], to: shown(here, end) })),
      body.rows.length < 2,
    )
    before = here
    if (i === 0) return { move: motion, why: asItStands }
    const last = i === poses.length - 1
    const room =
      clear.length === 0
        ? ''
        : `: room to change the ${clear.length === 1 ? 'pack' : 'packs'} of ${clear.length === 1 ? 'foot' : 'feet'} ${listed(clear)}`
    const stands = last ? ': it stands on its packs' : ''
    return { move: motion, why: `${parts === '' ? 'the roll is made' : parts}${room}${stands}` }
  })
}

/** "left end up to +500 µm", "both ends down to +300 µm", "left end up to +800 µm and right end up to +650 µm". */
function grouped(
  { units }: Train,
  gone: readonly { readonly end: BodyEnd; readonly up: boolean; readonly to: Micrometres }[],
  oneRow: boolean,
): string {
  const parts = gone.map(({ end, up, to }) => ({
    end,
    goes: `${up ? 'up' : 'down'} to ${signedText(tidy(to), units)}`,
  }))
  const [one, other] = parts
  if (!one) return ''
  if (oneRow) return one.goes
  if (other?.goes === one.goes) return `both ends ${one.goes}`
  return listed(parts.map(({ end, goes }) => `${end} end ${goes}`))
}

/** The poses of a step that slides or moves along the train, from where it began. */
export function slidePoses(
  train: Train,
  body: Body,
  { kind }: Action,
  start: Motion,
  poses: readonly Motion[],
): PoseAnswer[] {
  return [
    { move: start, why: asItStands },
    ...poses.map((move, i) => {
      const done = leftOver(move, start)
      if (kind === 'axial')
        return {
          move,
          why: `moved ${fineText(Math.abs(done.tx), train.units)} to the ${done.tx > 0 ? 'right' : 'left'}`,
        }
      const before = endMoves(body, leftOver(poses[i - 1] ?? start, start), 'side')
      const here = endMoves(body, done, 'side')
      const parts = ends.flatMap((end) =>
        Math.abs(here[end] - before[end]) <= tol.dust
          ? []
          : [
              `${end} end ${fineText(Math.abs(here[end]), train.units)} ${towardSide(train, here[end] || -before[end])} of where it began`,
            ],
      )
      return { move, why: listed(body.rows.length < 2 ? parts.slice(0, 1) : parts) }
    }),
  ]
}

/** The poses as sentences, one a move; nothing of where the step begins. */
export const poseLines = (poses: readonly PoseAnswer[]): string[] =>
  poses.slice(1).map(({ why }) => `${capital(why)}.`)
