import { farthestReach } from '../lp/cuts'
import { pressingRows } from '../lp/duals'
import type { MotionGroup, Partition } from '../lp/parts'
import {
  programUnit,
  shareColumn,
  type Circle,
  type Meaning,
  type Program,
  type Row,
} from '../lp/program'
import type { RoundsOptimal } from '../lp/rounds'
import type { WeightedMove } from '../proof/certificate'
import type { Move } from '../proof/moves'
import { shareWeight } from '../lp/stage'
import type { LimitFact, Toward } from '../proof/facts'
import type { Claim } from '../proof/claims'
import { tol } from '../../mechanics/tolerances'
import type { PartSolver } from './partSolver'

/**
 * The limits that a floor leans on, as the duals of its program say: in words of the train alone, so that the proof can
 * make its own rows of them.
 * @param groups the choice of free motions falls into
 */
export function floorClaims(
  partition: Partition,
  parts: PartSolver,
  groups: readonly MotionGroup[],
): Claim[] {
  const lowest = groups
    .map((group) => ({ group, known: parts.knownFloor(group) }))
    .reduce<{ group?: MotionGroup; bound: number }>(
      (best, { group, known }) =>
        known && known.bound > best.bound ? { group, bound: known.bound } : best,
      { bound: -1 },
    )
  const inside = new Set(groups.flatMap(({ motions }) => motions))
  const still = stillClaim(partition, (column) => inside.has(column))
  if (still && still.share >= lowest.bound) return [still.claim]
  const known = lowest.group && parts.knownFloor(lowest.group)
  if (!lowest.group || !known) return []
  const { program } = parts.part(lowest.group)
  return claimsOf(program, known.lowest, 1 / shareWeight)
}

/**
 * The limits that a least cost leans on, and the moves that it pays for.
 * @param plans of the parts that move
 */
export function costClaims(
  plans: readonly { readonly program: Program; readonly least: RoundsOptimal }[],
): {
  claims: Claim[]
  moves: WeightedMove[]
} {
  return {
    claims: plans.flatMap(({ program, least }) => claimsOf(program, least, programUnit)),
    moves: plans.flatMap(({ program, least: { answer } }) => {
      const first = answer.duals.length - program.displacements.length
      return program.displacements.flatMap((row, i): WeightedMove[] => {
        const move = moveOf(row.meaning)
        const dual = answer.duals[first + i] ?? 0
        return move && dual !== 0 ? [{ move, weight: -dual }] : []
      })
    }),
  }
}

function moveOf(meaning: Meaning): Move | undefined {
  switch (meaning.fact) {
    case 'shim':
      return { is: 'shim', body: meaning.body, index: meaning.foot }
    case 'slide':
      return { is: 'slide', body: meaning.body, index: meaning.row }
    case 'axial':
      return { is: 'axial', body: meaning.body, index: 0 }
    case 'pack':
    case 'lift':
    case 'shim key':
    case 'side key':
    case 'hole':
    case 'restraint':
    case 'tilt':
    case 'least':
    case 'tolerance':
      return undefined
  }
}

/** @param unit of the objective, in what the proof tells it in: a whole share, um */
function claimsOf(program: Program, answer: RoundsOptimal, unit: number): Claim[] {
  return pressingRows(program, answer, { part: tol.noPressElastic }).flatMap((pressing) => {
    const { row, cut, side, weight, limit } = pressing
    const perShare = Math.abs(row.terms.find(([column]) => column === shareColumn)?.[1] ?? 0)
    const fact = cut
      ? factOf(row.meaning, 1, directionOf(cut.angle))
      : factOf(row.meaning, side === 'upper' ? 1 : -1, towardOf(program.limits, limit ?? 0))
    if (!fact) return []
    const carries = weight * unit
    return [{ fact, carries: fact.is === 'tolerance' ? carries * perShare : carries / programUnit }]
  })
}

/** A coupling between bodies that stay, where it is what the floor comes to. */
function stillClaim(
  partition: Partition,
  free: (column: number) => boolean,
): { share: number; claim: Claim } | undefined {
  const { rows, circles } = partition.still(free)
  const { program }: { program: Program } = partition
  const all = [
    ...rows.map((row) => {
      const perShare = row.terms.find(([column]) => column === shareColumn)?.[1] ?? NaN
      const toward = towardOf(program.limits, program.limits.indexOf(row))
      return { share: row.upper / perShare, fact: factOf(row.meaning, 1, toward) }
    }),
    ...circles.flatMap((c) => {
      const circle: Circle | undefined = program.circles[c]
      if (!circle) return []
      const { distance, angle } = farthestReach(circle, [])
      const share = distance / (circle.radius.terms.get(shareColumn) ?? NaN)
      return [{ share, fact: factOf(circle.meaning, 1, directionOf(angle)) }]
    }),
  ]
  const worst = all.reduce<(typeof all)[number] | undefined>(
    (a, b) => (a === undefined || b.share > a.share ? b : a),
    undefined,
  )
  return worst?.fact && { share: worst.share, claim: { fact: worst.fact, carries: 1 } }
}

/** Exact along the axes, so that no last digit of a sine adds a motion that nothing cancels. */
function directionOf(angle: number): Toward {
  const clean = (value: number) => (Math.abs(value) < tol.onAxis ? 0 : value)
  return [clean(Math.cos(angle)), clean(Math.sin(angle))]
}

/** A tolerance that counts its ways apart stands in two rows, the + way first. */
function towardOf(limits: readonly Row[], index: number): Toward {
  const [before, row] = [limits[index - 1]?.meaning, limits[index]?.meaning]
  if (row?.fact !== 'tolerance') return [0, 0]
  const sign = before && JSON.stringify(before) === JSON.stringify(row) ? -1 : 1
  return row.way === 'z' ? [0, sign] : [sign, 0]
}

function factOf(meaning: Meaning, side: 1 | -1, toward: Toward): LimitFact | undefined {
  switch (meaning.fact) {
    case 'tolerance': {
      const { coupling, state, what } = meaning
      return { is: 'tolerance', coupling, state, what, toward }
    }
    case 'hole':
      return { is: 'hole', body: meaning.body, foot: meaning.foot, toward }
    case 'pack': {
      const { body, foot } = meaning
      return { is: 'foot', body, foot, limit: side === 1 ? 'maximum pack' : 'minimum pack', side }
    }
    case 'lift':
    case 'shim key':
    case 'side key':
      return { is: 'foot', body: meaning.body, foot: meaning.foot, limit: meaning.fact, side }
    case 'restraint': {
      const { body, restraint, way } = meaning
      return { is: 'restraint', body, restraint, way, side }
    }
    case 'tilt':
      return { is: 'tilt', body: meaning.body, side }
    case 'least': {
      const { coupling, state, what, way } = meaning
      return { is: 'least', coupling, state, what, way }
    }
    case 'shim':
    case 'slide':
    case 'axial':
      return undefined
  }
}
