import { circle, lineMark, path, poly, rect, type Mark } from './drawings/marks'
import type { DraftSet } from '../document/edits/readingPresets'

/** A small picture of how a set is read: shafts, bracket, stem, and the way that counts as +. */
export interface SetPicture {
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
  readonly labels: readonly { readonly x: number; readonly y: number; readonly text: string }[]
  /** The same in words. */
  readonly words: string
}

const width = 230
const height = 132
/** Height of both axes, half thickness of a shaft, of a hub. */
const axis = 88
const thin = 9
const hub = 25
/** Inner faces of the two hubs. */
const [faceLeft, faceRight] = [88, 142]
const thick = 13

/** What a set looks like at the coupling, drawn by hand; the left machine is at the left. */
export function setPicture(set: DraftSet): SetPicture {
  switch (set['kind']) {
    case 'rim':
      return rim(set['rides'] === 'left' ? 'left' : 'right')
    case 'face':
      return face(set['rides'] === 'left' ? 'left' : 'right', set['face'] === 'back')
    case 'spool':
      return spool(set['end'] === 'right' ? 'right' : 'left')
    case 'gap':
      return gap()
    default:
      return axes()
  }
}

const shafts = (): Mark[] => [
  rect(4, axis - thin, faceLeft - thick - 4, 2 * thin, 'body'),
  rect(faceRight + thick, axis - thin, width - 4 - faceRight - thick, 2 * thin, 'body'),
  rect(faceLeft - thick, axis - hub, thick, 2 * hub, 'shade'),
  rect(faceRight, axis - hub, thick, 2 * hub, 'shade'),
  lineMark(0, axis, width, axis, 'centre'),
]

const named = [
  { x: 36, y: height - 7, text: 'left shaft' },
  { x: width - 36, y: height - 7, text: 'right shaft' },
]

/** A dial with its stem from the dial to the point that it touches. */
function dial(x: number, y: number, tipX: number, tipY: number): Mark[] {
  const length = Math.hypot(tipX - x, tipY - y)
  const [ux, uy] = [(tipX - x) / length, (tipY - y) / length]
  return [
    lineMark(x + ux * 9, y + uy * 9, tipX, tipY, 'edge'),
    circle(x, y, 9, 'body'),
    lineMark(x, y, x + ux * 5 - uy * 4, y + uy * 5 + ux * 4, 'outline'),
    circle(tipX, tipY, 1.8, 'solid'),
  ]
}

/** An arrow that says which way the stem goes when it is pushed in. */
function arrow(x: number, y: number, dx: number, dy: number): Mark[] {
  const length = Math.hypot(dx, dy)
  const [ux, uy] = [dx / length, dy / length]
  const [tx, ty] = [x + dx, y + dy]
  return [
    lineMark(x, y, tx - ux * 4, ty - uy * 4, 'edge'),
    poly(
      [
        [tx, ty],
        [tx - ux * 7 - uy * 3.5, ty - uy * 7 + ux * 3.5],
        [tx - ux * 7 + uy * 3.5, ty - uy * 7 - ux * 3.5],
      ],
      'solid',
    ),
  ]
}

/** A clamp on a shaft and an arm from it over to a dial. */
const bracket = (clampX: number, topY: number, toX: number): Mark[] => [
  rect(clampX - 5, axis - thin - 7, 10, 2 * thin + 14, 'body', 2),
  path(`M${clampX} ${axis - thin - 7}V${topY}H${toX}`, 'edge'),
]

function rim(rides: 'left' | 'right'): SetPicture {
  const right = rides === 'right'
  const x = right ? faceRight + thick / 2 : faceLeft - thick / 2
  const beside = right ? x + 18 : x - 18
  return {
    width,
    height,
    marks: [
      ...shafts(),
      ...bracket(right ? 58 : width - 58, 26, right ? x - 9 : x + 9),
      ...dial(x, 26, x, axis - hub),
      ...arrow(beside, 58, 0, -24),
    ],
    labels: [...named, { x: right ? beside + 12 : beside - 12, y: 52, text: '+' }],
    words: `The bracket is on the ${right ? 'left' : 'right'} shaft, the stem on the rim of the ${rides} one; + is the stem pushed in, away from the axis.`,
  }
}

function face(rides: 'left' | 'right', back: boolean): SetPicture {
  const right = rides === 'right'
  const out = right ? 1 : -1
  const inner = right ? faceRight : faceLeft
  const touched = back ? inner + out * thick : inner
  // the stem points at the face: from between the hubs at its front, from outside at its back
  const from = touched + (back ? out : -out) * 26
  const y = axis - hub + 8
  const marks = [
    ...shafts(),
    ...bracket(right ? 52 : width - 52, 26, from),
    lineMark(from, 26, from, y - 9, 'edge'),
    ...dial(from, y, touched, y),
    ...arrow(touched, 44, (from - touched) * 0.9, 0),
  ]
  return {
    width,
    height,
    marks,
    labels: [...named, { x: (touched + from) / 2, y: 38, text: '+' }],
    words: `The bracket is on the ${right ? 'left' : 'right'} shaft, the stem on the ${back ? 'back' : 'front'} of the face of the ${rides} one; + is the stem pushed in.`,
  }
}

function spool(end: 'left' | 'right'): SetPicture {
  const left = end === 'left'
  const [from, to] = [faceLeft + 16, faceRight - 16]
  const touched = left ? from : to
  const held = left ? faceLeft : faceRight
  return {
    width,
    height,
    marks: [
      ...shafts(),
      rect(from, axis - 14, to - from, 28, 'body', 2),
      lineMark(from, axis - hub, from, axis + hub, 'edge'),
      lineMark(to, axis - hub, to, axis + hub, 'edge'),
      path(`M${held - (left ? 6 : -6)} ${axis - hub}V40H${touched + (left ? -8 : 8)}`, 'edge'),
      ...dial(touched + (left ? -8 : 8), 50, touched, axis - hub + 6),
      ...arrow(touched + (left ? 6 : -6), 30, left ? -26 : 26, 0),
    ],
    labels: [
      ...named,
      { x: (from + to) / 2, y: axis + hub + 12, text: 'spacer' },
      { x: touched + (left ? 14 : -14), y: 35, text: '+' },
    ],
    words: `Between the ${end} shaft and the spacer: bracket on one, stem on the face of the other that looks at it; + is the stem pushed in.`,
  }
}

function gap(): SetPicture {
  const y = axis - hub + 6
  return {
    width,
    height,
    marks: [
      ...shafts(),
      ...arrow((faceLeft + faceRight) / 2, y, faceRight - (faceLeft + faceRight) / 2, 0),
      ...arrow((faceLeft + faceRight) / 2, y, faceLeft - (faceLeft + faceRight) / 2, 0),
    ],
    labels: [...named, { x: (faceLeft + faceRight) / 2, y: y - 8, text: 'wider is more' }],
    words: 'Between the faces of the two hubs; wider is more.',
  }
}

function axes(): SetPicture {
  const [x, level, high] = [115, 84, 58]
  return {
    width,
    height,
    marks: [
      lineMark(6, level, x, level, 'planned'),
      lineMark(x, level, width - 6, level, 'found'),
      lineMark(x, high, width - 6, high - 16, 'planned'),
      ...arrow(x, level, 0, high - level),
    ],
    labels: [
      { x: 40, y: level + 18, text: 'left axis' },
      { x: width - 42, y: high - 20, text: 'right axis' },
      { x: x - 12, y: (level + high) / 2 + 5, text: '+' },
    ],
    words: 'The right axis against the left one, extended; + is up, and + is toward 3 o’clock.',
  }
}
