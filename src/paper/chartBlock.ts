import type { ChartFigure } from '../scene/chartFigure'
import { label, type Block } from './page'
import { pxPerMm, textWidth } from './size'

/** Width of a chart over the whole page (px). */
export const chartWidth = textWidth * pxPerMm

/** A chart of that width as it stands on paper. */
export const chartBlock = ({ height, name, marks, labels }: ChartFigure): Block => ({
  kind: 'figures',
  figures: [
    {
      width: textWidth,
      height: height / pxPerMm,
      name,
      marks: [
        ...marks,
        ...labels.map(({ x, y, text, anchor, bold }) =>
          label(x, y, text, { size: 12.6, anchor, ...(bold && { bold }) }),
        ),
      ],
    },
  ],
})
