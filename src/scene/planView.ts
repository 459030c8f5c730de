import type { Train } from '../mechanics/train'
import { breakMarks } from './breakMarks'
import { casingAbove } from './drawings/above'
import { circle, lineMark, rect, type Mark } from './drawings/marks'
import { upThePage } from '../language/sides'
import { machineStandings, type MachineStanding } from './standing'
import type { XScale } from './xScale'

/** The train seen from above, to the scale of the sheet (px); feet in the order of `footFacts`. */
export interface PlanView {
  readonly height: number
  /** What stands farther off than it is drawn, in words; "" where nothing does. */
  readonly apart: string
  readonly marks: readonly Mark[]
  readonly feet: readonly { readonly x: number; readonly y: number; readonly far: boolean }[]
}

const pad = 14
/** Half the width of a casing as a part of the height of its axis, as in the elevation. */
const casingPart = 0.5

export function planView(train: Train, scale: XScale, apart: string): PlanView {
  const all = machineStandings(train)
  const up = upThePage(train)
  const across = all.flatMap(({ body, origin }) => [
    ...body.feet.map((foot) => origin + foot.y),
    ...(body.kind === 'machine' ? [origin + body.axis.left.y, origin + body.axis.right.y] : []),
  ])
  const [low, high] = [Math.min(...across), Math.max(...across)]
  const height = Math.max(40, (high - low) * scale.perMm) + 2 * pad
  const y = (value: number): number => height / 2 - up * (value - (low + high) / 2) * scale.perMm
  const machines = all.slice(0, train.machines.length)
  return {
    height,
    apart,
    marks: [
      ...all.slice(train.machines.length).flatMap((skid) => frame(skid, scale, y, 9, 'shade')),
      ...machines.flatMap((m) => [
        ...frame(m, scale, y, 6, 'body'),
        ...casing(m, scale, y, height),
      ]),
      ...train.couplings.flatMap(({ p, q, left }) => {
        const m = machines[left]
        if (!m) return []
        const axis = y(m.origin + m.body.axis.right.y)
        return [p, q].map((x) => rect(scale.at(x) - 1.5, axis - 7, 3, 14, 'body'))
      }),
      ...all.flatMap(({ body, origin }) =>
        body.feet.flatMap((foot) => [
          rect(scale.at(foot.x) - 5, y(origin + foot.y) - 5, 10, 10, 'body'),
          circle(scale.at(foot.x), y(origin + foot.y), 1.8, 'solid'),
        ]),
      ),
      ...breakMarks(scale, height),
    ],
    feet: all.flatMap(({ body, origin }) => {
      const ys = body.feet.map((foot) => y(origin + foot.y))
      const middle = (Math.min(...ys) + Math.max(...ys)) / 2
      return body.feet.map((foot, f) => ({
        x: scale.at(foot.x),
        y: ys[f] ?? 0,
        far: (ys[f] ?? 0) < middle - 0.5,
      }))
    }),
  }
}

/** The outline that the feet of a body span. */
function frame(
  { body, origin }: MachineStanding,
  scale: XScale,
  y: (value: number) => number,
  margin: number,
  look: 'body' | 'shade',
): Mark[] {
  if (body.feet.length === 0) return []
  const xs = body.feet.map((foot) => scale.at(foot.x))
  const ys = body.feet.map((foot) => y(origin + foot.y))
  const [l, t] = [Math.min(...xs) - margin - 5, Math.min(...ys) - margin]
  return [rect(l, t, Math.max(...xs) + margin + 5 - l, Math.max(...ys) + margin - t, look, 2)]
}

/** Casing and axes from above; a gearbox shows wheel and pinion on axes that are truly apart. */
function casing(
  m: MachineStanding,
  scale: XScale,
  y: (value: number) => number,
  height: number,
): Mark[] {
  const { body, origin } = m
  const [l, r] = [scale.at(m.from), scale.at(m.to)]
  const [a, b] = [scale.at(m.shaft[0]), scale.at(m.shaft[1])]
  const [left, right] = [y(origin + body.axis.left.y), y(origin + body.axis.right.y)]
  const ys = body.feet.map((foot) => y(origin + foot.y))
  const [far, near] = [Math.min(...ys, left, right) + 7, Math.max(...ys, left, right) - 7]
  const half = Math.max(5, casingPart * body.axis.left.z * scale.perMm)
  const apart = Math.abs(right - left)
  if (body.role !== 'gearbox' && apart < 6) {
    // an axis far from the middle of the feet has a casing only as wide as the drawing leaves room for
    const room = Math.max(6, Math.min(half, left - 3, height - 3 - left))
    return [
      ...casingAbove(body.role, { l, r, axis: left, half: room }),
      lineMark(a, left, b, left, 'centre'),
    ]
  }
  const within = (top: number, bottom: number): Mark =>
    rect(
      l,
      Math.max(top, far),
      r - l,
      Math.max(6, Math.min(bottom, near) - Math.max(top, far)),
      'shade',
      3,
    )
  const [wheel, pinion] = apart > 6 ? [apart * 0.62, apart * 0.38] : [half * 0.7, half * 0.5]
  const [from, to] = [l + (r - l) * 0.3, r - (r - l) * 0.3]
  const teeth = (axis: number, radius: number, lean: number): Mark[] =>
    [0.1, 0.26, 0.42, 0.58, 0.74, 0.9].map((part) => {
      const x = from + part * (to - from)
      return lineMark(x - lean, axis - radius, x + lean, axis + radius, 'fine')
    })
  return [
    within(Math.min(left - wheel, right - pinion) - 5, Math.max(left + wheel, right + pinion) + 5),
    rect(from, left - wheel, to - from, 2 * wheel, 'body'),
    ...teeth(left, wheel, 3),
    rect(from, right - pinion, to - from, 2 * pinion, 'body'),
    ...teeth(right, pinion, -3),
    lineMark(a, left, r - (r - l) * 0.15, left, 'centre'),
    lineMark(l + (r - l) * 0.15, right, b, right, 'centre'),
  ]
}
