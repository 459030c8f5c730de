import { circle, lineMark, rect, type Mark } from '../scene/drawings/marks'
import { lengthText } from '../language/amounts'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import { label, type Figure, type PaperMark } from './page'
import { pxPerMm } from './size'

const width = 43
const height = 34
/** Printed smaller than it is drawn. */
const enlarged = 0.7

/** How a set is rigged: which shaft the bracket sits on, where the stem touches, seen from the near side at 12 o'clock. */
export function dialSketch(train: Train, coupling: Coupling, set: ReadingSet): Figure {
  const [wide, high] = [width * pxPerMm, height * pxPerMm]
  const middle = high - 52
  const spacer = coupling.q > coupling.p
  const gap = spacer ? 40 : 8
  const [l, r] = [wide / 2 - gap / 2, wide / 2 + gap / 2]
  const hub = 26
  const marks: PaperMark[] = [
    rect(2, middle - 9, l - 20, 18, 'body'),
    rect(l - 18, middle - hub, 18, 2 * hub, 'body'),
    rect(r, middle - hub, 18, 2 * hub, 'body'),
    rect(r + 18, middle - 9, wide - r - 20, 18, 'body'),
    ...(spacer && set.kind === 'spool' ? [rect(l + 6, middle - 14, gap - 12, 28, 'shade')] : []),
    lineMark(0, middle, wide, middle, 'centre'),
    label(l / 2 - 6, middle + hub + 17, 'left', { size: 17 }),
    label((r + wide) / 2 + 6, middle + hub + 17, 'right', { size: 17 }),
    ...rig(set, { l, r, middle, hub }),
  ]
  return {
    width: width * enlarged,
    height: height * enlarged,
    enlarged,
    name: `how the dial is rigged: ${rigWords(train, set)}`,
    marks,
  }
}

interface Hubs {
  readonly l: number
  readonly r: number
  readonly middle: number
  readonly hub: number
}

function rig(set: ReadingSet, { l, r, middle, hub }: Hubs): Mark[] {
  const top = middle - hub
  switch (set.kind) {
    case 'rim': {
      const [from, to] = set.rides === 'right' ? [l - 9, r + 9] : [r + 9, l - 9]
      return [
        ...bracket(from, top, to),
        lineMark(to, top - 14, to, top, 'edge'),
        circle(to, top - 25, 11, 'edge'),
        circle(to, top, 2.5, 'solid'),
      ]
    }
    case 'face': {
      const right = set.rides === 'right'
      const front = set.face === 'front'
      // the stem looks along the train at the face: the front is the face that looks at the other machine
      const face = right ? (front ? r : r + 18) : front ? l : l - 18
      const way = right === front ? -1 : 1
      const from = right ? l - 9 : r + 9
      const at = top + 9
      return [
        ...bracket(from, top, face + way * 25),
        lineMark(face + way * 25, top - 36, face + way * 25, at - 9, 'edge'),
        lineMark(face, at, face + way * 14, at, 'edge'),
        circle(face + way * 25, at, 9, 'edge'),
        circle(face, at, 2.5, 'solid'),
      ]
    }
    case 'gap':
      return [
        lineMark(l, top + 6, r, top + 6, 'edge'),
        lineMark(l, middle + hub - 6, r, middle + hub - 6, 'edge'),
        circle(l, top + 6, 2.5, 'solid'),
        circle(r, top + 6, 2.5, 'solid'),
      ]
    case 'spool': {
      const face = set.end === 'left' ? l : r
      return [
        circle(face + (set.end === 'left' ? 12 : -12), middle - 20, 8, 'edge'),
        lineMark(face, middle - 20, face + (set.end === 'left' ? 4 : -4), middle - 20, 'edge'),
        circle(face, middle - 20, 2.5, 'solid'),
      ]
    }
    case 'line':
      return []
  }
}

/** A post on the bracket's hub and an arm over to the dial. */
const bracket = (from: number, top: number, to: number): Mark[] => [
  lineMark(from, top, from, top - 36, 'edge'),
  lineMark(from, top - 36, to, top - 36, 'edge'),
]

/** How it is rigged, in words. */
export function rigWords(train: Train, set: ReadingSet): string {
  const other = (side: 'left' | 'right') => (side === 'left' ? 'right' : 'left')
  switch (set.kind) {
    case 'rim':
      return `bracket ${other(set.rides)}, stem on the ${set.rides} rim`
    case 'face':
      return `bracket ${other(set.rides)}, stem on the ${set.face} of the ${set.rides} face`
    case 'gap':
      return `gauge between the faces, ${lengthText(set.diameter, train.units)} across`
    case 'spool':
      return `between spacer and ${set.end} shaft`
    case 'line':
      return 'any instrument'
  }
}
