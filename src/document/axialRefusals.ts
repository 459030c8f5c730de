import { floatLeft, stretchLeft } from '../mechanics/axial'
import { convertAxial } from './convertCoupling'
import { shown, type Refusal } from './refusal'
import type { CouplingDocument } from './schema'

/** What rotors and the stretch of a coupling may get wrong: ranges, two rotors that nothing holds, no room left. */
export function axialRefusals({ axial }: CouplingDocument, place: string): Refusal[] {
  if (!axial) return []
  const { stretch, rotors = {} } = axial
  const sides = (['left', 'right'] as const).flatMap((side) => {
    const rotor = rotors[side]
    return rotor ? [{ side, rotor, at: `${place}.axial.rotors.${side}` }] : []
  })
  const ranges = [
    ...(stretch ? ofRange(stretch, `${place}.axial.stretch`, 'as it was found') : []),
    ...sides.flatMap(({ rotor: { float }, at }) =>
      float ? ofRange(float, `${at}.float`, 'where it lay') : [],
    ),
  ]
  if (ranges.length > 0) return ranges
  const out = sides.flatMap(({ rotor: { centre, float }, at }): Refusal[] =>
    centre !== undefined && float && (centre < float[0] || centre > float[1])
      ? [
          {
            at: `${at}.centre`,
            why: `${centre} lies outside the float of ${shown(float)}: the rotor cannot get to its magnetic centre; both are from where it lay when the gap was found, + to the right`,
          },
        ]
      : [],
  )
  if (rotors.left?.centre !== undefined && rotors.right?.centre !== undefined)
    out.push({
      at: `${place}.axial.rotors.right.centre`,
      why: `${rotors.right.centre} is given, and the left rotor has a magnetic centre too: a coupling carries one rotor, the other one is held by its thrust bearing; give one of the two`,
    })
  return out.length > 0 ? out : ofRoom(axial, place)
}

/** What the thrust float of the other rotor leaves must be more than nothing. */
function ofRoom(document: NonNullable<CouplingDocument['axial']>, place: string): Refusal[] {
  const axial = convertAxial(document)
  const [stretch, float] = [stretchLeft(axial), floatLeft(axial)]
  const side = axial.rotors.left?.centre === undefined ? 'right' : 'left'
  return [
    ...(stretch && stretch[0] >= stretch[1]
      ? [
          {
            at: `${place}.axial.stretch`,
            why: `${shown(document.stretch)} is no more than the float of the rotors: nothing is left for the gap. Give a rotor that no thrust bearing holds its magnetic centre: such a rotor goes with the coupling and does not stretch it`,
          },
        ]
      : []),
    ...(float && float[0] >= float[1]
      ? [
          {
            at: `${place}.axial.rotors.${side}.float`,
            why: `${shown(document.rotors?.[side]?.float)} is no more than the float of the other rotor: nothing is left for the gap; check both`,
          },
        ]
      : []),
  ]
}

function ofRange(range: readonly [number, number], at: string, stays: string): Refusal[] {
  const [low, high] = range
  if (low > high)
    return [
      {
        at,
        why: `${shown(range)} is the wrong way round: give the lower limit first, ${high} to ${low}`,
      },
    ]
  if (low > 0 || high < 0)
    return [
      {
        at,
        why: `${shown(range)} does not contain 0, which is ${stays}: give a range with 0 in it`,
      },
    ]
  if (low === high)
    return [
      { at, why: `${shown(range)} is no range: give the low and the high end, or leave it out` },
    ]
  return []
}
