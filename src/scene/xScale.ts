import { tol } from '../mechanics/tolerances'
import type { Millimetres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { machineStandings } from './standing'

/** Where the scale is broken: a stretch of the train that is left out, the same in every band. */
interface Break {
  readonly from: Millimetres
  readonly to: Millimetres
  /** Left and right edge on the page (px). */
  readonly left: number
  readonly right: number
}

/** The one x scale of a sheet. */
export interface XScale {
  readonly width: number
  /** px per mm, the same everywhere outside the breaks. */
  readonly perMm: number
  readonly breaks: readonly Break[]
  at(x: Millimetres): number
}

export interface XScaleSettings {
  readonly width: number
  readonly left: number
  readonly right: number
  /** Largest px per mm: a short train is not blown up past it but stands in the middle. */
  readonly most: number
}

/** Room on the page that a break takes (px). */
const breakWidth = 16
/** A stretch that is this many times the usual distance between feet is broken. */
const longStretch = 4
/** What is left of a broken stretch, in usual distances. */
const keptStretch = 2

/** Lays the train along the page; stretches far longer than the usual one are cut short, and stated. */
export function xScale(train: Train, settings: XScaleSettings): XScale {
  const { width, left, right, most } = settings
  const stations = stationsOf(train)
  const gaps = stations.slice(1).map((x, i) => ({ from: stations[i] ?? x, to: x }))
  const usual = usualDistance(train)
  const cuts = gaps
    .filter(({ from, to }) => usual > 0 && to - from > longStretch * usual)
    .map(({ from, to }) => {
      const kept = (keptStretch * usual) / 2
      return { from: from + kept, to: to - kept }
    })
  const first = stations[0] ?? 0
  const last = stations.at(-1) ?? 1
  const removed = cuts.reduce((sum, { from, to }) => sum + to - from, 0)
  const room = Math.max(1, width - left - right - cuts.length * breakWidth)
  const perMm = Math.min(room / Math.max(tol.sameX, last - first - removed), most)
  const start = left + (room - perMm * (last - first - removed)) / 2
  const at = (x: Millimetres): number =>
    cuts.reduce(
      (px, { from, to }) => {
        if (x <= from) return px
        const inside = Math.min(x, to) - from
        return px - inside * perMm + (inside / (to - from)) * breakWidth
      },
      start + (x - first) * perMm,
    )
  return {
    width,
    perMm,
    at,
    breaks: cuts.map(({ from, to }) => ({ from, to, left: at(from), right: at(to) })),
  }
}

/** Median of the distances between neighbouring rows of feet; 0 where there are none. */
function usualDistance(train: Train): Millimetres {
  const feet = [...new Set(train.bodies.flatMap((body) => body.feet.map(({ x }) => x)))]
  feet.sort((a, b) => a - b)
  const distances = feet.slice(1).map((x, i) => x - (feet[i] ?? x))
  distances.sort((a, b) => a - b)
  return distances[Math.floor(distances.length / 2)] ?? 0
}

/** Every x that must keep its place: ends of casings and shafts, feet, flex planes. */
function stationsOf(train: Train): Millimetres[] {
  const all = machineStandings(train).flatMap(({ from, to, shaft, body }) => [
    from,
    to,
    ...shaft,
    ...body.feet.map(({ x }) => x),
  ])
  const planes = train.couplings.flatMap(({ p, q }) => [p, q])
  return [...new Set([...all, ...planes])].sort((a, b) => a - b)
}
