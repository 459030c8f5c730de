import type { BindingJson } from '../../src/json/planJson'
import { footLimits, isFootLimit } from '../second/footLimits'
import type { Body, Coupling, Room, Train } from '../second/train'

/** The train with one binding limit loosened by an amount in its unit; undefined where a file has no such number. */
export function relaxed(train: Train, binding: BindingJson, by: number): Train | undefined {
  const copy = JSON.parse(JSON.stringify(train)) as Train
  const { part } = binding
  if (part.coupling !== undefined) {
    const coupling = copy.couplings.find(({ id }) => id === part.coupling)
    return coupling && relaxCoupling(coupling, binding.limit, by / factorOf(copy, part.state))
      ? copy
      : undefined
  }
  const body = [...copy.machines, ...(copy.skids ?? [])].find(({ id }) => id === part.body)
  const { reserve = 0 } = copy.plan ?? {}
  return body && relaxBody(body, binding, by, reserve) ? copy : undefined
}

/** A price is per unit of the limit as it stands in its state; the file gives it before the state's factor. */
const factorOf = (train: Train, state: string | undefined): number =>
  train.states?.find(({ id }) => id === state)?.tolerance ?? 1

function relaxCoupling({ tolerance, axial }: Coupling, limit: string, by: number): boolean {
  if (limit === 'gap' && axial) {
    axial.tolerance += by
    return true
  }
  const kind = limit.endsWith('plane') ? 'flex' : limit
  if (kind !== 'flex' && kind !== 'offset' && kind !== 'angle') return false
  tolerance[kind] = (tolerance[kind] ?? NaN) + by
  return true
}

/** A limit already passed as found is the place where the foot stands, which no number of the file moves. */
function relaxBody(body: Body, { limit, part }: BindingJson, by: number, reserve: number): boolean {
  if (limit === 'tilt') {
    body.tilt = (body.tilt ?? NaN) + by
    return true
  }
  if (limit === 'restraint') {
    const restraint = body.restraints?.find(({ id }) => id === part.restraint)
    const way = part.way as 'axial' | 'side' | 'rise'
    const range = restraint?.[way]
    if (!restraint || !range) return false
    restraint[way] = [range[0] - by, range[1] + by] satisfies Room
    return true
  }
  const ids = part.feet ?? [part.foot]
  const feet = body.feet.filter(({ id }) => ids.includes(id))
  if (feet.length !== ids.length || !isFootLimit(limit)) return false
  return feet.every((foot) => footLimits[limit].loosen(foot, by, reserve))
}
