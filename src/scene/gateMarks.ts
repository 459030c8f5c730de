import { fineText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import { inSentence } from '../language/names'
import type { Gate } from './gates'
import { lineMark, poly, rect, type Mark } from './drawings/marks'
import { sideName } from '../language/sides'
import type { XScale } from './xScale'
import type { YScale } from './yScale'

/** A gate as drawn (px): two posts, hatched on the side where the line may not be. */
export interface GateScene {
  readonly id: string
  readonly x: number
  /** Box that a pointer can press. */
  readonly box: {
    readonly left: number
    readonly top: number
    readonly width: number
    readonly height: number
  }
  readonly marks: readonly Mark[]
  /** Which line passes here, and which state sets each edge. */
  readonly words: string
}

const postLength = 17
const widest = 12

export function gateMarks(
  train: Train,
  gates: readonly Gate[],
  scale: XScale,
  y: YScale,
  chosen?: number,
): GateScene[] {
  const open = (gate: Gate) =>
    chosen !== undefined && !Number.isFinite(gate.states[chosen]?.low ?? 0)
  return gates
    .filter((gate) => !open(gate))
    .map((gate) => {
      const x = scale.at(gate.x)
      const nearest = Math.min(
        ...gates.filter(({ id }) => id !== gate.id).map((other) => Math.abs(scale.at(other.x) - x)),
      )
      const width = Math.max(5, Math.min(widest, nearest - 2))
      const own = chosen === undefined ? undefined : gate.states[chosen]
      const low = { value: own?.low ?? gate.low.value, state: chosen ?? gate.low.state }
      const high = { value: own?.high ?? gate.high.value, state: chosen ?? gate.high.state }
      const down = y.at(1) > y.at(0) ? -1 : 1
      const marks = [...post(low.value, down), ...post(high.value, -down)]
      return {
        id: gate.id,
        x,
        box: { left: x - 10, top: 0, width: 20, height: y.height },
        marks,
        words: gateWords(train, gate, low, high),
      }

      /** A post from an edge outward (`out` +1 down the page), or an arrow at the border it lies beyond. */
      function post(value: number, out: number): Mark[] {
        const edge = y.at(value)
        if (edge < 1 || edge > y.height - 1) {
          const border = edge < 1 ? 1 : y.height - 1
          const inward = edge < 1 ? 1 : -1
          return [
            poly(
              [
                [x - 4, border + inward * 5],
                [x, border],
                [x + 4, border + inward * 5],
              ],
              'gate',
              false,
            ),
          ]
        }
        const end = Math.min(y.height, Math.max(0, edge + out * postLength))
        return [
          rect(x - width * 0.3, Math.min(edge, end), width * 0.6, Math.abs(end - edge), 'hatch'),
          lineMark(x - width / 2, edge, x + width / 2, edge, 'gate'),
        ]
      }
    })
}

interface Edge {
  readonly value: number
  readonly state: number
}

function gateWords(train: Train, gate: Gate, low: Edge, high: Edge): string {
  const { units } = train
  const coupling = train.couplings[gate.coupling]
  const machine = inSentence(train.machines[gate.machine]?.name ?? '')
  const state = (edge: Edge) => train.states[edge.state]?.name ?? ''
  const place = {
    'left plane': 'at the right flex plane',
    'right plane': 'at the left flex plane',
    offset: 'at mid-span',
    angle: 'at its nearest foot, by the angle',
  }[gate.what]
  const where = (value: number): string => {
    const size = fineText(Math.abs(value), units)
    if (!/[1-9]/.test(size)) return 'zero'
    if (gate.way === 'rise') return `${size} ${value > 0 ? 'high' : 'low'}`
    return `${size} ${sideName(train, value)}`
  }
  return (
    `${coupling?.name ?? ''}: the line of ${machine} ${place} passes ${where(gate.passes)}; ` +
    `it may pass from ${where(low.value)} (set by ${state(low)}) to ${where(high.value)} (set by ${state(high)})`
  )
}
