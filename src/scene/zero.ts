import { lineValueAt, type Line } from '../mechanics/growth'
import type { Train } from '../mechanics/train'
import { inSentence } from '../language/names'
import { shaftEnds } from '../mechanics/shaftEnds'
import type { Axis } from './axisLines'

/** From where rise and side are counted (um over mm), and how that is said. */
export interface Zero {
  readonly axis: Axis
  readonly words: string
  /** The machine whose axis it is; absent for the line through the outermost feet. */
  readonly machine?: number
}

/**
 * The axis of the held machine as found (several: the first that no free skid carries); with nothing
 * held the line through the axis over the outermost feet.
 */
export function zeroOf(train: Train, axes: readonly Axis[]): Zero {
  const held = train.machines.findIndex(
    ({ held, skid }) => held && (skid === undefined || train.bodies[skid]?.held === true),
  )
  const machine = train.machines[held]
  const axis = axes[held]
  if (machine && axis)
    return {
      axis,
      machine: held,
      words: `zero: axis of ${inSentence(machine.name)} as found`,
    }
  const last = train.machines.length - 1
  const from = train.machines[0]?.feet.map(({ x }) => x) ?? []
  const to = train.machines[last]?.feet.map(({ x }) => x) ?? []
  const a = from.length > 0 ? Math.min(...from) : shaftEnds(train, 0)[0]
  const b = to.length > 0 ? Math.max(...to) : shaftEnds(train, last)[1]
  const through = (way: 'rise' | 'side'): Line => {
    const [first, final] = [axes[0], axes[last]]
    if (!first || !final) throw new RangeError('a train without machines')
    const start = lineValueAt(first[way], a)
    return { x: a, value: start, slope: b > a ? (lineValueAt(final[way], b) - start) / (b - a) : 0 }
  }
  return {
    axis: { rise: through('rise'), side: through('side') },
    words: 'zero: line through the axis over the outermost feet, as found',
  }
}
