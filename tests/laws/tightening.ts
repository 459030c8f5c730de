import type { AnswerJson } from '../../src/json/answerJson'
import { footLimitList, footLimits, isFootLimit, type FootLimitName } from '../second/footLimits'
import type { Body, Coupling, Restraint, Room, Train } from '../second/train'

const others = [
  'restraint',
  'tilt',
  'flex',
  'offset',
  'angle',
  'gap',
  'state',
  'share',
  'reserve',
] as const
export type Kind = FootLimitName | (typeof others)[number]

/** What can be tightened; a key leaves no room to take. */
export const kinds: readonly Kind[] = [
  ...footLimitList.map(({ name }) => name).filter((name) => !name.endsWith('key')),
  ...others,
]

/** One limit of a train, with the change that leaves it a part of its room. */
export interface Limit {
  /** As `partOf` writes it. */
  readonly part: string
  readonly tighten: (part: number) => void
}

/** A copy of a train, and every limit of a kind in it; tightening one changes the copy. */
export function limitsOf(train: Train, kind: Kind): { copy: Train; limits: Limit[] } {
  const copy = JSON.parse(JSON.stringify(train)) as Train
  const bodies: Body[] = [...copy.machines, ...(copy.skids ?? [])]
  const limits: Limit[] = [
    ...bodies.flatMap((body) => ofBody(body, kind)),
    ...copy.couplings.flatMap((coupling) => ofCoupling(coupling, kind)),
    ...ofPlan(copy, kind),
  ]
  return { copy, limits }
}

function ofBody(body: Body, kind: Kind): Limit[] {
  if (kind === 'tilt') {
    const { tilt } = body
    if (tilt === undefined) return []
    return [{ part: `tilt ${body.id}`, tighten: (part) => (body.tilt = tilt * part) }]
  }
  if (kind === 'restraint')
    return (body.restraints ?? []).flatMap((restraint) => ofRestraint(body, restraint))
  if (!isFootLimit(kind)) return []
  return body.feet.flatMap((foot) => {
    const tighten = footLimits[kind].tighten(foot)
    return tighten ? [{ part: `${kind} ${body.id} ${foot.id}`, tighten }] : []
  })
}

function ofRestraint(body: Body, restraint: Restraint): Limit[] {
  return (['axial', 'side', 'rise'] as const).flatMap((way) => {
    const range = restraint[way]
    if (!range) return []
    const tighten = (part: number) => (restraint[way] = range.map((v) => v * part) as Room)
    return [{ part: `restraint ${body.id} ${restraint.id} ${way}`, tighten }]
  })
}

function ofCoupling(coupling: Coupling, kind: Kind): Limit[] {
  const { tolerance, axial, id } = coupling
  if (kind === 'gap' && axial) {
    const room = axial.tolerance
    return [{ part: `gap ${id}`, tighten: (part) => (axial.tolerance = room * part) }]
  }
  if (kind !== 'flex' && kind !== 'offset' && kind !== 'angle') return []
  const limit = tolerance[kind]
  if (limit === undefined) return []
  return [{ part: `${kind} ${id}`, tighten: (part) => (tolerance[kind] = limit * part) }]
}

function ofPlan(train: Train, kind: Kind): Limit[] {
  if (kind === 'state')
    return (train.states ?? []).map((state) => {
      const { tolerance = 1 } = state
      return { part: `state ${state.id}`, tighten: (part) => (state.tolerance = tolerance * part) }
    })
  const plan = (train.plan ??= {})
  if (kind === 'share') {
    const { share = 1 } = plan
    return [{ part: 'share', tighten: (part) => (plan.share = share * part) }]
  }
  if (kind !== 'reserve') return []
  const { reserve = 0 } = plan
  // a tenth of a millimetre in whatever unit makes room for the reserve to grow from nothing
  const more = 100 / { um: 1, mm: 1000, mil: 25.4 }[train.units.fine]
  return [{ part: 'reserve', tighten: (part) => (plan.reserve = reserve + more / part) }]
}

/** The parts that an answer says its cost leans on, written as limits write theirs. */
export function leanedOn(answer: AnswerJson): Set<string> {
  return new Set(
    (answer.binding ?? []).flatMap(({ limit, part }) => {
      if (part.coupling !== undefined) {
        const what = limit.endsWith('plane') ? 'flex' : limit
        return [`${what} ${part.coupling}`, `state ${part.state ?? ''}`]
      }
      const words = [limit, part.body, part.foot, part.restraint, part.way]
      return [words.filter((word) => word !== undefined).join(' ')]
    }),
  )
}
