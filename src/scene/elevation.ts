import { toLength } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { breakMarks } from './breakMarks'
import { couplingMarks } from './drawings/coupling'
import { machineMarks } from './drawings/machine'
import { skidMarks } from './skidMarks'
import { lineMark, poly, rect, type Mark } from './drawings/marks'
import { machineStandings, type MachineStanding } from './standing'
import type { XScale } from './xScale'

/** The train seen from its near side, to scale (px). */
export interface Elevation {
  readonly height: number
  readonly marks: readonly Mark[]
  readonly stakes: readonly Stakes[]
  /** "to scale", or what is not. */
  readonly scale: string
}

/** Where a body is held: a stake driven at each of its feet (px). */
export interface Stakes {
  readonly body: number
  /** The stretch along the page that its feet take. */
  readonly left: number
  readonly right: number
  /** Plane of the feet on the page. */
  readonly y: number
  readonly marks: readonly Mark[]
}

/** Axis heights below this are drawn larger than scale, or nothing of a machine could be seen (px). */
const leastHeight = 44
/** Heights are drawn larger only by so much or more: nobody should have to read "1.0 times". */
const worthSaying = 1.3
/** Half the height of a casing, as a part of the height of the axis. */
const casingPart = 0.6
/** Highest part of any drawing above its axis, in half casing heights. */
const headroom = 1.8
const below = 22

/** @param apart what stands farther off than it is drawn, in words; "" where nothing does */
export function elevation(train: Train, scale: XScale, apart: string): Elevation {
  const all = machineStandings(train)
  const machines = all.slice(0, train.machines.length)
  const skids = all.slice(train.machines.length)
  const tallest = Math.max(1, ...machines.map((m) => m.left - m.feet))
  const wanted = leastHeight / tallest
  const perMm = wanted > scale.perMm * worthSaying ? wanted : scale.perMm
  const halfOf = (m: MachineStanding): number =>
    Math.max(
      8,
      Math.min(casingPart * (m.left - m.feet) * perMm, 0.46 * (m.to - m.from) * scale.perMm),
    )
  const highest = Math.max(
    ...machines.map((m) => Math.max(m.left, m.right) * perMm + headroom * halfOf(m)),
  )
  const lowest = Math.min(...all.map(({ feet }) => feet)) * perMm
  const y = (level: number): number => highest - level * perMm + 4
  const floor = highest - lowest + 4
  const height = floor + below
  const marks = [
    lineMark(0, floor, scale.width, floor, 'edge'),
    rect(0, floor + 1, scale.width, 7, 'ground'),
    ...skids.flatMap((skid) => skidMarks(skid, machines, train, scale, y, floor)),
    ...machines.flatMap((m) => block(m, scale, y, floor)),
    ...machines.flatMap((m) => shaft(m, scale, y, halfOf(m))),
    ...train.couplings.flatMap(({ p, q, left }) => {
      const m = machines[left]
      return m ? couplingMarks(scale.at(p), scale.at(q), y(m.right), halfOf(m)) : []
    }),
    ...machines.flatMap((m, i) =>
      machineMarks(m.body.role, {
        l: scale.at(m.from),
        r: scale.at(m.to),
        axis: y(m.left),
        axisRight: y(m.right),
        foot: y(m.feet),
        half: halfOf(m),
        feet: [...new Set(m.body.feet.map((foot) => foot.x))].map((x) => scale.at(x)),
        open: { left: i === 0, right: i === machines.length - 1 },
      }),
    ),
    ...machines.flatMap((m) => axisMarks(m, scale, y)),
    ...breakMarks(scale, height),
  ]
  return {
    height,
    marks,
    stakes: all.flatMap((m, body) => stakesOf(m, body, scale, y)),
    scale: scaleWords(train, scale, perMm, apart),
  }
}

function scaleWords(train: Train, scale: XScale, perMm: number, apart: string): string {
  const out = scale.breaks.map(({ from, to }) => roughly(to - from, train))
  return [
    perMm > scale.perMm
      ? `lengths to scale, heights ${(perMm / scale.perMm).toFixed(1)} times larger`
      : 'to scale',
    ...(apart === '' ? [] : [apart]),
    ...(out.length > 0 ? [`broken where ${out.join(' and ')} are left out`] : []),
  ].join('; ')
}

/** A length left out is said in three digits: nobody measures by it. */
const roughly = (length: number, train: Train): string =>
  `about ${Number(toLength(length, train.units).toPrecision(3))} ${train.units.length}`

/** What lifts a machine off the floor where no skid does: a block of foundation. */
function block(
  m: MachineStanding,
  scale: XScale,
  y: (level: number) => number,
  floor: number,
): Mark[] {
  const top = y(m.feet)
  if (m.body.skid !== undefined || floor - top < 2) return []
  const [l, r] = [scale.at(m.from), scale.at(m.to)]
  return [rect(l, top, r - l, floor - top, 'ground'), lineMark(l, top, r, top, 'edge')]
}

function shaft(
  m: MachineStanding,
  scale: XScale,
  y: (level: number) => number,
  half: number,
): Mark[] {
  const [a, b] = m.shaft
  const [from, to, middle] = [scale.at(a), scale.at(b), scale.at((m.from + m.to) / 2)]
  const r = Math.max(2.5, half * 0.1)
  return [
    rect(from, y(m.left) - r, middle - from, 2 * r, 'body'),
    rect(middle, y(m.right) - r, to - middle, 2 * r, 'body'),
  ]
}

function axisMarks(m: MachineStanding, scale: XScale, y: (level: number) => number): Mark[] {
  const [a, b] = m.shaft
  const [from, to] = [scale.at(a), scale.at(b)]
  if (!m.body.twoAxes) return [lineMark(from, y(m.left), to, y(m.left), 'centre')]
  const [l, r] = [scale.at(m.from), scale.at(m.to)]
  return [
    lineMark(from, y(m.left), r - (r - l) * 0.25, y(m.left), 'centre'),
    lineMark(l + (r - l) * 0.25, y(m.right), to, y(m.right), 'centre'),
  ]
}

function stakesOf(
  m: MachineStanding,
  body: number,
  scale: XScale,
  y: (level: number) => number,
): Stakes[] {
  const xs = [...new Set(m.body.feet.map(({ x }) => x))].map((x) => scale.at(x))
  const feet = xs.length > 0 ? xs : [scale.at((m.from + m.to) / 2)]
  const top = y(m.feet)
  return [
    {
      body,
      left: Math.min(...feet),
      right: Math.max(...feet),
      y: top,
      marks: feet.map((x) =>
        poly(
          [
            [x - 6, top + 1],
            [x + 6, top + 1],
            [x, top + 19],
          ],
          'solid',
        ),
      ),
    },
  ]
}
