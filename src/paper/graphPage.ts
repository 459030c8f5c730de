import { lineMark, type Look } from '../scene/drawings/marks'
import { shareText } from '../language/amounts'
import { stateDash } from '../scene/stateStyle'
import { fineSign, micrometresPer, millimetresPer } from '../mechanics/units'
import { hasMoves } from '../engine/plan/moves'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { Train } from '../mechanics/train'
import { graph } from './graph'
import type { GraphScale } from './graphScale'
import type { Drawn } from './job'
import { label, type Block, type Chapter, type Figure, type PaperMark } from './page'
import { barLength, columnGap, pxPerMm, textWidth } from './size'
import { labelWidth } from './textSize'

/** With so few machines both drawings stand beside each other, and on the page of another chapter. */
export const isShort = ({ machines }: Train): boolean => machines.length <= 2

/** Rise and side on one page, as on graph paper: a ruler can be laid on them. */
export function graphPage({ train, answer, figures }: Drawn): Chapter {
  const width = isShort(train) ? (textWidth - columnGap) / 2 : textWidth
  const planes = (['rise', 'side'] as const).map((way): Block[] => {
    const { figure, scale } = graph(train, figures, way, width)
    const text = way === 'rise' ? 'Up and down' : 'To the sides'
    return [
      { kind: 'heading', text, aside: scaleWords(train, scale) },
      { kind: 'figures', figures: [figure] },
    ]
  })
  // without moves no planned line is drawn, and no limits for it
  const limits = hasMoves(answer)
    ? ` Hatched strokes: limits at the coupling; the ${answer.status === 'planned' ? 'planned' : 'thick'} line must pass between them for every state to stay within ${shareText(answer.share)} of tolerance.`
    : ''
  return {
    section: 'graph',
    title: 'The shaft lines, to scale',
    whole: true,
    blocks: [
      { kind: 'figures', figures: [key(train, answer)], leads: true },
      ...(isShort(train)
        ? [{ kind: 'beside' as const, parts: planes.map((blocks) => ({ width: 6, blocks })) }]
        : planes.flat()),
      {
        kind: 'text',
        look: 'small',
        text: `${figures.zero.replace('zero:', 'Zero:')}. Figures at the left: ${fineSign[train.units.fine]}; at the top: ${train.units.length}. Thick strokes on the lower edge: feet; thin ones: flex planes.${limits}`,
      },
    ],
  }
}

/** "along 1:40 (bar below: 4000 mm), across 100:1 (10 mm: 100 um)". */
function scaleWords(train: Train, { along, across }: GraphScale): string {
  const { units } = train
  const number = (value: number) => String(Number(value.toPrecision(4)))
  const length = number((barLength * along) / millimetresPer[units.length])
  const inch = units.length === 'in'
  const sample = inch ? millimetresPer.in : 10
  const value = number((sample / across) * (1000 / micrometresPer[units.fine]))
  return `along 1:${number(along)} (bar below: ${length} ${units.length}), across ${number(across)}:1 (${inch ? '1 in' : '10 mm'}: ${value} ${fineSign[units.fine]})`
}

/** What the lines mean. */
function key(train: Train, answer: PlanAnswer): Figure {
  const { status } = answer
  const samples: { words: string; look: Look; dash?: string }[] = [
    ...(status === 'in-tolerance' ? [] : [{ words: 'as found', look: 'found' } as const]),
    ...(!hasMoves(answer)
      ? []
      : [
          {
            words: status === 'planned' ? 'planned, cold' : 'as found and as it stays, cold',
            look: 'planned',
          } as const,
        ]),
    ...train.states.map(({ name }, s) => ({
      words: name,
      look: 'state' as const,
      dash: stateDash(s),
    })),
  ]
  const wide = textWidth * pxPerMm
  const marks: PaperMark[] = []
  let [x, y] = [0, 12]
  for (const { words, look, dash } of samples) {
    const width = 52 + labelWidth(words, 13.4) + 20
    if (x > 0 && x + width > wide) [x, y] = [0, y + 18]
    marks.push(
      lineMark(x, y - 4, x + 46, y - 4, look, dash),
      label(x + 52, y, words, { anchor: 'start' }),
    )
    x += width
  }
  return {
    width: textWidth,
    height: Math.ceil((y + 6) / pxPerMm),
    name: 'what the lines mean',
    marks,
  }
}
