import type { Train } from '../mechanics/train'
import type { FootFacts } from './footFacts'
import { circle, lineMark, rect, type Mark } from './drawings/marks'
import { upThePage } from '../language/sides'

/** Scales that all feet of a sheet share, so that packs and holes can be compared by eye. */
export interface FootScales {
  /** px per um of a shim pack. */
  readonly pack: number
  /** px per um of a hole. */
  readonly hole: number
}

export const figureHeight = 58
const columnHeight = 46
const columnWidth = 18
const base = figureHeight - 5

/** Room for a hole's drawing, half its width, on a card this wide. */
const holeRoom = (width: number): number => Math.min(27, (width - 38) / 2)

/**
 * Finds the scales that let every pack and every hole fit, cards being as wide as `width` says (px).
 * @param most scales that are not to be passed: those of before, while something is dragged
 */
export function footScales(
  facts: readonly FootFacts[],
  width: (foot: FootFacts) => number,
  most: FootScales = { pack: Infinity, hole: 1 },
): FootScales {
  const packs = facts.flatMap(({ pack }) =>
    pack ? [Math.max(pack.now, pack.after, pack.min, pack.max ?? 0)] : [],
  )
  const holes = facts.flatMap((foot) => {
    const { hole } = foot
    if (!hole) return []
    const reach = Math.max(
      Math.hypot(hole.now.x, hole.now.y),
      Math.hypot(hole.after.x, hole.after.y),
    )
    return [holeRoom(width(foot)) / Math.max(1, hole.clearance / 2 + reach)]
  })
  return {
    pack: Math.min(most.pack, columnHeight / Math.max(1, ...packs)),
    hole: Math.min(most.hole, ...holes),
  }
}

/**
 * A foot's shim column beside its hole, the hole as seen from above.
 * @param width of the card (px)
 */
export function footFigure(
  train: Train,
  facts: FootFacts,
  width: number,
  scales: FootScales,
): Mark[] {
  return [
    ...columnMarks(facts, scales.pack),
    ...holeMarks(train, facts, width - holeRoom(width) - 4, scales.hole),
  ]
}

/** Base, minimum, now (dashed), after (solid), maximum; what goes in or comes out is filled with ink. */
function columnMarks({ pack, bound }: FootFacts, perUm: number): Mark[] {
  const [l, r] = [3, 3 + columnWidth]
  const ground = lineMark(l - 3, base, r + 3, base, 'after')
  if (!pack) return [ground, rect(l, base - 20, columnWidth, 20, 'before')]
  const y = (value: number): number => base - value * perUm
  const [low, high] = [Math.min(pack.now, pack.after), Math.max(pack.now, pack.after)]
  const change = y(low) - y(high)
  const binds = bound.includes('base-bound') || bound.includes('top-bound')
  return [
    rect(l, y(pack.after), columnWidth, pack.after * perUm, binds ? 'bound-hatch' : 'shade'),
    ...(pack.after === pack.now
      ? []
      : [
          pack.after > pack.now
            ? rect(l, y(high), columnWidth, Math.max(1.6, change), 'solid')
            : rect(l, y(high), columnWidth, change, 'before'),
          lineMark(l - 2, y(pack.now), r + 2, y(pack.now), 'before'),
        ]),
    rect(l, y(pack.after), columnWidth, pack.after * perUm, 'outline'),
    ...(pack.min > 0
      ? [
          lineMark(
            l - 3,
            y(pack.min),
            r + 3,
            y(pack.min),
            bound.includes('base-bound') ? 'bound' : 'reserve',
          ),
        ]
      : []),
    ...(pack.max === undefined
      ? []
      : [
          lineMark(
            l - 3,
            y(pack.max),
            r + 3,
            y(pack.max),
            bound.includes('top-bound') ? 'bound' : 'reserve',
          ),
        ]),
    ground,
  ]
}

/** The bolt stands and is one dot; the hole is dashed as it is, solid as it will be. */
function holeMarks(train: Train, facts: FootFacts, x: number, perUm: number): Mark[] {
  const { hole, bound } = facts
  const y = figureHeight / 2
  if (!hole) return [circle(x, y, 12, 'before'), circle(x, y, 2, 'solid')]
  const up = upThePage(train)
  const at = (
    { x: dx, y: dy }: { x: number; y: number },
    look: 'before' | 'after' | 'bound' | 'bound-hatch',
  ) => circle(x + dx * perUm, y - up * dy * perUm, (hole.clearance / 2) * perUm, look)
  const moves = Math.hypot(hole.after.x - hole.now.x, hole.after.y - hole.now.y) * perUm > 0.2
  const binds = bound.includes('bolt-bound')
  const reserve = train.plan.reserve * perUm
  return [
    ...(moves ? [at(hole.now, 'before')] : []),
    ...(binds
      ? [at(hole.after, 'bound-hatch'), at(hole.after, 'bound')]
      : [at(hole.after, 'after')]),
    ...(reserve > 2 ? [circle(x, y, reserve, 'reserve')] : []),
    circle(x, y, 2.2, 'solid'),
  ]
}
