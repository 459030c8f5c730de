import { fineSign, micrometresPer, toFine, type Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { tidy } from '../../../language/tidy'
import { programUnit } from '../../lp/program'
import { keyOf, type ElasticLimit } from '../elastic/limit'
import type { ElasticModel } from '../elastic/elasticModel'
import { inSentence, listed } from '../../../language/names'
import type { RemedyAmount } from './answer'

/** Whole steps in which room is made: what a shop works to. In the document's fine unit. */
const roomStep = { um: 100, mm: 0.1, mil: 5 } as const
/** Whole steps of a minimum pack: the thinnest shims. */
const shimStep = { um: 50, mm: 0.05, mil: 2 } as const

export const stepsOf = (train: Train) => ({
  /** In program units. */
  room: (roomStep[train.units.fine] * micrometresPer[train.units.fine]) / programUnit,
  shim: (shimStep[train.units.fine] * micrometresPer[train.units.fine]) / programUnit,
})

/** Micrometres as a number of the document, in its fine unit. */
export const fineStep = (train: Train, value: Micrometres): number =>
  tidy(toFine(value, train.units))

/** An amount at a foot, or at another part of a body. */
export function bodyAmount(
  body: Body,
  part: { foot?: string; restraint?: string },
  what: string,
  value: Micrometres,
): RemedyAmount {
  return {
    where: `${body.name} ${what}`,
    part: { body: body.id, ...part },
    value,
    quantity: 'fine',
  }
}

/** Index of a member in a model; undefined where the train has no such limit. */
export function indexOf(model: ElasticModel, member: ElasticLimit): number | undefined {
  const key = keyOf(member)
  const index = model.members.findIndex((other) => keyOf(other) === key)
  return index < 0 ? undefined : index
}

/** Bodies that take part in conflicts or stand near: only they are asked to give. */
export function nearbyBodies(
  model: ElasticModel,
  conflicts: readonly ReadonlySet<number>[],
): ReadonlySet<number> {
  const { train, members } = model
  const reach = 2
  const out = new Set<number>()
  const add = (machine: number) => {
    for (let b = machine - reach; b <= machine + reach; b++) {
      const body = train.machines[b]
      if (!body) continue
      out.add(b)
      if (body.skid !== undefined) out.add(body.skid)
    }
  }
  for (const set of conflicts)
    for (const index of set) {
      const member = members[index]
      if (!member) continue
      if (member.kind === 'coupling') add(train.couplings[member.coupling]?.left ?? -reach - 1)
      else if (member.body < train.machines.length) add(member.body)
      else out.add(member.body)
    }
  return out
}

/** "0.9 mm at each of 4 feet of the turbine; 0.3 to 0.5 mm at 2 feet of the gear". */
export function amountsInWords(
  train: Train,
  amounts: readonly RemedyAmount[],
  one: string,
  many: string,
): string {
  return listed(
    train.bodies.flatMap((body) => {
      const here = amounts.filter(({ part }) => part.body === body.id)
      if (here.length === 0) return []
      const values = here.map(({ value }) => fineStep(train, value))
      const [low, high] = [Math.min(...values), Math.max(...values)]
      const unit = fineSign[train.units.fine]
      const size = low === high ? `${low} ${unit}` : `${low} to ${high} ${unit}`
      const each = low === high && here.length > 1 ? 'each of ' : ''
      const count = here.length === 1 ? `1 ${one}` : `${each}${here.length} ${many}`
      return [`${size} at ${count} of ${inSentence(body.name)}`]
    }),
  )
}
