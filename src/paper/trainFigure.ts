import { elevation } from '../scene/elevation'
import { lineMark, type Mark } from '../scene/drawings/marks'
import { sideNoun, upThePage } from '../language/sides'
import { spread } from '../scene/spread'
import { withinReach } from '../scene/reach'
import { machineStandings } from '../scene/standing'
import { xScale, type XScale } from '../scene/xScale'
import type { Train } from '../mechanics/train'
import { group, label, type Figure, type MarkLabel } from './page'
import { pxPerMm, textWidth } from './size'
import { folded, labelWidth } from './textSize'

const size = 13.4
const leading = 16
/** Highest that an axis stands over the feet (px). */
const tallest = 38

/** The train from its near side with the names of machines over it and of couplings under it. */
export function trainFigure(whole: Train): Figure {
  const { train, heights } = withinReach(whole)
  const width = textWidth * pxPerMm
  const all = machineStandings(train)
  const lowest = Math.min(...all.map(({ feet }) => feet))
  const highest = Math.max(...all.map((m) => Math.max(m.left, m.right)))
  const scale = xScale(train, {
    width,
    left: 8,
    right: 8,
    most: tallest / Math.max(1, highest - lowest),
  })
  const drawing = elevation(train, scale, heights)
  const heads = machineNames(train, scale)
  const top = heads.height + 4
  const floor = top + drawing.height
  const stakes = drawing.stakes.filter(({ body }) => train.bodies[body]?.held === true)
  const under = couplingNames(train, scale, floor + (stakes.length > 0 ? 10 : 4))
  return {
    width: textWidth,
    height: Math.ceil(under.bottom / pxPerMm),
    name: `The train: ${train.machines.map(({ name }) => name).join(', ')}`,
    marks: [
      ...heads.labels,
      group(0, top, [...drawing.marks, ...stakes.flatMap(({ marks }) => marks)]),
      ...under.marks,
      // over the lines to the names of couplings, which do not strike it out
      ...stakes.map(({ left, right }) =>
        label((left + right) / 2, floor + 11, 'FIXED', { size, bold: true, halo: true }),
      ),
    ],
    caption: `${drawing.scale}; seen from the ${sideNoun(train, -upThePage(train))}${/\d/.test(sideNoun(train, 1)) ? '' : ' side'}`,
  }
}

/** A name is folded between its words, never within one (px). */
const longestWord = (name: string): number =>
  Math.max(...name.split(/\s+/).map((word) => labelWidth(word, size)))

function machineNames(train: Train, scale: XScale): { labels: MarkLabel[]; height: number } {
  const casings = machineStandings(train).slice(0, train.machines.length)
  const edges = [0, ...train.couplings.map(({ mid }) => scale.at(mid)), scale.width]
  const names = train.machines.map(({ name }, m) =>
    folded(name, size, Math.max(60, longestWord(name), (edges[m + 1] ?? 0) - (edges[m] ?? 0) - 6)),
  )
  const most = Math.max(...names.map((lines) => lines.length))
  const widths = names.map((lines) => Math.max(...lines.map((text) => labelWidth(text, size))))
  const lefts = spread(
    casings.map(({ from, to }, m) => ({
      want: (scale.at(from) + scale.at(to)) / 2,
      width: widths[m] ?? 0,
    })),
    6,
    0,
    scale.width,
  )
  return {
    height: most * leading,
    labels: names.flatMap((lines, m) =>
      lines.map((text, i) =>
        label(
          (lefts[m] ?? 0) + (widths[m] ?? 0) / 2,
          (most - lines.length + i + 1) * leading - 3,
          text,
          { size, bold: true },
        ),
      ),
    ),
  }
}

function couplingNames(
  train: Train,
  scale: XScale,
  top: number,
): { marks: (Mark | MarkLabel)[]; bottom: number } {
  const slot = scale.width / Math.max(1, train.couplings.length)
  const names = train.couplings.map(({ name }) => folded(name, size, Math.max(60, slot - 8)))
  const widths = names.map((lines) => Math.max(...lines.map((text) => labelWidth(text, size))))
  const lefts = spread(
    train.couplings.map(({ mid }, c) => ({ want: scale.at(mid), width: widths[c] ?? 0 })),
    8,
    0,
    scale.width,
  )
  const most = Math.max(1, ...names.map((lines) => lines.length))
  return {
    bottom: top + 8 + most * leading,
    marks: train.couplings.flatMap(({ mid }, c) => {
      const middle = (lefts[c] ?? 0) + (widths[c] ?? 0) / 2
      return [
        lineMark(scale.at(mid), top - 12, middle, top + 6, 'leader'),
        ...(names[c] ?? []).map((text, i) =>
          label(middle, top + 4 + (i + 1) * leading, text, { size }),
        ),
      ]
    }),
  }
}
