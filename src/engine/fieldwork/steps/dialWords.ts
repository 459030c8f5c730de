import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import { signedText } from '../../../language/amounts'
import { capital, listed } from '../../../language/names'
import type { Train } from '../../../mechanics/train'
import type { DialAnswer } from './answer'

/** "+508 um", "−150 um", "0": what a dial shows. */
const dialShows = (train: Train, value: Micrometres): string => signedText(tidy(value), train.units)

/** The dials of a step in the order given: those that show the same over feet in one line, as those that stand alike. */
export function dialLines(train: Train, dials: readonly DialAnswer[]): string[] {
  const over = new Map<string, string[]>()
  for (const dial of dials) if (standsOver(dial)) put(over, dialShows(train, dial.shows), dial.foot)
  const beside = new Map<string, string[]>()
  const carried = new Map<string, Rider[]>()
  const others: string[] = []
  for (const dial of dials) {
    if (standsOver(dial)) continue
    const [, place, foot, after] = standsAt.exec(dial.where) ?? []
    if (place === undefined || foot === undefined || after === undefined)
      others.push(dialLine(train, dial))
    else if (after === 'must stay') put(beside, `${place}|must stay|${bandOf(train, dial)}`, foot)
    else if (dial.foot === undefined) {
      const [, at = foot, machine = '', skid = ''] = ridesOn.exec(foot) ?? []
      const shows = `${dialShows(train, dial.shows)}${bandOf(train, dial)}`
      put(carried, `${place}|${after}`, { foot: at, machine, skid, shows })
    } else put(beside, `${place}|${after}|`, `${foot}: ${dialShows(train, dial.shows)}`)
  }
  return [
    ...[...over].map(
      ([text, feet]) =>
        `Stem down on ${feet.length === 1 ? 'foot' : 'feet'} ${listed(feet)}: ${text} (+ is up).`,
    ),
    ...[...beside].map(([key, feet]) => {
      const [place = '', after = '', band = ''] = key.split('|')
      if (after !== 'must stay') return `${capital(place)} ${listed(feet)} (${after}).`
      return feet.length === 1
        ? `One more ${place} ${listed(feet)}: it must stay at 0${band}.`
        : `One each ${place} ${listed(feet)}: they must stay at 0${band}.`
    }),
    ...[...carried].map(([key, told]) => {
      const [place = '', after = ''] = key.split('|')
      const words = told.map((rider, i) => riderWords(rider, told[i - 1]))
      return `${capital(place)} ${words.join('; ')} (${after}).`
    }),
    ...others,
  ]
}

/** What a dial at something that goes with a skid shows: "foot 1 of the gear", "the bedplate", "−44.0 mil". */
interface Rider {
  readonly foot: string
  readonly machine: string
  readonly skid: string
  readonly shows: string
}

/** After the one before it: neither the machine nor the skid is named again where it is the same. */
function riderWords({ foot, machine, skid, shows }: Rider, before?: Rider): string {
  const of = before?.machine === machine ? '' : ` of ${machine}`
  const on = before?.skid === skid ? '' : `, which goes with ${skid}`
  return `${foot}${of}${on}: ${shows}`
}

/** Over a foot that is lifted, from 0 before; one that is zeroed with a bolt loose is told as it stands. */
const standsOver = (dial: DialAnswer): dial is DialAnswer & { foot: string } =>
  dial.way === 'vertical' && dial.foot !== undefined && !dial.where.includes('zeroed')

/** "on the base, stem down on", "foot 2 of the motor", and which way is + or that it must stay. */
const standsAt = /^(.* stem (?:down on|against)) (foot [^:]*): (.*)$/

/** "foot 1 hill of the gear, which goes with the bedplate". */
const ridesOn = /^(foot .*?) of (.*), which goes with (.*)$/

const put = <Entry>(lists: Map<string, Entry[]>, key: string, entry: Entry) => {
  lists.set(key, [...(lists.get(key) ?? []), entry])
}

/** ", good from −20 um to +20 um", of a dial on what is not worked on. */
const bandOf = (train: Train, { foot, good }: DialAnswer): string =>
  foot === undefined && good
    ? `, good from ${dialShows(train, good[0])} to ${dialShows(train, good[1])}`
    : ''

/**
 * One dial: "On the base, on the lake side, stem against foot 1: +508 um (+ is toward the lake).", or where it stands
 * on a machine that must not move. One that watches what goes with a skid is told like those at the feet that are moved.
 */
export function dialLine(train: Train, dial: DialAnswer): string {
  const { where, foot, shows } = dial
  const band = bandOf(train, dial)
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
