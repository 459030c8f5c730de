import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import { signedText } from '../../../language/amounts'
import { capital, listed } from '../../../language/names'
import type { Train } from '../../../mechanics/train'
import type { DialAnswer } from './answer'

/** "+508 um", "−150 um", "0": what a dial shows. */
const dialShows = (train: Train, value: Micrometres): string => signedText(tidy(value), train.units)

/** The dials of a step in the order given, those over feet that show the same together. */
export function dialLines(train: Train, dials: readonly DialAnswer[]): string[] {
  const over = new Map<string, string[]>()
  for (const dial of dials)
    if (dial.way === 'vertical' && dial.foot !== undefined) {
      const text = dialShows(train, dial.shows)
      over.set(text, [...(over.get(text) ?? []), dial.foot])
    }
  return [
    ...[...over].map(
      ([text, feet]) =>
        `Stem down on ${feet.length === 1 ? 'foot' : 'feet'} ${listed(feet)}: ${text} (+ is up).`,
    ),
    ...dials
      .filter(({ way, foot }) => foot === undefined || way !== 'vertical')
      .map((dial) => dialLine(train, dial)),
  ]
}

/**
 * One dial: "On the base, on the lake side, stem against foot 1: +508 um (+ is toward the lake).", or where it stands
 * on a machine that must not move. One that watches what goes with a skid is told like those at the feet that are moved.
 */
export function dialLine(train: Train, { where, foot, shows, good }: DialAnswer): string {
  const band =
    foot === undefined && good
      ? `, good from ${dialShows(train, good[0])} to ${dialShows(train, good[1])}`
      : ''
  if (foot === undefined && / must stay$/.test(where))
    return `One more ${where.replace(/: must stay$/, '')}: it must stay at 0${band}.`
  const [place = '', sign = ''] = where.split(/: (?=\+ is )/)
  return `${capital(place)}: ${dialShows(train, shows)}${band} (${sign}).`
}

/** Where a dial stands that watches what is not moved: "On the base, stem down on foot 2 of Motor"; which way is + where it goes along. */
export const watchPlace = (where: string): string => {
  const [place = '', sign] = where.replace(/: must stay$/, '').split(/: (?=\+ is )/)
  return `${capital(place)}${sign === undefined ? '' : `, ${sign}`}`
}
