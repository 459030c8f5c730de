import type { Body, Pin } from '../mechanics/train'
import { inSentence, listed } from './names'

/** What people call each kind of pin. */
export const pinKindWords = { dowel: 'dowel', key: 'key block' } as const satisfies Record<
  Pin['kind'],
  string
>

/** How a pin is now, as people choose it. */
export const pinStateWords = {
  in: 'in',
  out: 'out, fits as it is',
  ream: 'out, to be reamed or fitted anew',
} as const satisfies Record<Pin['now'], string>

const named = (pins: readonly Pin[]): string =>
  listed(pins.map(({ kind, id }) => `${pinKindWords[kind]} ${id}`))

/** How pins that no longer fit are put in again: a dowel's hole is reamed, a key block is fitted. */
function anew(pins: readonly Pin[]): string {
  const [it, its] = pins.length === 1 ? ['it', 'its hole'] : ['them', 'their holes']
  const keys = pins.filter(({ kind }) => kind === 'key').length
  if (keys === 0) return `ream ${its} anew and fit ${it}`
  return keys === pins.length ? `fit ${it} anew` : `fit ${it} anew, the holes of dowels reamed`
}

/** What is drawn before a body is moved; nothing where no pin is in. */
export function drawPins(body: Body): string[] {
  const pins = body.pins.filter(({ now }) => now === 'in')
  if (pins.length === 0) return []
  return [
    `Draw ${named(pins)} of ${inSentence(body.name)} while its bolts are tight, and mark ${pins.length === 1 ? 'it' : 'each'} and where it goes.`,
  ]
}

/** What becomes of a body's pins once it has been moved; nothing where it has none. */
export const pinsAfter = ({ pins }: Body): string[] =>
  pins.length === 0
    ? []
    : [`Leave ${named(pins)} out until the hot check agrees; then ${anew(pins)}.`]

/** Pins that are out as the file has it, a sentence for those that fit and one for the others. */
export const pinsOut = (body: Body): string[] =>
  (['out', 'ream'] as const).flatMap((now) => {
    const pins = body.pins.filter((pin) => pin.now === now)
    if (pins.length === 0) return []
    const [is, it] = pins.length === 1 ? ['is', 'it'] : ['are', 'them']
    const act = now === 'out' ? `fit ${it}` : anew(pins)
    return [
      `${named(pins)} of ${inSentence(body.name)} ${is} out: ${act} once the hot check agrees`,
    ]
  })
