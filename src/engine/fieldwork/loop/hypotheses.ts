import { noMotion, type Motion } from '../../../mechanics/motion'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import type { Body, Train } from '../../../mechanics/train'
import { meanPlaneOf } from '../../../mechanics/meanPlane'
import { largestMove, motionPart, scaled } from '../steps/moves'
import { tol } from '../../../mechanics/tolerances'
import { gainedBy, type Evidence, type EvidenceRow } from './evidence'

/** What may lie behind a difference. */
export type CauseKind =
  | 'bracket'
  | 'dial'
  | 'sign of a dial'
  | 'distance'
  | 'stands off'
  | 'foot'
  | 'part of the work'
  | 'wrong way'

/** Where a cause lies: what of it is told apart from others. */
interface CausePlace {
  readonly kind: CauseKind
  /** Index in `couplings`; in `bodies`. Neither: the whole train. */
  readonly coupling?: number
  readonly body?: number
  readonly set?: number
  readonly hour?: number
  /** Index in `rows` of the body. */
  readonly row?: number
  readonly way?: 'sideways' | 'up and down'
}

/** One thing that may be wrong, with what it would add to every reading. */
export interface Hypothesis extends CausePlace {
  /** A column for each amount that is open; none: `fixed` says it all. */
  readonly columns: readonly (readonly number[])[]
  /** Rows that were read with their sign turned: their errors are turned too, so that they are turned back. */
  readonly turned?: readonly boolean[]
  /** What is added in any case. */
  readonly fixed?: readonly number[]
  /** Between what the amount must lie to be believed; any where missing. */
  readonly believed?: readonly [low: number, high: number]
}

/** Every single cause that is tried: dials and brackets, distances, machines, feet, and the work. */
export function hypothesesOf(
  train: Train,
  motions: readonly Motion[],
  evidence: Evidence,
): Hypothesis[] {
  const { rows } = evidence
  const byMotions = (some: readonly Motion[]): number[] => {
    const moved = couplingMotions(train, some)
    return rows.map((row) => {
      const by = moved[row.coupling]
      return by ? gainedBy(row, by) : 0
    })
  }
  const alone = (b: number, motion: Motion): number[] =>
    byMotions(train.bodies.map((_, i) => (i === b ? motion : noMotion)))
  return [
    ...ofReadings(rows),
    ...ofDistances(train, motions, rows),
    ...train.bodies.flatMap((body, b) => ofBody(body, b, motions[b] ?? noMotion, alone)),
    ...ofAll(byMotions, motions),
  ]
}

const picked = (rows: readonly EvidenceRow[], of: (row: EvidenceRow) => number): number[] =>
  rows.map(of)

/** A bracket that sags otherwise than entered, one value misread, a dial read with its sign turned. */
function ofReadings(rows: readonly EvidenceRow[]): Hypothesis[] {
  const couplings = [...new Set(rows.map(({ coupling }) => coupling))]
  return couplings.flatMap((coupling): Hypothesis[] => {
    const here = rows.filter((row) => row.coupling === coupling)
    const sets = [...new Set(here.map(({ set }) => set))]
    const sags = (set?: number) =>
      picked(rows, (row) =>
        row.coupling === coupling && (set === undefined || row.set === set) ? row.sag : 0,
      )
    const swept = sets.filter((set) => here.some((row) => row.set === set && row.sag !== 0))
    return [
      ...(swept.length > 1 ? [{ kind: 'bracket' as const, coupling, columns: [sags()] }] : []),
      ...swept.map((set) => ({ kind: 'bracket' as const, coupling, set, columns: [sags(set)] })),
      ...here.map((one) => ({
        kind: 'dial' as const,
        coupling,
        set: one.set,
        ...(one.hour !== undefined && { hour: one.hour }),
        columns: [picked(rows, (row) => (row === one ? 1 : 0))],
      })),
      ...sets.map((set) => ({
        kind: 'sign of a dial' as const,
        coupling,
        set,
        columns: [],
        turned: rows.map((row) => row.coupling === coupling && row.set === set),
      })),
    ]
  })
}

/** Dials another distance apart, or a face of another diameter, than entered: every angle is measured too large or too small. */
function ofDistances(
  train: Train,
  motions: readonly Motion[],
  rows: readonly EvidenceRow[],
): Hypothesis[] {
  const moved = couplingMotions(train, motions)
  const turned = (row: EvidenceRow) => {
    const d = moved[row.coupling]?.misalignment
    return d ? gainedBy(row, { misalignment: { y: 0, z: 0, sy: d.sy, sz: d.sz } }) : 0
  }
  const couplings = [...new Set(rows.map(({ coupling }) => coupling))]
  const believed = [-0.7, 2] as const
  return [
    ...couplings.map((coupling) => ({
      kind: 'distance' as const,
      coupling,
      believed,
      columns: [picked(rows, (row) => (row.coupling === coupling ? turned(row) : 0))],
    })),
    ...(couplings.length > 1
      ? [{ kind: 'distance' as const, believed, columns: [picked(rows, turned)] }]
      : []),
  ]
}

/** A body that stands elsewhere, a foot that gave, work not done in full or done the wrong way. */
function ofBody(
  body: Body,
  b: number,
  motion: Motion,
  alone: (b: number, motion: Motion) => number[],
): Hypothesis[] {
  const per = (part: Partial<Motion>) => alone(b, { ...noMotion, ...part })
  const sideways = [per({ ty: 1 }), per({ sy: 1 })]
  const upright = [per({ tz: 1 }), per({ sz: 1 })]
  const off: Hypothesis[] = [
    { kind: 'stands off', body: b, way: 'sideways', columns: sideways },
    { kind: 'stands off', body: b, way: 'up and down', columns: upright },
    { kind: 'stands off', body: b, columns: [...sideways, ...upright] },
  ]
  const shims = motionPart(motion, 'vertical')
  const slides = motionPart(motion, 'lateral')
  const moves = (part: Motion) => largestMove(body, part) > tol.unseen
  const feet: Hypothesis[] = moves(shims)
    ? body.rows.map(({ feet: some }, row) => {
        const [tz = 0, sz = 0, roll = 0] = meanPlaneOf(
          body.feet.map(({ x, y }, f) => ({ x: x - body.x0, y, value: some.includes(f) ? 1 : 0 })),
        )
        return { kind: 'foot' as const, body: b, row, columns: [per({ tz, sz, roll })] }
      })
    : []
  const ways = [
    ...(moves(shims) ? [{ way: 'up and down' as const, part: shims }] : []),
    ...(moves(slides) ? [{ way: 'sideways' as const, part: slides }] : []),
    ...(moves(shims) && moves(slides) ? [{ part: motion }] : []),
  ]
  return [
    ...off,
    ...feet,
    ...ways.flatMap(({ part, ...way }): Hypothesis[] => [
      {
        kind: 'part of the work',
        body: b,
        ...way,
        columns: [alone(b, part)],
        believed: [-1, 1],
      },
      {
        kind: 'wrong way',
        body: b,
        ...way,
        columns: [],
        fixed: alone(b, scaled(part, -2)),
      },
    ]),
  ]
}

/** The same of everything at once: distances of all feet, springing under all, every sign. */
function ofAll(
  byMotions: (motions: readonly Motion[]) => number[],
  motions: readonly Motion[],
): Hypothesis[] {
  const column = byMotions(motions)
  if (column.every((value) => value === 0)) return []
  return [
    { kind: 'part of the work', columns: [column], believed: [-1, 1] },
    { kind: 'wrong way', columns: [], fixed: column.map((value) => -2 * value) },
  ]
}
