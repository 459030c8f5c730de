import { toldNought, toldText, underDigits } from '../../../language/amounts'
import { inSentence, listed } from '../../../language/names'
import { sideNoun, towardSide } from '../../../language/sides'
import type { Body, Foot, Train } from '../../../mechanics/train'
import { carriers, displaced, noMotion, type Motion, type Point } from '../../../mechanics/motion'
import type { Micrometres } from '../../../mechanics/units'
import { workMotions } from '../../../mechanics/uncertainty/workErrors'
import type { DialAnswer } from './answer'
import { dialBand } from './dials'
import type { ActionKind } from './moves'

/** How far a point of a machine goes with the skid under it (um): + is to the right, toward 3 o'clock, up. */
interface Carried {
  readonly axial: Micrometres
  readonly side: Micrometres
  readonly rise: Micrometres
}

/** What the skid's own motion does to a point of a machine on it, given from the plane of the machine's feet. */
function carriedPoint(
  train: Train,
  motions: readonly Motion[],
  machine: number,
  point: Point,
): Carried {
  const carrier = carriers(train, machine, point)[1]
  const by = (way: 'dx' | 'dy' | 'dz') =>
    carrier ? displaced(carrier.carry[way], motions[carrier.body] ?? noMotion) : 0
  return { axial: by('dx'), side: by('dy'), rise: by('dz') }
}

/**
 * How far a foot goes with the skid under its machine, although nothing is done at it: "goes with the bedplate,
 * 43.2 mil down and 76.1 mil toward the hill"; undefined where the skid carries it nowhere.
 * @param motions own motion of every body from where it was found (um, mrad)
 */
export function footCarried(
  train: Train,
  motions: readonly Motion[],
  b: number,
  { x, y }: Pick<Foot, 'x' | 'y'>,
): string | undefined {
  const skid = train.bodies[train.bodies[b]?.skid ?? -1]
  const words = skid && carriedAmounts(train, carriedPoint(train, motions, b, { x, y, z: 0 }))
  return skid && words ? `goes with ${inSentence(skid.name)}, ${words}` : undefined
}

/**
 * The same of a whole machine, end by end where the ends differ: "goes with the bedplate, the left end 43.2 mil
 * down; the right end 30.5 mil down". A machine without feet is told at the flex planes of its couplings.
 */
export function bodyCarried(
  train: Train,
  motions: readonly Motion[],
  b: number,
): string | undefined {
  const body = train.bodies[b]
  const skid = train.bodies[body?.skid ?? -1]
  if (!body || !skid) return undefined
  const none = `by ${underDigits(train.units)}`
  const [left, right] = endsOf(train, body, b).map(
    (x) => carriedAmounts(train, carriedPoint(train, motions, b, { x, y: 0, z: 0 })) ?? none,
  )
  if (left === undefined || right === undefined) return undefined
  if (left === right && left === none) return undefined
  const words = left === right ? left : `the left end ${left}; the right end ${right}`
  return `goes with ${inSentence(skid.name)}, ${words}`
}

function endsOf(train: Train, { rows, x0 }: Body, b: number): number[] {
  const planes = train.couplings.flatMap(({ left, right, p, q }) =>
    left === b ? [p] : right === b ? [q] : [],
  )
  const xs = rows.length > 0 ? rows.map(({ x }) => x) : planes.length > 0 ? planes : [x0]
  return [Math.min(...xs), Math.max(...xs)]
}

/** "43.2 mil down and 76.1 mil toward the hill"; undefined where nothing shows. */
function carriedAmounts(train: Train, { axial, side, rise }: Carried): string | undefined {
  const one = (value: Micrometres, way: string) =>
    toldNought(value, train.units) ? [] : [`${toldText(Math.abs(value), train.units)} ${way}`]
  const parts = [
    ...one(rise, rise > 0 ? 'up' : 'down'),
    ...one(side, towardSide(train, side)),
    ...one(axial, `to the ${axial > 0 ? 'right' : 'left'}`),
  ]
  return parts.length === 0 ? undefined : listed(parts)
}

/**
 * Dials that show how far what rides on a skid goes with it, at both ends of every machine on it. They stand on the
 * ground: one on the skid itself would stay at nought, and show that the machine did not shift on it.
 */
export function riderDials(
  train: Train,
  skid: number,
  piece: Motion,
  kind: ActionKind,
): DialAnswer[] {
  const carrier = train.bodies[skid]
  if (carrier?.kind !== 'skid') return []
  const motions = train.bodies.map((_, b) => (b === skid ? piece : noMotion))
  const errors = workMotions(train, (b) => ({
    shims: b === skid && kind === 'vertical',
    slides: b === skid && kind !== 'vertical',
  }))
  const side = sideNoun(train, 1)
  return train.machines.flatMap((machine, m): DialAnswer[] => {
    if (machine.skid !== skid) return []
    const ends = [...new Set([machine.rows[0], machine.rows.at(-1)])]
    return ends.flatMap((row): DialAnswer[] => {
      const feet = (row?.feet ?? []).flatMap((f) => machine.feet[f] ?? [])
      const foot = feet.reduce<Foot | undefined>((a, b) => (a && a.y >= b.y ? a : b), undefined)
      if (!foot) return []
      const moved = carriedPoint(train, motions, m, { x: foot.x, y: foot.y, z: 0 })
      const at = `foot ${foot.id} of ${inSentence(machine.name)}, which goes with ${inSentence(carrier.name)}`
      const ground = 'on the ground'
      const seen = {
        vertical: { where: `${ground}, stem down on ${at}: + is up`, shows: moved.rise },
        lateral: {
          where: `${ground}, on the ${side} side, stem against ${at}: + is ${towardSide(train, 1)}`,
          shows: moved.side,
        },
        axial: {
          where: `${ground}, to the right of ${at}, stem against it: + is to the right`,
          shows: moved.axial,
        },
      }[kind]
      const unsure = Math.hypot(
        ...errors.map((motions) => {
          const by = carriedPoint(train, motions, m, { x: foot.x, y: foot.y, z: 0 })
          return { vertical: by.rise, lateral: by.side, axial: by.axial }[kind]
        }),
      )
      return [{ ...seen, way: kind, good: dialBand(seen.shows, unsure) }]
    })
  })
}
