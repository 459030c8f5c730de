import { fineSign, slopeSign, toFine, toLength } from '../../../mechanics/units'
import { keptInWords } from '../../../language/keptWords'
import { listed } from '../../../language/names'
import { shareText } from '../../../language/amounts'
import { axialChecks, isAxial } from '../../../mechanics/axial'
import { judgedStates } from '../../../mechanics/engaged'
import { checksOf } from '../../../mechanics/misalignment/check'
import type { CheckResult } from '../../../mechanics/misalignment/shares'
import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { farthestPoint } from '../../../mechanics/uncertainty/farthest'
import { roomAlong, type KeptRooms } from '../../../mechanics/uncertainty/kept'

/** A check of which what is kept free takes the largest part: no move reaches a smaller share. */
export interface KeptAlone {
  readonly coupling: number
  readonly state: number
  readonly what: CheckResult['what']
  /** In the unit of the limit: um for an offset, mm for a gap, else mrad. */
  readonly room: number
  readonly limit: number
}

/** The check that leaves least beside the room that is kept free of it; undefined where none is kept. */
export function mostKept(
  train: Train,
  kept: KeptRooms | undefined,
  wanted: (coupling: number, state: number) => boolean = () => true,
): KeptAlone | undefined {
  if (!kept) return undefined
  const all = train.couplings.flatMap((coupling, c) =>
    judgedStates(train, coupling).flatMap(({ state, s }): KeptAlone[] => {
      const at = kept[c]?.[s]
      if (!at || !wanted(c, s)) return []
      const { axial, tolerance } = coupling
      return [
        ...checksOf(coupling).flatMap(({ what, limit }, i) => {
          const around = at.checks[i]
          if (!around) return []
          const far = farthestPoint({ y: 0, z: 0 }, around)
          const along = roomAlong(around)
          const room =
            tolerance.shape === 'round' ? Math.hypot(far.y, far.z) : Math.max(along.y, along.z)
          return [{ coupling: c, state: s, what, room, limit: limit * state.factor }]
        }),
        ...(axial
          ? axialChecks(axial, state.factor).map(({ what, limit }) => ({
              ...{ coupling: c, state: s, what, limit },
              room: at.gap / 1000,
            }))
          : []),
      ]
    }),
  )
  return all.reduce<KeptAlone | undefined>(
    (a, b) => (a && partOf(a) >= partOf(b) ? a : b),
    undefined,
  )
}

/** The share of its tolerance that a check cannot come below, whatever moves. */
export const partOf = ({ room, limit }: KeptAlone): number => room / limit

/** Whether what is kept free leaves nothing of the share asked for. */
export const leavesNothing = (train: Train, alone: KeptAlone): boolean =>
  partOf(alone) > train.plan.share + tol.share

/**
 * "1.6 standard uncertainties come to 0.42 mrad at the left plane, and 70 % of its limit is 0.35 mrad: nothing is left.
 * A smaller uncertainty, ... would help"
 */
export function keptAloneInWords(train: Train, { what, room, limit }: KeptAlone): string {
  const { guard, worst, share } = train.plan
  const [told, left] = apart(unitOf(train, what, room), unitOf(train, what, share * limit))
  const unit =
    what === 'offset'
      ? fineSign[train.units.fine]
      : isAxial(what)
        ? train.units.length
        : slopeSign(train.units)
  const allowed = share < 1 ? `${shareText(share)} of its limit is` : 'its limit is'
  const help = [
    ...(guard > 0 ? ['smaller uncertainties', 'a smaller guard'] : []),
    ...(worst ? ['narrower intervals of growth'] : []),
    ...(share < 1 && room <= limit ? ['more of its tolerance used'] : []),
    'a wider tolerance',
  ]
  const come = guard === 1 && !worst ? 'comes' : 'come'
  return `${keptInWords(train)} ${come} to ${told} ${unit} ${places[what]}, and ${allowed} ${left} ${unit}: nothing is left for the machines, wherever they stand; only ${listed(help, 'or')} can help`
}

const unitOf = ({ units }: Train, what: CheckResult['what'], value: number): number =>
  what === 'offset' ? toFine(value, units) : isAxial(what) ? toLength(value, units) : value

/** Both are facts: three digits, or as many as it takes to tell the one over the other. */
function apart(over: number, under: number): readonly [string, string] {
  for (const digits of [3, 4, 5, 6, 7, 8]) {
    const [a, b] = [Number(over.toPrecision(digits)), Number(under.toPrecision(digits))]
    if (a > b) return [String(a), String(b)]
  }
  return [String(over), String(under)]
}

const places: Record<CheckResult['what'], string> = {
  'left plane': 'at its left plane',
  'right plane': 'at its right plane',
  offset: 'of offset',
  angle: 'of angle',
  gap: 'of axial gap',
  stretch: 'of stretch of the coupling',
  float: 'of float of the rotor',
}
