import { harmlessLine } from '../../language/harmless'
import { fontFace } from './fontFace'
import { screenLines } from './textLines'

/**
 * A band of the sheet as a drawing of its own: every line, text and surface that is seen, at its place,
 * in plain SVG that any program for drawings can open. Texts stay texts.
 */
const space = 'http://www.w3.org/2000/svg'
const looks = [
  ...['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap'],
  ...['stroke-linejoin', 'stroke-opacity', 'opacity', 'font-family', 'font-size', 'font-weight'],
  ...['text-anchor', 'visibility'],
]
/** Parts of a band that belong to the screen and not to the drawing. */
const screenOnly =
  '.figures, .picture-tools, .why-button, .press, .unseen, .stakes-press, button, input'

export async function bandPicture(band: HTMLElement): Promise<string> {
  const frame = band.getBoundingClientRect()
  const root = document.createElementNS(space, 'svg')
  const [width, height] = [Math.ceil(frame.width), Math.ceil(frame.height)]
  for (const [name, value] of Object.entries({
    xmlns: space,
    width: String(width),
    height: String(height),
    viewBox: `0 0 ${width} ${height}`,
  }))
    root.setAttribute(name, value)
  const defs = document.createElementNS(space, 'defs')
  const style = document.createElementNS(space, 'style')
  style.textContent = await fontFace()
  defs.append(style, ...[...document.querySelectorAll('.patterns pattern')].map(looked))
  root.append(
    defs,
    surface(
      0,
      0,
      width,
      height,
      getComputedStyle(document.documentElement).getPropertyValue('--paper'),
    ),
  )
  draw(band, frame, root)
  return new XMLSerializer().serializeToString(root)
}

function draw(element: Element, frame: DOMRect, into: SVGElement): void {
  if (element.matches(screenOnly)) return
  const style = getComputedStyle(element)
  if (style.display === 'none' || style.visibility === 'hidden') return
  const box = element.getBoundingClientRect()
  const [x, y] = [box.left - frame.left, box.top - frame.top]
  if (element instanceof SVGSVGElement) {
    const copy = document.createElementNS(space, 'svg')
    copy.setAttribute('x', String(x))
    copy.setAttribute('y', String(y))
    copy.setAttribute('width', String(box.width))
    copy.setAttribute('height', String(box.height))
    copy.append(...[...element.children].filter((child) => !child.matches(screenOnly)).map(looked))
    into.append(copy)
    return
  }
  if (!/^rgba\(.*, 0\)$|^transparent$/.test(style.backgroundColor))
    into.append(surface(x, y, box.width, box.height, style.backgroundColor))
  into.append(...borders(style, x, y, box.width, box.height))
  for (const node of element.childNodes) {
    if (node instanceof Element) draw(node, frame, into)
    else if (node instanceof Text)
      for (const line of screenLines(node)) into.append(text(line, style, frame))
  }
}

/** A copy of a drawn element with its looks written on it, for a place without the style sheet. */
function looked(element: Element): Element {
  const copy = element.cloneNode(false) as Element
  const style = getComputedStyle(element)
  for (const name of looks) {
    const value = style.getPropertyValue(name)
    if (value !== '') copy.setAttribute(name, value.replace(/url\("#([^"]+)"\)/, 'url(#$1)'))
  }
  copy.removeAttribute('class')
  for (const child of element.childNodes) {
    if (child instanceof Element) {
      if (!child.matches(screenOnly)) copy.append(looked(child))
    } else if (child instanceof Text) copy.append(harmlessLine(child.data))
  }
  return copy
}

function surface(x: number, y: number, width: number, height: number, fill: string): SVGElement {
  const rect = document.createElementNS(space, 'rect')
  for (const [name, value] of Object.entries({ x, y, width, height }))
    rect.setAttribute(name, String(value))
  rect.setAttribute('fill', fill)
  return rect
}

function borders(
  style: CSSStyleDeclaration,
  x: number,
  y: number,
  width: number,
  height: number,
): SVGElement[] {
  const sides = [
    ['top', x, y, width, 0],
    ['bottom', x, y + height, width, 0],
    ['left', x, y, 0, height],
    ['right', x + width, y, 0, height],
  ] as const
  return sides.flatMap(([side, left, top, along, down]) => {
    const wide = parseFloat(style.getPropertyValue(`border-${side}-width`))
    if (!(wide > 0) || style.getPropertyValue(`border-${side}-style`) === 'none') return []
    const line = document.createElementNS(space, 'path')
    line.setAttribute('d', `M${left} ${top}l${along} ${down}`)
    line.setAttribute('stroke', style.getPropertyValue(`border-${side}-color`))
    line.setAttribute('stroke-width', String(wide))
    return [line]
  })
}

function text(
  { words, box }: { readonly words: string; readonly box: DOMRect },
  style: CSSStyleDeclaration,
  frame: DOMRect,
): SVGElement {
  const size = parseFloat(style.fontSize)
  const line = document.createElementNS(space, 'text')
  line.setAttribute('x', String(box.left - frame.left))
  // a line box centres the letters; their base lies about a quarter of the size above its lower edge
  line.setAttribute('y', String(box.bottom - frame.top - (box.height - size) / 2 - size * 0.22))
  line.setAttribute('font-family', style.fontFamily)
  line.setAttribute('font-size', String(size))
  line.setAttribute('font-weight', style.fontWeight)
  line.setAttribute('fill', style.color)
  line.setAttribute('textLength', String(box.width))
  line.textContent = harmlessLine(words)
  return line
}
