import { fineText, slopeText } from '../../../language/amounts'
import type { Micrometres, Millimetres } from '../../../mechanics/units'
import type { Coupling, Train } from '../../../mechanics/train'
import type { Misalignment } from '../../../mechanics/readings/equation'
import { setName } from '../../../language/readingSets'
import { showsNought, towardSide } from '../../../language/sides'
import { capital, inSentence, listed } from '../../../language/names'
import { setSeen, type SetSeen } from './setSeen'

/** What the readings of a coupling mean, to be looked at and agreed to before anything is planned on them. */
export interface SignWords {
  readonly coupling: string
  /** The line in words; who confirms, confirms these. Other words ask again. */
  readonly says: string
  /** What each set that is used says by itself. */
  readonly sets: readonly { readonly set: number; readonly says: string }[]
  readonly picture: SignPicture
}

/** Two short shafts seen from the side and from above, for a small drawing. */
export interface SignPicture {
  readonly rise: ShaftPair
  readonly side: ShaftPair
  /** Which shaft lies higher at the right plane, in the digits that people read. */
  readonly higher: 'left' | 'right' | 'neither'
  /** To which side the right shaft lies of the left one there. */
  readonly toward: 'three' | 'nine' | 'neither'
}

export interface ShaftPair {
  readonly left: readonly [SignPoint, SignPoint]
  readonly right: readonly [SignPoint, SignPoint]
}

interface SignPoint {
  readonly x: Millimetres
  readonly value: Micrometres
}

/** Shafts are drawn as long as their spacer, and at least this (mm). */
const shortest = 200

/** What the reduced line of a coupling and each of its sets mean, in words and as a picture. */
export function signWords(train: Train, coupling: Coupling, line: Misalignment): SignWords {
  const at = (x: number) => ({
    y: line.y + line.sy * (x - coupling.mid),
    z: line.z + line.sz * (x - coupling.mid),
  })
  const { p, q } = coupling
  const atRight = at(q)
  const nought = (value: number) => showsNought(value, train)
  const says =
    q > p
      ? `At the left plane ${placeWords(train, coupling, at(p))}; at the right plane ${placeWords(train, coupling, atRight)}`
      : [
          `At the coupling ${placeWords(train, coupling, atRight)}`,
          ...slopeWords(train, coupling, line),
        ].join('; ')
  return {
    coupling: coupling.id,
    says: `${says}.`,
    sets: coupling.found.flatMap((set, i) => {
      if (!set.used) return []
      const parts = setSeen(set, coupling).flatMap((seen) => seenWords(train, coupling, seen))
      const meaning = parts.length === 0 ? 'says nothing by itself' : parts.join('; ')
      return [{ set: i, says: `${capital(setName(train, set, i))}: ${meaning}.` }]
    }),
    picture: {
      rise: shafts(coupling, (x) => at(x).z),
      side: shafts(coupling, (x) => at(x).y),
      higher: nought(atRight.z) ? 'neither' : atRight.z > 0 ? 'right' : 'left',
      toward: nought(atRight.y) ? 'neither' : atRight.y > 0 ? 'three' : 'nine',
    },
  }
}

function shafts({ p, q }: Coupling, at: (x: Millimetres) => Micrometres): ShaftPair {
  const reach = Math.max(shortest, q - p)
  return {
    left: [
      { x: p - reach, value: 0 },
      { x: p, value: 0 },
    ],
    right: [
      { x: q, value: at(q) },
      { x: q + reach, value: at(q + reach) },
    ],
  }
}

const names = (train: Train, { left, right }: Coupling) => ({
  left: inSentence(train.machines[left]?.name ?? ''),
  right: inSentence(train.machines[right]?.name ?? ''),
})

/** "the compressor is 0.30 mm HIGHER than the gearbox, and 0.10 mm toward the pipe rack". */
function placeWords(
  train: Train,
  coupling: Coupling,
  { y, z }: { readonly y?: Micrometres; readonly z?: Micrometres },
): string {
  const { left, right } = names(train, coupling)
  const size = (value: number) => fineText(Math.abs(value), train.units)
  const up =
    z === undefined
      ? undefined
      : showsNought(z, train)
        ? `as high as ${left}`
        : `${size(z)} ${z > 0 ? 'HIGHER' : 'LOWER'} than ${left}`
  const aside =
    y === undefined
      ? undefined
      : showsNought(y, train)
        ? 'in line with it sideways'
        : `${size(y)} ${towardSide(train, y)}`
  const beside =
    y === undefined || up !== undefined
      ? aside
      : showsNought(y, train)
        ? `in line with ${left} sideways`
        : `${size(y)} ${towardSide(train, y)} against ${left}`
  return `${right} is ${[up, beside].filter((part) => part !== undefined).join(', and ')}`
}

/** How the right axis runs against the left one; a slope that shows nothing is not said. */
function slopeWords(
  train: Train,
  coupling: Coupling,
  { sy, sz }: { readonly sy?: number; readonly sz?: number },
): string[] {
  const { right } = names(train, coupling)
  const size = (value: number) => slopeText(Math.abs(value), train.units)
  const shows = (value: number | undefined): value is number =>
    value !== undefined && /[1-9]/.test(value.toFixed(2))
  const parts = [
    ...(shows(sz) ? [`${sz > 0 ? 'RISES' : 'FALLS'} ${size(sz)}`] : []),
    ...(shows(sy) ? [`runs ${size(sy)} ${towardSide(train, sy)}`] : []),
  ]
  return parts.length === 0
    ? [`${right} runs straight on`]
    : [`going right ${right} ${listed(parts)}`]
}

function seenWords(train: Train, coupling: Coupling, seen: SetSeen): string[] {
  if (seen.kind === 'place') {
    if (seen.y === undefined && seen.z === undefined) return []
    return [`there ${placeWords(train, coupling, seen)}`]
  }
  if (seen.sy === undefined && seen.sz === undefined) return []
  return [
    ...(seen.diameter > 0 ? openWords(train, seen) : []),
    ...slopeWords(train, coupling, seen),
  ]
}

/** The faces close at the top where the right axis rises to the right: the gap is wider at the bottom. */
function openWords(
  train: Train,
  { sy, sz, diameter }: Extract<SetSeen, { kind: 'slope' }>,
): string[] {
  const size = (slope: number) => fineText(Math.abs(slope) * diameter, train.units)
  const shows = (slope: number | undefined): slope is number =>
    slope !== undefined && !showsNought(slope * diameter, train)
  const parts = [
    ...(shows(sz) ? [`${size(sz)} wider at the ${sz > 0 ? 'BOTTOM' : 'TOP'}`] : []),
    ...(shows(sy) ? [`${size(sy)} wider ${towardSide(train, -sy)}`] : []),
  ]
  return parts.length === 0 ? ['the faces are parallel'] : [`the gap is ${listed(parts)}`]
}
