import { growthOf, lineValueAt } from '../mechanics/growth'
import { noMotion } from '../mechanics/motion'
import { asFound } from '../mechanics/readings/asFound'
import { hasMoves } from '../engine/plan/moves'
import { answerMotions, movedAxis } from '../scene/axisLines'
import { shareText } from '../language/amounts'
import type { Aim, Coupling, State } from '../mechanics/train'
import { inSentence } from '../language/names'
import type { Drawn } from './job'
import type { Block } from './page'
import type { Pencil } from './pencil'
import { sourceLines } from './pencilSources'

/** A place where misalignment is added up: a flex plane, or the middle and a slope for a short coupling. */
interface Place {
  readonly head: string
  readonly of: (plane: { readonly at: (x: number) => number; readonly slope: number }) => number
}

/** One line of the sum, at every place, up and to the side. */
interface Item {
  readonly words: string
  readonly values: readonly number[]
}

/** The plan checked for the tightest state of the coupling: as found, moves, growth, sum, angle, share. */
export function pencilCheck(job: Drawn, coupling: Coupling, pencil: Pencil): Block[] {
  const sum = checkSum(job, coupling)
  if (!sum) return []
  const { state, items, total, places, verdict } = sum
  const digits = (values: readonly number[]) =>
    values.map((value, i) =>
      places[Math.floor(i / 2)]?.head === 'slope' ? pencil.slope(value) : pencil.fine(value),
    )
  const unit = `in ${pencil.unit}${coupling.q > coupling.p ? '' : ` and ${pencil.slopeUnit}`}`
  return [
    {
      kind: 'heading',
      text: `The plan, checked in "${state.name}"`,
      aside: "the right axis against the left one, + up and toward 3 o'clock",
    },
    {
      kind: 'table',
      columns: [
        { head: unit, width: 3.6 },
        ...places.flatMap(({ head }) =>
          ['up', 'side'].map((way) => ({
            head: `${head}: ${way}`,
            width: 1.6,
            align: 'right' as const,
          })),
        ),
      ],
      rows: [
        ...items.map(({ words, values }) => [words, ...digits(values)]),
        ['sum', ...digits(total)],
      ],
    },
    {
      kind: 'list',
      look: 'dash',
      items: [...sourceLines(job, coupling, pencil, state), ...verdict(pencil)],
    },
  ]
}

/** The sum itself, in um and mrad, for whoever wants to compare it with the plan. */
export function checkSum(job: Drawn, coupling: Coupling) {
  const { train, answer } = job
  if (!hasMoves(answer)) return undefined
  const after = answer.couplings.filter((row) => row.coupling === coupling.id)
  const worst = after.reduce<(typeof after)[number] | undefined>(
    (a, b) => (a && a.share >= b.share ? a : b),
    undefined,
  )
  const state = train.states.find(({ id }) => id === worst?.state)
  if (!worst || !state) return undefined
  const motions = answerMotions(train, answer) ?? train.bodies.map(() => noMotion)
  const { line } = asFound(coupling)
  const { mid, p, q } = coupling
  const [left, right] = [train.machines[coupling.left], train.machines[coupling.right]]
  if (!left || !right) return undefined
  const spacer = q > p
  const places: Place[] = spacer
    ? [
        { head: 'left plane', of: ({ at }) => at(p) },
        { head: 'right plane', of: ({ at }) => at(q) },
      ]
    : [
        { head: 'middle', of: ({ at }) => at(mid) },
        { head: 'slope', of: ({ slope }) => slope },
      ]
  type Planes = Readonly<Record<'up' | 'side', { at: (x: number) => number; slope: number }>>
  const item = (words: string, planes: Planes, sign: 1 | -1 = 1): Item => ({
    words,
    values: places.flatMap(({ of }) => [sign * of(planes.up), sign * of(planes.side)]),
  })
  const moved = (machine: number, end: 'left' | 'right'): Planes => {
    const { rise, side } = movedAxis(train, machine, end, motions)
    return {
      up: { at: (x) => lineValueAt(rise, x), slope: rise.slope },
      side: { at: (x) => lineValueAt(side, x), slope: side.slope },
    }
  }
  const grown = (machine: typeof left, end: 'left' | 'right'): Planes => {
    const { rise, side } = growthOf(machine, state.id, end)
    return {
      up: { at: (x) => lineValueAt(rise, x), slope: rise.slope },
      side: { at: (x) => lineValueAt(side, x), slope: side.slope },
    }
  }
  const straight = (offset: number, slope: number) => ({
    at: (x: number) => offset + slope * (x - mid),
    slope,
  })
  const { setting } = coupling
  const aim = coupling.aim.get(state.id)
  const wanted = (words: string, { y, z, sy, sz }: Aim): Item =>
    item(words, { up: straight(z, sz), side: straight(y, sy) }, -1)
  const items = [
    item('as found', { up: straight(line.z, line.sz), side: straight(line.y, line.sy) }),
    item(`${inSentence(right.name)} is moved`, moved(coupling.right, 'left')),
    item(`${inSentence(left.name)} is moved, taken off`, moved(coupling.left, 'right'), -1),
    ...(setting?.used === true
      ? [wanted("the maker's cold setting, growth in it, taken off", setting)]
      : [
          item(`${inSentence(right.name)} grows`, grown(right, 'left')),
          item(`${inSentence(left.name)} grows, taken off`, grown(left, 'right'), -1),
          ...(aim ? [wanted('wanted there, taken off', aim)] : []),
        ]),
  ]
  const total = places.flatMap((_, k) => [
    items.reduce((sum, { values }) => sum + (values[2 * k] ?? 0), 0),
    items.reduce((sum, { values }) => sum + (values[2 * k + 1] ?? 0), 0),
  ])
  return {
    state,
    items,
    total,
    places,
    share: worst.share,
    verdict: verdictOf(job, coupling, state, total),
  }
}

/** From the sum to angles, sizes and shares; the plane whose share is the larger last. */
function verdictOf(
  { answer }: Drawn,
  coupling: Coupling,
  state: State,
  total: readonly number[],
): (pencil: Pencil) => string[] {
  const { tolerance, p, q } = coupling
  const round = tolerance.shape === 'round'
  const [a = 0, b = 0, c = 0, d = 0] = total
  const size = (up: number, side: number) =>
    round ? Math.hypot(up, side) : Math.max(Math.abs(up), Math.abs(side))
  const how = (digits: (v: number) => string, up: number, side: number) =>
    round
      ? `square root of ${digits(Math.abs(up))}\u00b2 + ${digits(Math.abs(side))}\u00b2 = ${digits(size(up, side))}`
      : `the larger of ${digits(Math.abs(up))} and ${digits(Math.abs(side))}`
  const factor = state.factor === 1 ? '' : ` times ${state.factor} in this state`
  return (pencil) => {
    const angle = (v: number) => v.toFixed(3)
    const fine = (v: number) => pencil.size(v).replace(` ${pencil.unit}`, '')
    const limitLine = (
      what: string,
      text: string,
      value: number,
      limit: number,
      limitText: string,
    ) =>
      `${what}: ${text}; the limit is ${limitText}${factor}: ${shareText(value / (limit * state.factor))} of it is used, ${shareText(answer.share)} may be`
    const span = q - p
    const lines: string[] = []
    if (tolerance.flex !== undefined && span > 0) {
      const limit = tolerance.flex
      const unit = pencil.slopeUnit
      lines.push(
        `Angles: what stands at one plane, over the span of ${pencil.length(span)} ${pencil.lengthUnit}, is the angle at the other.`,
        limitLine(
          'Angle at the left plane, from the right one',
          `${how(angle, c / span, d / span)} ${unit}`,
          size(c, d) / span,
          limit,
          `${limit.toFixed(2)} ${unit}`,
        ),
        limitLine(
          'Angle at the right plane, from the left one',
          `${how(angle, a / span, b / span)} ${unit}`,
          size(a, b) / span,
          limit,
          `${limit.toFixed(2)} ${unit}`,
        ),
      )
    }
    const middle = span > 0 ? [(a + c) / 2, (b + d) / 2] : [a, b]
    const slope = span > 0 ? [(c - a) / span, (d - b) / span] : [c, d]
    if (tolerance.offset !== undefined)
      lines.push(
        limitLine(
          'Offset in the middle',
          `${how(fine, middle[0] ?? 0, middle[1] ?? 0)} ${pencil.unit}`,
          size(middle[0] ?? 0, middle[1] ?? 0),
          tolerance.offset,
          pencil.size(tolerance.offset),
        ),
      )
    if (tolerance.angle !== undefined)
      lines.push(
        limitLine(
          'Angle between the axes',
          `${how(angle, slope[0] ?? 0, slope[1] ?? 0)} ${pencil.slopeUnit}`,
          size(slope[0] ?? 0, slope[1] ?? 0),
          tolerance.angle,
          `${tolerance.angle.toFixed(2)} ${pencil.slopeUnit}`,
        ),
      )
    return lines
  }
}
