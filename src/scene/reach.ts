import type { AxisPoint, Body, Train } from '../mechanics/train'
import type { Millimetres } from '../mechanics/units'
import { inSentence, listed } from '../language/names'

/**
 * The train as far as a drawing reaches: what stands far beyond all else, by a slip or truly, is drawn nearer, or
 * the drawing would be as tall as a house and the rest of the train a dot. What was drawn nearer is said.
 */
export interface Reach {
  readonly train: Train
  /** Of heights; "" where all are to scale. */
  readonly heights: string
  /** Of places across. */
  readonly across: string
}

/** Drawn no farther than this many times the usual height, or distance across. */
const most = 5

export function withinReach(train: Train): Reach {
  const heights = train.machines.flatMap(({ axis, twoAxes }) =>
    (twoAxes ? [axis.left, axis.right] : [axis.left]).map(({ z }) => z),
  )
  const feet = train.bodies.flatMap((body) => body.feet.map(({ y }) => y))
  const high = most * usual(heights)
  const wide = most * usual([...feet, ...heights])
  const low: string[] = []
  const near: string[] = []
  const bodies = train.bodies.map((body): Body => {
    const name = inSentence(body.name)
    const axis = {
      left: within(body.axis.left, wide, high),
      right: within(body.axis.right, wide, high),
    }
    const base = cut(body.base, high)
    const axes = [
      [body.axis.left, axis.left],
      [body.axis.right, axis.right],
    ] as const
    if (base !== body.base || axes.some(([was, now]) => was.z !== now.z)) low.push(name)
    if (axes.some(([was, now]) => was.y !== now.y)) near.push(`the axis of ${name}`)
    const stand = body.feet.map((foot) => {
      const y = cut(foot.y, wide)
      if (y !== foot.y) near.push(`${name} foot ${foot.id}`)
      return y === foot.y ? foot : { ...foot, y }
    })
    return { ...body, axis, base, feet: stand }
  })
  if (low.length + near.length === 0) return { train, heights: '', across: '' }
  const names = listed(low)
  return {
    train: { ...train, bodies, machines: bodies.slice(0, train.machines.length) },
    heights:
      low.length > 0
        ? `${names} ${low.length > 1 ? 'stand' : 'stands'} higher or lower than drawn`
        : '',
    across:
      near.length > 0
        ? `${listed(near)} ${near.length > 1 ? 'stand' : 'stands'} farther out than drawn`
        : '',
  }
}

/** What half of them do not pass, nought apart; of an even number the smaller: one of two may be the slip. */
function usual(values: readonly Millimetres[]): Millimetres {
  const sizes = values.map(Math.abs).filter((size) => size > 0)
  sizes.sort((a, b) => a - b)
  return sizes[Math.floor((sizes.length - 1) / 2)] ?? Infinity
}

const cut = (value: Millimetres, size: Millimetres): Millimetres =>
  Math.max(-size, Math.min(size, value))

const within = ({ y, z }: AxisPoint, wide: Millimetres, high: Millimetres): AxisPoint => ({
  y: cut(y, wide),
  z: cut(z, high),
})
