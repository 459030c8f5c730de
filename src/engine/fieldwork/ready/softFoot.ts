import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import type { LinearProgram, Solver } from '../../lp/solver'
import { isSound, soundnessOf } from '../../lp/soundness'
import { footGap, type FootGap } from './footGap'
import { publishedLimit, type SourcedLimit } from '../../plan/publishedLimit'
import { departure, footPlane, type FootPlane } from './plane'

/**
 * Whether a body stands evenly, and what would make it. Each gap is read with one bolt loosened and all
 * others tight, so it is how far that foot stands off the plane of the others. On four feet at the
 * corners of a rectangle a stiff frame then shows the same gap at both feet of one diagonal and none
 * at the other two, and one shim of that gap under either is enough: filling both would make the other
 * diagonal soft. The model is our own; it gives what a published example gives (see the tests).
 */
export interface SoftFoot {
  readonly body: string
  readonly limit: SourcedLimit
  /** Feet as read; those without a reading are in `unread`. */
  readonly feet: readonly FootGap[]
  readonly unread: readonly string[]
  /** "none": no foot was read; "part": some were; "sound": no foot passes the limit; "soft": one does. */
  readonly verdict: 'none' | 'part' | 'sound' | 'soft'
  /** Most that a gap lies from what a stiff frame on one plane would show. */
  readonly unexplained: Micrometres
  /** What to add, least in sum; a soft body whose feet were all read and can be made plane has it. */
  readonly shims?: readonly FootShim[]
  /** Most that a foot should stand off after the shims, by the same model. */
  readonly leaves?: Micrometres
  /** Why there are no shims for a soft body. */
  readonly why?: string
}

export interface FootShim {
  readonly foot: string
  /** To be added, in steps of what is stocked where the file gives a step. */
  readonly shim: Micrometres
  /** Before rounding. */
  readonly exact: Micrometres
}

/** Seconds that these programs of a dozen columns may take. */
const patience = 5
/** Heights count in tens of micrometres, a size that the simplex likes. */
const unit: Micrometres = 10

/** Judges the feet of a body and finds the shims that make them plane. */
export function softFoot(train: Train, body: Body, solver: Solver): SoftFoot {
  const limit = publishedLimit(train, 'softFoot')
  const read = body.feet.map(footGap)
  const feet = read.flatMap((foot) => (foot ? [foot] : []))
  const unread = body.feet.flatMap(({ id }, i) => (read[i] ? [] : [id]))
  const soft = feet.some(({ rise }) => rise > limit.value + tol.onLimit)
  const known = { body: body.id, limit, feet, unread }
  if (unread.length > 0)
    return {
      ...known,
      verdict: soft ? 'soft' : feet.length === 0 ? 'none' : 'part',
      unexplained: 0,
      ...(soft && { why: 'not every foot was read: read them all, one bolt loose at a time' }),
    }
  const plane = footPlane(body.feet)
  const gaps = feet.map(({ gap }) => gap)
  const { heights, unexplained } = departure(plane, gaps)
  const judged = {
    ...known,
    verdict: soft ? ('soft' as const) : ('sound' as const),
    unexplained: Math.max(0, ...unexplained.map(Math.abs)),
  }
  if (!soft) return judged
  const exact = leastShims(body, heights, gaps, solver)
  if (typeof exact === 'string') return { ...judged, why: exact }
  const shims = body.feet.map(({ id }, i) => ({
    foot: id,
    shim: inSteps(exact[i] ?? 0, train.plan.shims?.step),
    exact: exact[i] ?? 0,
  }))
  if (shims.every(({ shim }) => shim === 0))
    return {
      ...judged,
      why: 'no shim takes it away: the gaps are none that feet off one plane would show; look for springing packs, dirt, burrs and a bent foot',
    }
  return { ...judged, shims, leaves: leftAfter(plane, heights, shims) }
}

/**
 * The least sum of shims s >= 0 with heights + s on one plane: a column a foot, three for the plane.
 * @returns the shims (um), or why there are none
 */
function leastShims(
  body: Body,
  heights: readonly Micrometres[],
  gaps: readonly Micrometres[],
  solver: Solver,
): Micrometres[] | string {
  const n = body.feet.length
  const most = Math.max(1, ...gaps)
  const span = (way: 'x' | 'y') =>
    Math.max(1, ...body.feet.map((foot) => Math.abs(from(foot, way))))
  const from = (foot: { x: number; y: number }, way: 'x' | 'y') =>
    way === 'x' ? foot.x - body.x0 : foot.y
  const [long, wide] = [span('x'), span('y')]
  const free = { lower: -Infinity, upper: Infinity }
  const program: LinearProgram = {
    columns: [
      ...body.feet.map(({ mayShim, pack }) => ({
        lower: 0,
        upper: !mayShim
          ? 0
          : pack?.max === undefined
            ? Infinity
            : Math.max(0, pack.max - pack.now) / unit,
      })),
      ...[free, free, free],
    ],
    objective: [...gaps.map((gap, i) => 1 - (tol.gapTie * gap) / most + tol.orderTie * i), 0, 0, 0],
    rows: body.feet.map((foot, i) => ({
      terms: [
        [i, 1] as const,
        [n, -1] as const,
        ...slope(n + 1, from(foot, 'x') / long),
        ...slope(n + 2, from(foot, 'y') / wide),
      ],
      lower: -(heights[i] ?? 0) / unit,
      upper: -(heights[i] ?? 0) / unit,
    })),
  }
  const outcome = solver.solve(program, patience)
  if (outcome.kind === 'optimal' && !isSound(soundnessOf(program, outcome)))
    return 'the shims were not found: the answer of the solver did not stand up to checking'
  switch (outcome.kind) {
    case 'optimal':
      return body.feet.map((_, i) => Math.max(0, outcome.columns[i] ?? 0) * unit)
    case 'infeasible':
      return 'the feet that may be shimmed, within their largest packs, cannot make it plane: take plates out elsewhere, or machine the feet'
    case 'unbounded':
    case 'stopped':
      return 'the shims were not found in time'
  }
}

const slope = (column: number, by: number): (readonly [number, number])[] =>
  by === 0 ? [] : [[column, -by]]

/** To the nearest step, half a step down: a shim too thin shows again, one too thick makes others soft. */
function inSteps(exact: Micrometres, step: Micrometres | undefined): Micrometres {
  if (step === undefined) return exact < tol.flatFoot ? 0 : exact
  return Math.max(0, Math.ceil(exact / step - 0.5 - tol.wholeStep)) * step
}

function leftAfter(
  { standOff }: FootPlane,
  heights: readonly Micrometres[],
  shims: readonly FootShim[],
): Micrometres {
  const now = heights.map((height, i) => height + (shims[i]?.shim ?? 0))
  return standOff.reduce(
    (most, row) =>
      row === undefined
        ? most
        : Math.max(
            most,
            row.reduce((sum, c, j) => sum + c * (now[j] ?? 0), 0),
          ),
    0,
  )
}
