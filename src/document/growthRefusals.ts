import { growthQuantities } from '../mechanics/train'
import { notListed } from './betweenStates'
import { placeOf, shown, type Refusal } from './refusal'
import type { GrowthPointDocument, MachineDocument, TrainDocument } from './schema'

/** What well-shaped growth of a machine may still get wrong: states, sources, intervals. */
export function growthRefusals(
  machine: MachineDocument,
  place: string,
  document: TrainDocument,
): Refusal[] {
  return Object.entries(machine.growth ?? {}).flatMap(([state, points]) => {
    const at = `${place}.${placeOf(['growth', state])}`
    return (document.states ?? []).some(({ id }) => id === state)
      ? points.flatMap((point, i) => [
          ...ofSource(point, `${at}[${i}]`),
          ...ofRange(point, `${at}[${i}]`),
        ])
      : [{ at, why: notListed(state, document.states) }]
  })
}

/** Temperatures are a source of their own. */
const ofSource = ({ source, heat }: GrowthPointDocument, place: string): Refusal[] =>
  source !== undefined && heat
    ? [
        {
          at: `${place}.source`,
          why: `${shown(source)} is given beside heat, and a rise from temperatures is worked out from them: take source or heat away, or make two points of it`,
        },
      ]
    : []

/** An interval stands in place of a value and its uncertainty, lower end first. */
function ofRange(point: GrowthPointDocument, place: string): Refusal[] {
  const { range, u } = point
  if (!range) return []
  const out: Refusal[] = []
  if (growthQuantities.every((quantity) => range[quantity] === undefined))
    out.push({
      at: `${place}.range`,
      why: 'the interval is empty: give rise, side or axial as two ends, or leave range out',
    })
  for (const quantity of growthQuantities) {
    const interval = range[quantity]
    const at = `${place}.range.${quantity}`
    if (interval === undefined) continue
    if (interval[0] > interval[1])
      out.push({
        at,
        why: `${shown(interval)} is the wrong way round: give the lower end first, ${interval[1]} to ${interval[0]}`,
      })
    const value = point[quantity] !== undefined || (quantity === 'rise' && point.heat)
    if (value)
      out.push({
        at,
        why: `${shown(interval)} is given beside a ${quantity === 'rise' && point.heat ? 'rise from temperatures' : `value of ${point[quantity] ?? ''}`}: give the interval or the value, not both`,
      })
  }
  if (u !== undefined)
    out.push({
      at: `${place}.u`,
      why: `${u} is given beside an interval, which says itself how unsure it is: take one of them away, or make two points of it`,
    })
  return out
}
