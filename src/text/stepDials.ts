import { micrometresPer } from '../mechanics/units'
import { fineText } from '../language/amounts'
import { listed } from '../language/names'
import type { Train } from '../mechanics/train'
import type { DialAnswer, StepAnswer } from '../engine/work/steps/answer'

/** "+508 um", "-150 um", "0": what a dial shows, its sign always there. */
export function shows(train: Train, value: number): string {
  const text = fineText(Math.abs(value * micrometresPer[train.units.fine]), train.units)
  return /[1-9]/.test(text) ? `${value > 0 ? '+' : '\u2212'}${text}` : '0'
}

/** The dials of a step, those over feet that show the same together. */
export function stepDials(train: Train, { dials }: StepAnswer): string[] {
  const over = new Map<string, string[]>()
  for (const dial of dials)
    if (dial.way === 'vertical' && dial.foot !== undefined) {
      const text = shows(train, dial.shows)
      over.set(text, [...(over.get(text) ?? []), dial.foot])
    }
  return [
    ...[...over].map(
      ([text, feet]) =>
        `Stem down on ${feet.length === 1 ? 'foot' : 'feet'} ${listed(feet)}: ${text} (+ is up).`,
    ),
    ...dials
      .filter(({ way, foot }) => foot !== undefined && way !== 'vertical')
      .map((dial) => besideWords(train, dial)),
    ...dials
      .filter(({ foot }) => foot === undefined)
      .map(({ where }) => `One more ${where.replace(/: must stay$/, '')}: it must stay at 0.`),
  ]
}

/** "On the base, on the lake side, stem against foot 1: +508 um (+ is toward the lake)." */
function besideWords(train: Train, { where, shows: value }: DialAnswer): string {
  const [place = '', sign = ''] = where.split(/: (?=\+ is )/)
  return `${place.charAt(0).toUpperCase()}${place.slice(1)}: ${shows(train, value)} (${sign}).`
}

/** What a foot's card says of dials: the same dials that its steps set up. */
export function footDials(
  train: Train,
  steps: readonly StepAnswer[],
  body: string,
  foot: string,
): string[] {
  return steps
    .filter((step) => step.body === body && step.kind !== 'soft foot')
    .flatMap(({ dials }) => dials)
    .filter((dial) => dial.foot === foot && shows(train, dial.shows) !== '0')
    .map((dial) => {
      const text = shows(train, dial.shows)
      const sign = / (\+ is .*)$/.exec(dial.where)?.[1] ?? ''
      if (dial.way === 'vertical') return `dial over it: ${text} (+ is up)`
      return `dial at its side: ${text} (${sign})`
    })
}
