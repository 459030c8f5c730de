import { notListed } from './betweenStates'
import { placeOf, shown, type Refusal } from './refusal'
import type { CouplingDocument, TrainDocument } from './schema'

/** What a gear coupling may get wrong: a least that its tolerance forbids, a speed that nothing tells, a state that is not there. */
export function gearRefusals(
  { gear, left, right, tolerance, speed }: CouplingDocument,
  place: string,
  document: TrainDocument,
): Refusal[] {
  if (!gear) return []
  const out: Refusal[] = []
  const { least, sliding, pitch } = gear
  const twoPlanes = right.plane > left.plane
  const most = twoPlanes ? tolerance.flex : tolerance.angle
  if (least !== undefined && most !== undefined && least >= most)
    out.push({
      at: `${place}.gear.least`,
      why: `${least} is not below the ${twoPlanes ? 'angle at each plane' : 'angle'} of ${most} that the tolerance allows: the least must be under the most`,
    })
  if (sliding !== undefined && pitch === undefined)
    out.push({
      at: `${place}.gear.sliding`,
      why: `${sliding} cannot be compared without the size of the teeth: give their pitch diameter (pitch), or leave the limit out`,
    })
  if (sliding !== undefined && pitch !== undefined && !(speed !== undefined && speed > 0))
    out.push({
      at: `${place}.gear.sliding`,
      why: `${sliding} cannot be compared without a speed: give the speed of the coupling in rpm, or leave the limit out`,
    })
  const states = document.states ?? [{ id: 'cold' }]
  gear.states?.forEach((state, i) => {
    if (!states.some(({ id }) => id === state))
      out.push({
        at: `${place}.${placeOf(['gear', 'states', i])}`,
        why: notListed(state, document.states),
      })
    else if (gear.states?.indexOf(state) !== i)
      out.push({
        at: `${place}.${placeOf(['gear', 'states', i])}`,
        why: `duplicate state ${shown(state)}: it is listed already; name each state once`,
      })
  })
  return out
}
