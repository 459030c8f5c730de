import { keptClause } from '../../language/keptWords'
import { tol } from '../../mechanics/tolerances'
import { tidy } from '../../language/tidy'
import { shareText } from '../../language/amounts'
import type { Micrometres } from '../../mechanics/units'
import type { Body, Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import type { Motion } from '../../mechanics/motion'
import type { PlannedAnswer } from '../plan/answer'
import { statorsAnswer } from '../plan/statorAnswer'
import * as report from '../plan/report'
import { footMove, totalsOf } from '../plan/totals'
import type { Solver } from '../lp/solver'
import { roundedSentence } from './roundedSentence'
import { counted, inSentence, listed } from '../../language/names'
import type { PackAnswer, RoundedAnswer, RoundedFoot, RoundingFigures, SmallMove } from './answer'
import { isLoose } from './footGroups'
import { judgedRounding, type Judged } from './judged'
import { Plates } from './plates'
import { roundPlan, type Changes, type Rounded, type Rounding } from './rounding'
import { exchange } from './exchange'

/** Less than this is no move (um). */
const nothing: Micrometres = 0.1

/**
 * Rounds a plan to the shims of the store and says what that comes to; undefined for a train without
 * `plan.shims`.
 * @param motions the plan before rounding (um, mrad), within `share` of tolerance
 */
export function roundedAnswer(
  train: Train,
  found: readonly AsFound[],
  plan: PlannedAnswer,
  motions: readonly Motion[],
  share: number,
  solver: Solver,
): RoundedAnswer | undefined {
  if (!train.plan.shims) return undefined
  const rounding = roundPlan(train, found, motions, share, solver)
  const proof = judgedRounding(train, found, rounding)
  const figures = figuresOf(train, found, plan, motions, rounding, proof)
  return { ...figures, sentence: roundedSentence(train, figures) }
}

function figuresOf(
  train: Train,
  found: readonly AsFound[],
  plan: PlannedAnswer,
  motions: readonly Motion[],
  rounding: Rounding,
  proof: Judged,
): RoundingFigures {
  const common = {
    worstShare: tidy(proof.worstShare),
    feet: feetAnswer(train, rounding),
    couplings: report.couplingsAnswer(train, found, rounding.motions),
    before: { cost: plan.cost, worstShare: plan.worstShare },
  }
  const failed = faultsOf(train, rounding, proof)
  if (rounding.kind === 'none' || failed.length > 0)
    return { status: 'no rounding', ...common, why: failed }
  const bound = Math.min(rounding.bound, proof.cost)
  const { alone } = rounding
  // the last digits of the solver are no saving
  const told = Math.min(rounding.told, proof.cost)
  const differ = alone === undefined || alone - told > tol.sameCost * told
  const made = {
    ...common,
    packs: packsAnswer(train, rounding.changes),
    cost: proof.cost,
    bound,
    gap: proof.cost - bound,
    ...(train.plan.leave > 0 &&
      differ && { ways: { told, ...(alone !== undefined && { alone }) } }),
    worstViolation: proof.worstViolation,
    total: {
      ...totalsOf(train, rounding.motions),
      shim: rounding.changes.flat().reduce((sum, change) => sum + Math.abs(change), 0),
    },
    bodies: report.bodiesAnswer(train, rounding.motions),
    expected: report.expectedAnswer(train, found, rounding.motions),
    ...statorsAnswer(train, rounding.motions),
    flat: proof.flat,
    ...smallMoves(train, motions, rounding),
  }
  return proof.worstKept > train.plan.share + tol.share
    ? { status: 'over the share asked for', ...made, proven: rounding.proven }
    : { status: 'rounded', ...made }
}

/** Why a rounding is no plan, one line each; none where it is one. */
function faultsOf(train: Train, rounding: Rounding, proof: Judged): string[] {
  if (rounding.kind === 'rounded') return proof.faults
  const names = listed(rounding.bodies.map((b) => inSentence(train.bodies[b]?.name ?? '')))
  return [
    rounding.proven
      ? `no packs from the stock under ${names} keep every limit and the whole of every tolerance`
      : `no packs from the stock under ${names} were found that keep every limit and the whole of every tolerance`,
    triedWords(train, rounding),
    ...proof.faults.map((fault) => `every foot by itself: ${fault}`),
  ]
}

/** What was looked at before it was given up. */
function triedWords(train: Train, { proven, programs }: Rounding & { kind: 'none' }): string {
  const { share } = train.plan
  const within = share < 1 ? `${shareText(share)} and within ` : ''
  const how = proven ? 'to the end of the search' : 'until the work allowed was used up'
  return `tried: all feet together within ${within}the whole of every tolerance, ${how} (${counted(programs, 'program', 'programs')} solved)${keptClause(train)}; every foot by itself`
}

/** One row for each foot whose pack changes, in document order. */
function packsAnswer(train: Train, changes: Changes): PackAnswer[] {
  const { shims } = train.plan
  if (!shims) return []
  const plates = new Plates(shims.stock, shims.most)
  return train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) => {
      const change = changes[b]?.[f] ?? 0
      if (change === 0) return []
      const { out, use } = exchange(shims, plates, foot, change)
      return [
        {
          body: body.id,
          foot: foot.id,
          change,
          ...(foot.pack && { packAfter: foot.pack.now + change }),
          out: [...out],
          use: [...use],
        },
      ]
    }),
  )
}

function feetAnswer(train: Train, { changes, motions }: Rounded): RoundedFoot[] {
  const feet = report.feetAnswer(train, motions)
  let at = 0
  return train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) => {
      const moved = feet[at++]
      const motion = motions[b]
      if (!moved || !motion) return []
      const change = changes[b]?.[f] ?? 0
      return [
        {
          ...moved,
          shim: change,
          ...(foot.pack && { packAfter: foot.pack.now + change }),
          ...(isLoose(body) &&
            !body.held && { offPlane: change - footMove(body, motion, foot).shim }),
        },
      ]
    }),
  )
}

/** Moves under `plan.leave`: those of the plan that are not made, and those that are made all the same. */
function smallMoves(
  train: Train,
  wanted: readonly Motion[],
  { changes, motions }: Rounded,
): { left: SmallMove[]; small: SmallMove[] } {
  const left: SmallMove[] = []
  const small: SmallMove[] = []
  const look = (where: Omit<SmallMove, 'move'>, was: Micrometres, is: Micrometres) => {
    const size = Math.abs(is) > nothing ? Math.abs(is) : Math.abs(was)
    if (size <= nothing || size > train.plan.leave - tol.left) return
    const move = Math.abs(is) > nothing ? is : was
    ;(Math.abs(is) > nothing ? small : left).push({ ...where, move })
  }
  const moveOf = (body: Body, motion: Motion | undefined, foot: { x: number; y: number }) =>
    motion ? footMove(body, motion, foot) : { axial: 0, side: 0, shim: 0 }
  train.bodies.forEach((body, b) => {
    const [was, is] = [wanted[b], motions[b]]
    body.feet.forEach((foot, f) => {
      look({ body: body.id, foot: foot.id }, moveOf(body, was, foot).shim, changes[b]?.[f] ?? 0)
    })
    body.rows.forEach((row, r) => {
      const at = { x: row.x, y: 0 }
      look({ body: body.id, row: r + 1 }, moveOf(body, was, at).side, moveOf(body, is, at).side)
    })
    look({ body: body.id }, was?.tx ?? 0, is?.tx ?? 0)
  })
  return { left, small }
}
