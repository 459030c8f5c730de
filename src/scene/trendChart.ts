import type { Trend } from '../engine/fieldwork/since/history'
import { signedDigits } from '../language/amounts'
import { towardSide } from '../language/sides'
import { coverage95 } from '../mechanics/coverage'
import type { Train } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import { labelFree, labelLetter, type ChartFigure, type ChartLabel } from './chartFigure'
import { circle, lineMark, poly, rect, type Mark } from './drawings/marks'

/** Heights (px): of a coupling's name, of its plot, of what is written under it. */
const [head, plot, foot] = [18, 70, 20]

/**
 * Every coupling over the years, all on one scale: rise as a dot on a solid line, sideways as a square on a dashed one,
 * with its uncertainty 19 times of 20 as a stroke. `only`: one of them alone, on the scale of all. Lines are broken by the work between as found and as left.
 */
export function trendChart(
  train: Train,
  trends: readonly Trend[],
  width: number,
  only?: number,
): ChartFigure {
  const all = trends.flatMap(({ points }) =>
    points.flatMap(({ line, u }) => [
      Math.abs(line.z) + coverage95 * u.z,
      Math.abs(line.y) + coverage95 * u.y,
    ]),
  )
  const most = Math.max(1, ...all)
  const marks: Mark[] = []
  const labels: ChartLabel[] = []
  const size = `${signedDigits(most, train.units)} ${fineSign[train.units.fine]}`
  // room left of the plots for the scale, which is written there
  const side = size.length * labelLetter + labelFree
  const shown = trends.filter((_, i) => only === undefined || i === only)
  shown.forEach(({ coupling, points }, row) => {
    const top = row * (head + plot + foot)
    const zero = top + head + plot / 2
    const y = (value: number) => zero - (value / most) * (plot / 2)
    const step = (width - side - 20) / Math.max(1, points.length - 1)
    const x = (i: number) => side + i * step
    labels.push(
      {
        x: 0,
        y: top + 12,
        text: train.couplings[coupling]?.name ?? '',
        anchor: 'start',
        bold: true,
      },
      { x: side - labelFree, y: zero - plot / 2 + 10, text: size, anchor: 'end' },
      { x: side - labelFree, y: zero + 4, text: '0', anchor: 'end' },
    )
    marks.push(
      lineMark(side, zero, width - 20, zero, 'zero'),
      lineMark(side, zero - plot / 2, width - 20, zero - plot / 2, 'grid'),
      lineMark(side, zero + plot / 2, width - 20, zero + plot / 2, 'grid'),
    )
    points.forEach(({ line, u, at, time }, i) => {
      const before = points[i - 1]
      for (const way of ['z', 'y'] as const) {
        const shift = way === 'z' ? -2 : 2
        const [px, py] = [x(i) + shift, y(line[way])]
        // from as left to the next as found nobody worked on it
        if (before && at !== 'left')
          marks.push(
            poly(
              [
                [x(i - 1) + shift, y(before.line[way])],
                [px, py],
              ],
              'fine',
              false,
              way === 'y' ? '3 3' : undefined,
            ),
          )
        const band = (coverage95 * u[way] * plot) / 2 / most
        marks.push(
          lineMark(px, py - band, px, py + band, 'fine'),
          way === 'z' ? circle(px, py, 3.2, 'solid') : rect(px - 2.6, py - 2.6, 5.2, 5.2, 'solid'),
        )
      }
      // as found and as left of one time share its date
      if (before?.time !== time)
        labels.push({
          x: (x(i) + x(points.findLastIndex((one) => one.time === time))) / 2,
          y: zero + plot / 2 + 14,
          text: time,
          anchor: i === 0 ? 'start' : i === points.length - 1 ? 'end' : 'middle',
        })
    })
  })
  return {
    width,
    height: shown.length * (head + plot + foot),
    marks,
    labels,
    name: `Couplings over ${train.outages.length} outages and now: rise and side at mid-span, right machine against left, on one scale of ${size} either way`,
  }
}

/** What the marks mean. */
export const trendKey = (train: Train): string =>
  `dot, solid: rise, + is up; square, dashed: sideways, + is ${towardSide(train, 1)}; upright stroke: 19 times of 20; no line where work was done`
