import { limitName } from '../engine/infeasible/conflict/limitWords'
import type { DocumentUnits } from '../mechanics/units'
import { unitSign } from '../document/unitSign'
import type {
  Conflict,
  ConflictLimit,
  ConflictMember,
  Lacked,
} from '../engine/infeasible/conflict/answer'
import type { ReasonsAnswer } from '../engine/fieldwork/answer'
import type { Remedy, RemedyAmount } from '../engine/infeasible/remedies/answer'
import { inUnits } from './inUnits'

/** Limits that cannot all be had, each with what it lacks in the unit beside it. */
export const membersJson = (members: readonly ConflictMember[], units: DocumentUnits) =>
  members.map(({ limit, where, lacks, alone, checks, sentence }) => {
    const number = (said: Lacked | null) => said && inUnits(said.amount, said.quantity, units)
    const sign = (...said: (Lacked | null)[]) => {
      const known = said.find((one) => one !== null)
      return known ? unitSign(known.quantity, units) : null
    }
    return {
      limit: limitName(limit),
      where,
      part: memberPart(limit),
      lacks: number(lacks),
      alone: number(alone),
      unit: sign(lacks, alone),
      ...(checks && {
        checks: checks.map((check) => ({
          what: check.what,
          lacks: number(check.lacks),
          alone: number(check.alone),
          unit: sign(check.lacks, check.alone),
        })),
      }),
      sentence,
    }
  })

/** Ids of the part, for drawing, and the way in which it presses. */
interface MemberPart {
  body?: string
  toward?: string
  foot?: string
  restraint?: string
  way?: string
  coupling?: string
  state?: string
  what?: string
}

function memberPart(limit: ConflictLimit): MemberPart {
  switch (limit.kind) {
    case 'foot': {
      const { body, toward, foot } = limit
      return { body, ...(toward && { toward }), foot }
    }
    case 'restraint': {
      const { body, toward, restraint, way } = limit
      return { body, toward, restraint, way }
    }
    case 'tilt':
      return { body: limit.body, toward: limit.toward }
    case 'held':
      return { body: limit.body }
    case 'coupling': {
      const { coupling, state, presses } = limit
      return { coupling, state, ...presses }
    }
  }
}

const conflictsJson = (conflicts: readonly Conflict[], units: DocumentUnits) =>
  conflicts.map(({ members, floor, sentence }) => ({
    members: membersJson(members, units),
    floor,
    sentence,
  }))

/** An amount of a remedy with its unit; a factor is told as "times". */
function amountJson({ where, part, value, quantity }: RemedyAmount, units: DocumentUnits) {
  const measure = quantity === 'factor' ? 'plain' : quantity
  return {
    where,
    part,
    value: inUnits(value, measure, units),
    unit: quantity === 'factor' ? 'times' : unitSign(quantity, units),
  }
}

const cost = (value: number | null, units: DocumentUnits): number | null =>
  value === null ? null : inUnits(value, 'fine', units)

/** Remedies in the document's units; what they change in the file is in those already. */
const remediesJson = (remedies: readonly Remedy[], units: DocumentUnits) =>
  remedies.map((remedy) => ({
    ...remedy,
    amount: remedy.amount.map((amount) => amountJson(amount, units)),
    cost: cost(remedy.cost, units),
    costWithEffort: cost(remedy.costWithEffort, units),
  }))

export type RemedyJson = ReturnType<typeof remediesJson>[number]

/** Why an impossible train is impossible and what would help; a first conflict stands apart from what is behind it. */
export function reasonsJson(
  { conflicts, remedies, holdsTried }: ReasonsAnswer,
  units: DocumentUnits,
) {
  const [first, ...behind] = conflicts
  return {
    ...(first && {
      conflict: membersJson(first.members, units),
      conflictSentence: first.sentence,
      behind: conflictsJson(behind, units),
    }),
    remedies: remediesJson(remedies, units),
    holdsTried,
  }
}
