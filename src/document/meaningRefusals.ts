import { axialRefusals } from './axialRefusals'
import { betweenRefusals, notListed } from './betweenStates'
import { clutchRefusals } from './clutchRefusals'
import { gearRefusals } from './gearRefusals'
import { growthRefusals } from './growthRefusals'
import type { CouplingDocument, MachineDocument, SkidDocument, TrainDocument } from './schema'
import { placeOf, shown, type Refusal } from './refusal'
import { hotCheckRefusals } from './hotCheckRefusals'
import { outageRefusals } from './outageRefusals'
import { spoolRefusals } from './spoolRefusals'
import { surveyRefusals } from './surveyRefusals'

/** What a well-shaped document may still get wrong: ids, neighbours, limits, states. */
export function meaningRefusals(document: TrainDocument): Refusal[] {
  const skids = document.skids ?? []
  const states = document.states ?? []
  const bodies = repeated([
    ...named(document.machines, 'machines', 'machine'),
    ...named(skids, 'skids', 'skid'),
  ])
  return [
    ...bodies,
    ...repeated(named(document.couplings, 'couplings', 'coupling')),
    ...repeated(named(states, 'states', 'state')),
    ...betweenRefusals(states),
    ...repeated(named(document.surveys ?? [], 'surveys', 'survey')),
    ...repeated(named(document.hotChecks ?? [], 'hotChecks', 'hot check')),
    ...repeated(named(document.outages ?? [], 'outages', 'outage')),
    ...document.machines.flatMap((machine, i) => ofBody(machine, `machines[${i}]`)),
    ...skids.flatMap((skid, i) => ofBody(skid, `skids[${i}]`)),
    ...document.machines.flatMap((machine, i) =>
      growthRefusals(machine, `machines[${i}]`, document),
    ),
    ...ofCarrying(document, skids),
    // While ids repeat, who is whose neighbour cannot be told.
    ...(bodies.length > 0 ? [] : ofNeighbours(document)),
    ...document.couplings.flatMap((coupling, i) =>
      ofCoupling(coupling, `couplings[${i}]`, document),
    ),
    ...surveyRefusals(document),
    ...hotCheckRefusals(document),
    ...outageRefusals(document),
  ]
}

/** An id, where it stands, and what has it, in words. */
interface Named {
  readonly id: string
  readonly at: string
  readonly thing: string
}

const named = (list: readonly { readonly id: string }[], place: string, thing: string): Named[] =>
  list.map(({ id }, i) => ({ id, at: `${place}[${i}].id`, thing: `${thing} ${i + 1}` }))

function repeated(ids: readonly Named[]): Refusal[] {
  const first = new Map<string, string>()
  return ids.flatMap(({ id, at, thing }) => {
    const earlier = first.get(id)
    if (earlier === undefined) {
      first.set(id, thing)
      return []
    }
    return [{ at, why: `duplicate id ${shown(id)}: ${earlier} has it already; give another` }]
  })
}

function ofBody(body: MachineDocument | SkidDocument, place: string): Refusal[] {
  const out: Refusal[] = []
  if (body.anchored !== undefined && body.held === false)
    out.push({
      at: `${place}.held`,
      why: `false, but the body is anchored (${shown(body.anchored)}): an anchored body is held; leave held out, or take anchored away`,
    })
  if (body.feet.length === 0 && body.anchored === undefined)
    out.push({
      at: `${place}.feet`,
      why: 'the list has 0 entries: it needs at least 1 foot, unless the body is anchored',
    })
  out.push(
    ...repeated(named(body.feet, `${place}.feet`, 'foot')),
    ...repeated(named(body.restraints ?? [], `${place}.restraints`, 'point')),
    ...repeated(named(body.pins ?? [], `${place}.pins`, 'dowel or key')),
    ...('stator' in body ? ofStator(body, `${place}.stator`) : []),
  )
  body.feet.forEach(({ pack }, i) => {
    if (pack?.max !== undefined && pack.max < (pack.min ?? 0))
      out.push({
        at: `${place}.feet[${i}].pack.max`,
        why: `${pack.max} is below the minimum ${pack.min ?? 0}: limits the wrong way round; max must be at least min`,
      })
  })
  body.restraints?.forEach((restraint, i) => {
    for (const way of ['axial', 'side', 'rise'] as const) {
      const range = restraint[way]
      const at = `${place}.restraints[${i}].${way}`
      if (range === undefined) continue
      if (range[0] > range[1])
        out.push({
          at,
          why: `${shown(range)} is the wrong way round: give the lower limit first, ${range[1]} to ${range[0]}`,
        })
      else if (range[0] > 0 || range[1] < 0)
        out.push({
          at,
          why: `${shown(range)} does not contain 0: the point may always stay where it is, so give a range with 0 in it`,
        })
    }
  })
  return out
}

function ofStator({ stator, axis }: MachineDocument, place: string): Refusal[] {
  const { airGaps = [], feet = [] } = stator ?? {}
  return [
    ...repeated(named(airGaps, `${place}.airGaps`, 'air gap')),
    ...repeated(named(feet, `${place}.feet`, 'foot of the stator')),
    ...(stator && 'left' in axis
      ? [
          {
            at: place,
            why: 'the machine has two axes: a stator stands around the one rotor of a machine with one axis',
          },
        ]
      : []),
  ]
}

function ofCarrying(document: TrainDocument, skids: readonly SkidDocument[]): Refusal[] {
  const carrier = new Map<string, string>()
  return skids.flatMap((skid, s) =>
    skid.carries.flatMap((id, i) => {
      const at = `skids[${s}].carries[${i}]`
      if (!document.machines.some((machine) => machine.id === id))
        return [{ at, why: `${shown(id)} is no machine of this train: give a machine's id` }]
      const other = carrier.get(id)
      carrier.set(id, skid.id)
      if (other === undefined) return []
      return [
        {
          at,
          why: `${shown(id)} is already carried by ${shown(other)}: a machine stands on one skid, once`,
        },
      ]
    }),
  )
}

function ofNeighbours(document: TrainDocument): Refusal[] {
  const { machines, couplings } = document
  const joined = new Set<number>()
  const out = couplings.flatMap((coupling, i): Refusal[] => {
    const left = machines.findIndex(({ id }) => id === coupling.left.machine)
    const right = machines.findIndex(({ id }) => id === coupling.right.machine)
    for (const [index, side] of [
      [left, 'left'],
      [right, 'right'],
    ] as const)
      if (index < 0)
        return [
          {
            at: `couplings[${i}].${side}.machine`,
            why: `${shown(coupling[side].machine)} is no machine of this train: give a machine's id`,
          },
        ]
    const next = machines[left + 1]
    if (right !== left + 1)
      return [
        {
          at: `couplings[${i}].right.machine`,
          why: `${shown(coupling.right.machine)} is not the right-hand neighbour of ${shown(coupling.left.machine)}: ${next ? `give ${shown(next.id)}` : 'nothing stands to the right of it'}`,
        },
      ]
    if (joined.has(left))
      return [
        {
          at: `couplings[${i}].left.machine`,
          why: `${shown(coupling.left.machine)} and ${shown(coupling.right.machine)} are already joined: one coupling between each machine and the next`,
        },
      ]
    joined.add(left)
    return []
  })
  if (out.length > 0) return out
  return machines.slice(0, -1).flatMap((machine, i) =>
    joined.has(i)
      ? []
      : [
          {
            at: 'couplings',
            why: `no coupling joins ${shown(machine.id)} to ${shown(machines[i + 1]?.id)}: give one between each machine and the next`,
          },
        ],
  )
}

/** Flex planes nearer than this (mm or in) are one plane with a slip of the pen: a span is divided by. */
const leastSpan = 0.001

function ofCoupling(coupling: CouplingDocument, place: string, document: TrainDocument): Refusal[] {
  const out: Refusal[] = []
  const { tolerance, left, right } = coupling
  if (right.plane < left.plane)
    out.push({
      at: `${place}.right.plane`,
      why: `${right.plane} lies left of the left plane at ${left.plane}: x runs from left to right, so give ${left.plane} or more`,
    })
  else if (right.plane > left.plane && right.plane - left.plane < leastSpan)
    out.push({
      at: `${place}.right.plane`,
      why: `${right.plane} lies ${right.plane - left.plane} from the left plane at ${left.plane}, which is no spacer: give ${left.plane} for a single plane, or at least ${leastSpan} more`,
    })
  if (
    tolerance.flex === undefined &&
    tolerance.offset === undefined &&
    tolerance.angle === undefined
  )
    out.push({
      at: `${place}.tolerance`,
      why: 'no tolerance is given: give flex, or offset and angle',
    })
  if (right.plane === left.plane) {
    if (tolerance.flex !== undefined)
      out.push({
        at: `${place}.tolerance.flex`,
        why: `${tolerance.flex} needs two flex planes, but both planes are at ${left.plane}: give offset and angle, or the second plane`,
      })
  }
  out.push(...spoolRefusals(coupling.found, coupling, place))
  out.push(...ofSetting(coupling, place))
  out.push(...axialRefusals(coupling, place), ...clutchRefusals(coupling, place, document))
  out.push(...gearRefusals(coupling, place, document))
  const states = document.states ?? [{ id: 'cold' }]
  for (const state of Object.keys(coupling.aim ?? {}))
    if (!states.some(({ id }) => id === state))
      out.push({
        at: `${place}.${placeOf(['aim', state])}`,
        why: notListed(state, document.states),
      })
  return out
}

/** A maker's cold setting that is used needs a value and a reason, and never stands with an aim. */
function ofSetting({ setting, aim }: CouplingDocument, place: string): Refusal[] {
  if (setting?.use !== true) return []
  const given = [setting.offset?.y, setting.offset?.z, setting.slope?.y, setting.slope?.z]
  const out: Refusal[] = []
  if (given.every((value) => value === undefined))
    out.push({
      at: `${place}.setting`,
      why: 'the setting is used but gives no offset and no slope: give what the maker asks for, or do not use it',
    })
  if ((setting.why ?? '').trim() === '')
    out.push({
      at: `${place}.setting.why`,
      why: `${shown(setting.why)} given, but the setting is used in place of the growth figures: say why, or do not use it`,
    })
  if (Object.keys(aim ?? {}).length > 0)
    out.push({
      at: `${place}.aim`,
      why: `an aim for ${Object.keys(aim ?? {})
        .map(shown)
        .join(
          ', ',
        )} is given while the maker's cold setting is used: one or the other, never both; take the aim away, or do not use the setting`,
    })
  return out
}
