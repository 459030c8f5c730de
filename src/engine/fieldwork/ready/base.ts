import { fineText, shareText, slopeText } from '../../../language/amounts'
import { listed } from '../../../language/names'
import { towardSide } from '../../../language/sides'
import { baseShape } from '../../../mechanics/baseShape'
import { tol } from '../../../mechanics/tolerances'
import type { Body, Train } from '../../../mechanics/train'
import type { Micrometres } from '../../../mechanics/units'
import { footGap } from './footGap'
import { footPlane } from './plane'

/** A gap and what the base makes of it that are nearer than this say the same (um): common practice, no source. */
const worthSaying: Micrometres = 20

/** What a base does to one foot of the machine on it. */
export interface BaseFoot {
  readonly foot: string
  /** Gap that plates and packs alone would leave under a flat foot with its bolt loose, all others tight. */
  readonly base: Micrometres
  /** Gap as read; undefined where it was not. */
  readonly read?: Micrometres
}

/** How far the gaps under a body are those of its base; empty where its plates were not measured, or not all. */
export function baseFeet(body: Body): BaseFoot[] {
  const shape = baseShape(body)
  if (!shape || 'lacks' in shape) return []
  const { standOff } = footPlane(body.feet)
  return body.feet.map((foot, i): BaseFoot => {
    const row = standOff[i]
    const off = row?.reduce((sum, c, j) => sum + c * (shape.tops[j] ?? 0), 0) ?? 0
    const read = footGap(foot)?.gap
    return { foot: foot.id, base: Math.max(0, off), ...(read !== undefined && { read }) }
  })
}

/** The bases of a train in sentences, but for those of soft bodies, which are told with their soft feet. */
export const basesSaid = (
  train: Train,
  softFoot: readonly { readonly body: string }[] = [],
): string[] =>
  train.bodies
    .filter(({ id }) => !softFoot.some(({ body }) => body === id))
    .flatMap((body) => baseWords(train, body))

/** The base under a body in sentences: its level, its twist, and how much of a soft foot it is. */
export function baseWords(train: Train, body: Body): string[] {
  const shape = baseShape(body)
  if (!shape) return []
  if ('lacks' in shape)
    return [
      `${body.name}: the base is not told, since soleplate or pack are not entered at foot ${listed([...shape.lacks])}.`,
    ]
  const { along, across, withPacks } = shape
  const slopes = [
    ...(along === undefined
      ? []
      : [
          `${along < 0 ? 'falls' : 'rises'} ${slopeText(Math.abs(along), train.units)} to the right`,
        ]),
    ...(across === undefined
      ? []
      : [`rises ${slopeText(Math.abs(across), train.units)} ${towardSide(train, across)}`]),
  ]
  const level = slopes.length === 0 ? [] : [`${body.name}: its base ${slopes.join(' and ')}.`]
  return [...level, ...twistWords(train, body, withPacks)]
}

function twistWords(train: Train, body: Body, withPacks: boolean): string[] {
  const text = (value: number) => fineText(value, train.units)
  const feet = baseFeet(body)
  const what = withPacks ? 'plates and packs' : 'plates (packs are not entered and taken alike)'
  const off = feet.filter(({ base }) => base > tol.flatFoot)
  const alone =
    off.length === 0
      ? `${body.name}: ${what} lie on one plane.`
      : `${body.name}: ${what} are twisted and alone leave ${listed(off.map(({ foot, base }) => `${text(base)} at foot ${foot}`))}.`
  const read = feet.flatMap(({ foot, base, read: gap }) =>
    gap === undefined ? [] : [{ foot, base, gap }],
  )
  const all = read.reduce((sum, { gap }) => sum + gap, 0)
  if (all <= tol.flatFoot) return [alone]
  const own = read.reduce((sum, { base, gap }) => sum + Math.min(base, gap), 0)
  const apart = read
    .filter(({ base, gap }) => Math.abs(gap - base) > worthSaying)
    .map(({ foot, base, gap }) =>
      gap > base
        ? `${text(gap - base)} more at foot ${foot} than the base makes: its foot, its frame, or a pack that springs`
        : `${text(base - gap)} less at foot ${foot} than the base would make: its feet make up for it, or a height is wrong`,
    )
  return [
    alone,
    `${body.name}: the base makes ${shareText(own / all)} of the gaps that were read${apart.length === 0 ? '' : `; ${apart.join('; ')}`}.`,
  ]
}
