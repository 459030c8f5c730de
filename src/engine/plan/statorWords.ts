import { fineText, shareText } from '../../language/amounts'
import { capital, listed } from '../../language/names'
import { shimText } from '../../language/recipes'
import { showsNought, towardSide } from '../../language/sides'
import { tidy } from '../../language/tidy'
import type { AcrossMove } from '../../mechanics/airGap'
import type { Stator } from '../../mechanics/stator'
import type { Train } from '../../mechanics/train'
import { statorsOf, type StatorAnswer } from './statorAnswer'

/** Every stator in sentences: how its air gaps are, and whether it goes with the rotor. */
export const statorsSaid = (train: Train, stators: readonly StatorAnswer[]): string[] =>
  stators.flatMap((answer) => {
    const { name, stator } = machineOf(train, answer)
    if (!stator) return []
    return [
      ...answer.gaps.map((gap) => `${name}, ${gap.gap}: ${gapSaid(train, stator, gap)}.`),
      `${name}: ${verdict(train, stator, answer)}`,
    ]
  })

/** What is done about the stator when its rotor lies as planned: said at the last stop point of its machine; '' where there is none. */
export function statorAfter(
  train: Train,
  body: string,
  motions: Parameters<typeof statorsOf>[1],
): string {
  const answer = statorsOf(train, motions).find(({ machine }) => machine === body)
  const { stator } = answer ? machineOf(train, answer) : {}
  if (!answer || !stator) return ''
  const largest = upTo(Math.max(...answer.gaps.map(({ planned }) => planned.part)))
  const shaft = 'with the shaft locked'
  if (answer.within)
    return ` Air gap: the stator stays; measured again, ${shaft}, a gap should be off by ${largest} of the mean; the limit is ${limitSaid(stator)}.`
  return ` Air gap: the stator goes too, ${shaft}, or one gap would be off by ${largest} of the mean; its limit is ${limitSaid(stator)}. ${centring(train, answer)} ${thenSaid(answer)}`
}

const machineOf = (train: Train, { machine }: StatorAnswer) => {
  const body = train.bodies.find(({ id }) => id === machine)
  return {
    name: body?.name ?? machine,
    ...(body?.stator && { stator: body.stator }),
  }
}

function gapSaid(train: Train, stator: Stator, gap: StatorAnswer['gaps'][number]): string {
  const { mean, outOfRound, found } = gap
  const from = stator.aim.y === 0 && stator.aim.z === 0 ? 'the shaft' : 'where it is to be'
  const round = Math.abs(outOfRound) / mean > stator.limit / 2
  return [
    `the air gap is ${fineText(mean, train.units)} in the mean, the middle of the bore ${acrossSaid(train, found, from)}: a gap is off by ${upTo(found.part)} of the mean`,
    ...(round
      ? [
          `the gaps above and below are ${fineText(2 * Math.abs(outOfRound), train.units)} ${outOfRound > 0 ? 'more' : 'less'} than those at the sides, so bore or rotor is out of round, which no move mends`,
        ]
      : []),
  ].join('; ')
}

/** "120 um up and 40 um toward the river from the shaft", "on the shaft". */
function acrossSaid(train: Train, { y, z }: AcrossMove, from: string): string {
  const said = [
    ...(showsNought(z, train)
      ? []
      : [`${fineText(Math.abs(z), train.units)} ${z > 0 ? 'up' : 'down'}`]),
    ...(showsNought(y, train)
      ? []
      : [`${fineText(Math.abs(y), train.units)} ${towardSide(train, y)}`]),
  ]
  if (said.length === 0) return from === 'the shaft' ? 'on the shaft' : from
  return `${listed(said)} from ${from}`
}

function verdict(train: Train, stator: Stator, answer: StatorAnswer): string {
  const { within, gaps } = answer
  const limit = `limit ${limitSaid(stator)}`
  const planned = gaps.some(({ move }) => move !== undefined)
  if (!planned && !within)
    return `over its ${limit} as found; what centres it follows from the plan of its rotor.`
  const goes = gaps.some(({ found, planned: then }) => found.y !== then.y || found.z !== then.z)
  const part = upTo(Math.max(...gaps.map(({ planned: then }) => then.part)))
  const rotor = goes ? `with the rotor in its new place a gap is off by ${part}, ${limit}` : limit
  return within
    ? `${rotor}; the stator stays.`
    : `${rotor}; the stator goes too. ${centring(train, answer)} ${thenSaid(answer)}`
}

/** "up to 6 %": whole percent that it does not pass. */
const upTo = (part: number): string => `up to ${Math.ceil(tidy(part * 100))} %`

const limitSaid = ({ limit, basis }: Stator): string =>
  `${shareText(limit)} (${basis ?? 'common practice, no source'})`

/** What every foot of a stator does, those alike together; without feet how far its bore goes at each place. */
function centring(train: Train, { feet, gaps }: StatorAnswer): string {
  if (feet.length === 0) {
    const said = gaps.map(
      ({ gap, move }) => `at ${gap} ${acrossMove(train, move ?? { y: 0, z: 0 })}`,
    )
    return `Its feet are not entered; its bore goes ${listed(said)}.`
  }
  const alike = new Map<string, string[]>()
  for (const { foot, shim, side } of feet) {
    const slide = showsNought(side, train)
      ? 'no slide'
      : `slide ${fineText(Math.abs(side), train.units)} ${towardSide(train, side)}`
    const does = `${shimText(train, tidy(shim))}, ${slide}`
    alike.set(does, [...(alike.get(does) ?? []), foot])
  }
  const said = [...alike].map(
    ([does, ids]) => `stator ${ids.length === 1 ? 'foot' : 'feet'} ${listed(ids)}: ${does}`,
  )
  return `${capital(said.join('; '))}.`
}

const acrossMove = (train: Train, move: AcrossMove): string => {
  const said = acrossSaid(train, move, 'the shaft')
  return said === 'on the shaft' ? 'nowhere' : said.replace(' from the shaft', '')
}

/** What the gaps should be like then. */
function thenSaid({ gaps, limit }: StatorAnswer): string {
  const said = gaps.map(({ gap, centred }) => `${upTo(centred?.part ?? 0)} at ${gap}`)
  const over = gaps.some(({ centred }) => (centred?.part ?? 0) > limit)
  return over
    ? `That leaves ${listed(said)}, over the limit: what is left no move of its feet mends.`
    : `Measured again, a gap is then off by ${listed(said)}.`
}
