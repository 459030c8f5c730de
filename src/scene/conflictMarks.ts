import type { ConflictMember } from '../engine/infeasible/conflict/answer'
import type { Train } from '../mechanics/train'
import type { Elevation } from './elevation'
import type { XScale } from './xScale'

/** Parts of the sheet that a conflict is about. */
export interface ConflictPlaces {
  /** Keys of feet: "body foot", as the cards have them. */
  readonly feet: ReadonlySet<string>
  /** Indices of bodies that are members as a whole: held, tilted, on a restraint. */
  readonly bodies: ReadonlySet<number>
  /** Indices of couplings, with the indices of the states in which each is a member. */
  readonly couplings: ReadonlyMap<number, ReadonlySet<number>>
}

/** Where the members of a conflict stand on the sheet; members of another train are left out. */
export function conflictPlaces(train: Train, members: readonly ConflictMember[]): ConflictPlaces {
  const feet = new Set<string>()
  const bodies = new Set<number>()
  const couplings = new Map<number, Set<number>>()
  for (const { limit } of members) {
    if (limit.kind === 'coupling') {
      const c = train.couplings.findIndex(({ id }) => id === limit.coupling)
      if (c < 0) continue
      const states = couplings.get(c) ?? new Set<number>()
      const s = train.states.findIndex(({ id }) => id === limit.state)
      if (s >= 0) states.add(s)
      couplings.set(c, states)
      continue
    }
    const b = train.bodies.findIndex(({ id }) => id === limit.body)
    if (b < 0) continue
    if (limit.kind === 'foot') feet.add(`${limit.body} ${limit.foot}`)
    else bodies.add(b)
  }
  return { feet, bodies, couplings }
}

/** A double stroke on the drawing of the train (px). */
export interface ConflictMark {
  readonly d: string
  /** Where the word stands, its middle. */
  readonly word?: { readonly x: number; readonly y: number }
}

/** Distance between the two strokes (px). */
const apart = 3.5

/** Double strokes: a frame around a coupling, lines under feet and under bodies. */
export function conflictMarks(
  train: Train,
  { feet, bodies, couplings }: ConflictPlaces,
  scale: XScale,
  { height, stakes }: Elevation,
): ConflictMark[] {
  const frames = [...couplings.keys()].flatMap((c): ConflictMark[] => {
    const coupling = train.couplings[c]
    if (!coupling) return []
    const [l, r] = [scale.at(coupling.p) - 6, scale.at(coupling.q) + 6]
    const [top, bottom] = [20, height - 26]
    const frame = (by: number) =>
      `M${px(l - by)} ${px(top - by)}H${px(r + by)}V${px(bottom + by)}H${px(l - by)}Z`
    return [{ d: frame(0) + frame(apart), word: { x: (l + r) / 2, y: 9 } }]
  })
  const lines = stakes.flatMap(({ body, left, right, y }): ConflictMark[] => {
    const whole = bodies.has(body)
    const owner = train.bodies[body]
    const xs = (owner?.feet ?? [])
      .filter(({ id }) => feet.has(`${owner?.id ?? ''} ${id}`))
      .map(({ x }) => scale.at(x))
    if (!whole && xs.length === 0) return []
    const spans = whole
      ? [[left - 10, right + 10] as const]
      : xs.map((x) => [x - 11, x + 11] as const)
    const d = spans
      .map(
        ([a, b]) => `M${px(a)} ${px(y + 16.5)}H${px(b)}M${px(a)} ${px(y + 16.5 + apart)}H${px(b)}`,
      )
      .join('')
    return [{ d, ...(whole && { word: { x: (left + right) / 2, y: y + 12 } }) }]
  })
  return [...frames, ...lines]
}

const px = (value: number): string => String(Math.round(value * 10) / 10)
