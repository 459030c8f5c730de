import type { Train } from '../train'
import { still, type Motion, type Standing } from './bodies'
import type { Bolt } from './bolts'
import { carriage } from './carriage'
import type { Joint } from './joints'
import { source, type Effect, type Source } from './source'
import { straight } from './straight'

// common practice, no source
const usual = { shim: 10, slide: 20, foot: 2 } // um, um, mm

/** What the rows of a body do too much: up and toward 3 o'clock (um). */
interface ByRow {
  rise: number[]
  side: number[]
}

/** The motion that rows would give a rigid body: a straight line through them, level where there is one row. */
function motionBy({ rows, x0 }: Standing, { rise, side }: ByRow): Motion {
  const line = straight(rows.map(({ x }) => x))
  const level = line.at(x0)
  const sum = (weights: number[], by: number[]) =>
    weights.reduce((total, w, i) => total + w * (by[i] ?? 0), 0)
  return {
    ...still,
    ty: sum(level, side),
    tz: sum(level, rise),
    sy: sum(line.slope, side),
    sz: sum(line.slope, rise),
  }
}

/** The errors of putting one body where the plan wants it: each shim, each slide, the place of each row. */
export function workErrors(
  train: Train,
  joints: readonly Joint[],
  standing: Standing,
  planned: Motion,
  bolts: readonly Bolt[],
): Source[] {
  const { body, rows } = standing
  const u = { ...usual, ...told(train) }
  const only = (row: number, by: number) => rows.map((_, i) => (i === row ? by : 0))
  const none = rows.map(() => 0)
  const effects = (by: Partial<ByRow>): Effect[] =>
    carriage(joints, standing, motionBy(standing, { rise: none, side: none, ...by }))
  return rows.flatMap(({ feet }, row) => {
    const shimmed = feet.filter((f) => body.free?.shim !== false && f.free?.shim !== false)
    const shims = shimmed.map(() =>
      source('work', body.id, effects({ rise: only(row, u.shim / feet.length) })),
    )
    const keyed = body.free?.side === false || feet.some((f) => f.free?.side === false)
    const inHoles = bolts
      .filter((bolt) => bolt.standing === standing && feet.includes(bolt.foot))
      .map(({ first }) => ({ to: first + 1, by: u.slide }))
    const slid = source('work', body.id, [...effects({ side: only(row, u.slide) }), ...inHoles])
    const place = source(
      'places',
      body.id,
      effects({ rise: only(row, planned.sz * u.foot), side: only(row, planned.sy * u.foot) }),
    )
    return [...shims, ...(keyed ? [] : [slid]), place]
  })
}

/** What the file says of the work, without what it leaves out. */
function told({ plan }: Train): Partial<typeof usual> {
  const { shim, slide, foot } = plan?.sure ?? {}
  return {
    ...(shim !== undefined && { shim }),
    ...(slide !== undefined && { slide }),
    ...(foot !== undefined && { foot }),
  }
}
