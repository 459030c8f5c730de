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

/**
 * "0.9 mm at all 4 feet of the turbine; 0.3 mm at foot 1 and 0.5 mm at feet 2 and 3 of the gear": each amount with what it
 * is for, as nobody works at "2 feet of the gear".
 */
export const amountsInWords = (train: Train, amounts: readonly RemedyAmount[]): string =>
  train.bodies
    .flatMap((body) => {
      const here = amounts.filter(({ part }) => part.body === body.id)
      const sizes = [...new Set(here.map(({ value }) => fineStep(train, value)))]
      const each = sizes.map((size) => {
        const alike = here.filter(({ value }) => fineStep(train, value) === size)
        return `${size} ${fineSign[train.units.fine]} at ${placesText(body, alike)}`
      })
      return each.length === 0 ? [] : [`${listed(each)} of ${inSentence(body.name)}`]
    })
    .join('; ')

/** "foot 1", "feet 1 and 2", "all 4 feet"; of nozzles each with its way. */
function placesText(body: Body, amounts: readonly RemedyAmount[]): string {
  const feet = amounts.flatMap(({ part }) => part.foot ?? [])
  if (feet.length === 0)
    return listed(amounts.map(({ where }) => where.slice(body.name.length + 1)))
  if (feet.length === 1) return `foot ${feet[0] ?? ''}`
  return feet.length === body.feet.length ? `all ${feet.length} feet` : `feet ${listed(feet)}`
}
