import type { Train } from '../mechanics/train'
import { circle, lineMark, rect, type Mark } from './drawings/marks'
import type { MachineStanding } from './standing'
import type { XScale } from './xScale'

/**
 * A bedplate: two flanges and a web with stiffeners, a brace up to what it carries, pads on the floor.
 * @param y place on the page (px) of a level of the train (mm)
 * @param floor its place on the page (px)
 */
export function skidMarks(
  skid: MachineStanding,
  machines: readonly MachineStanding[],
  train: Train,
  scale: XScale,
  y: (level: number) => number,
  floor: number,
): Mark[] {
  const carried = machines.filter((m) => m.body.skid === train.bodies.indexOf(skid.body))
  const deck = Math.min(...carried.map((m) => y(m.feet)), y(skid.feet) - 8)
  const [l, r, bottom] = [scale.at(skid.from) - 6, scale.at(skid.to) + 6, y(skid.feet) - 4]
  const xs = [...new Set(skid.body.feet.map(({ x }) => x))].map((x) => scale.at(x))
  const ribs = xs.slice(1).flatMap((x, i) => {
    const before = xs[i] ?? x
    return [1 / 3, 2 / 3].map((part) => before + part * (x - before))
  })
  return [
    ...(floor - y(skid.feet) > 2
      ? [rect(l, y(skid.feet), r - l, floor - y(skid.feet), 'ground')]
      : []),
    rect(l, deck, r - l, bottom - deck, 'shade'),
    rect(l - 2, deck, r - l + 4, 4, 'body'),
    rect(l - 2, bottom - 4, r - l + 4, 4, 'body'),
    ...ribs.map((x) => lineMark(x, deck + 4, x, bottom - 4, 'fine')),
    ...xs.flatMap((x) => [
      lineMark(x - 3, deck + 4, x - 3, bottom - 4, 'fine'),
      lineMark(x + 3, deck + 4, x + 3, bottom - 4, 'fine'),
      rect(x - 9, bottom, 18, 4, 'body'),
    ]),
    circle(l + 9, (deck + bottom) / 2, Math.min(4, (bottom - deck) / 5), 'edge'),
    circle(r - 9, (deck + bottom) / 2, Math.min(4, (bottom - deck) / 5), 'edge'),
  ]
}
