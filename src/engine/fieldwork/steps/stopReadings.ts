import { fineDecimals, gapDecimals, gapDigits, signedDigits } from '../../../language/amounts'
import { hourName } from '../../../language/hours'
import { setName } from '../../../language/readingSets'
import { sideName } from '../../../language/sides'
import { signed } from '../../../language/signed'
import { capital } from '../../../language/names'
import { tidy } from '../../../language/tidy'
import type { Band } from '../../../mechanics/misalignment/bands'
import type { Coupling, ReadingSet, Train } from '../../../mechanics/train'
import { fineSign, slopeSign } from '../../../mechanics/units'
import type { ExpectedAnswer } from '../../plan/answer'
import type { DialAnswer, GapAnswer, StepAnswer } from './answer'
import { watchPlace } from './dialWords'

/** What is read at a stop point under one rig: a set of a coupling, or the dials that must stay. */
export interface StopGroup {
  readonly key: string
  readonly name: string
  /** Of a coupling's set, or of its gap, which is no set. */
  readonly coupling?: string
  readonly set?: number
  /** "Not to be judged yet: the motor still has to move up to 0.30 mm."; empty where it can be. */
  readonly notYet: string
  readonly readings: readonly StopReading[]
}

/** One number to be read there. */
export interface StopReading {
  readonly key: string
  /** Where in its set it is kept; of a dial that must stay, where that stands. */
  readonly at: StopPlace
  /** "top", "toward the lake", "offset up". */
  readonly name: string
  readonly unit: string
  /** Digits with their sign: "+31". */
  readonly should: string
  /** "+19 to +43"; empty where a dial is set to 0. */
  readonly good: string
  /** The same as numbers of the document's unit, rounded as they are shown; none where a dial is set to 0. */
  readonly band?: Band
  readonly decimals: number
}

type StopPlace =
  | { readonly kind: 'hour'; readonly hour: number }
  | { readonly kind: 'line'; readonly what: 'offset' | 'slope'; readonly way: 'y' | 'z' }
  /** The gap between the shaft ends of its coupling. */
  | { readonly kind: 'gap' }
  | { readonly kind: 'stays'; readonly where: string }

/**
 * Everything that is read where a step stops, in the order in which the couplings and sets stand in the train. After a
 * move along the train that is the gap: its bolts are loose and it slides on, so that sets of dials would judge nothing.
 */
export function stopReadings(train: Train, step: StepAnswer): StopGroup[] {
  if (step.hold === undefined && step.kind !== 'read') return []
  const dialed = step.kind === 'axial' ? [] : step.expected
  const sets = train.couplings.flatMap((coupling) => [
    ...dialed.flatMap((entry): StopGroup[] => {
      const set = coupling.found[entry.set]
      if (entry.coupling !== coupling.id || set?.used !== true) return []
      const judged = step.judge.find((one) => one.coupling === coupling.id)
      return [
        {
          key: `${coupling.id} ${entry.set}`,
          name: `${capital(coupling.name)}: ${setName(train, set, entry.set)}`,
          ...{ coupling: coupling.id, set: entry.set },
          notYet: judged?.judge === 'not yet' ? `Not to be judged yet: ${judged.why}.` : '',
          readings: setReadings(train, set, entry),
        },
      ]
    }),
    ...(step.gaps ?? []).flatMap((gap) =>
      gap.coupling === coupling.id ? [gapGroup(train, coupling, gap)] : [],
    ),
  ])
  const stay = step.dials.filter(({ foot }) => foot === undefined)
  if (stay.length === 0) return sets
  const dials: StopGroup = {
    ...{ key: 'dials', name: 'Dials that watch', notYet: '' },
    readings: stay.map((dial) => dialReading(train, dial)),
  }
  return [...sets, dials]
}

/** The gap of a coupling, which is measured beside its sets. */
const gapGroup = (train: Train, { id, name }: Coupling, gap: GapAnswer): StopGroup => ({
  ...{ key: `${id} gap`, coupling: id, notYet: '' },
  name: `${capital(name)}: gap between the shaft ends`,
  readings: [gapReading(train, gap)],
})

/** A gap as it should be, in the length unit of the document. */
export function gapReading(train: Train, { coupling, should, good }: GapAnswer): StopReading {
  const { units } = train
  const decimals = gapDecimals[units.length]
  return {
    ...told((value) => gapDigits(value, units), should, good, units.length, decimals),
    ...{ key: `${coupling} gap`, at: { kind: 'gap' }, name: 'gap, cold' },
  }
}

/** The readings of one set as they are expected, each with where it is good. */
export function setReadings(train: Train, set: ReadingSet, entry: ExpectedAnswer): StopReading[] {
  if ('readings' in entry)
    return entry.readings.map(([hour, value], k) => {
      const bare = set.kind === 'gap'
      const [low, high] = entry.good?.[k] ?? [value, value]
      return {
        ...fine(train, value, high > low ? [low, high] : undefined, bare),
        key: `${entry.coupling} ${entry.set} ${hour}`,
        at: { kind: 'hour' as const, hour },
        name: hourName(train, hour),
      }
    })
  return (['offset', 'slope'] as const).flatMap((what) =>
    (['z', 'y'] as const).map((way): StopReading => {
      const value = entry[what][way]
      const band = entry.good?.[what][way] ?? [value, value]
      const told = what === 'offset' ? fine(train, value, band) : slope(train, value, band)
      return {
        ...told,
        key: `${entry.coupling} ${entry.set} ${what} ${way}`,
        at: { kind: 'line', what, way },
        name: `${what}, + is ${way === 'z' ? 'up' : sideName(train, 1)}`,
      }
    }),
  )
}

const dialReading = (train: Train, { where, shows, good }: DialAnswer): StopReading => ({
  ...fine(train, shows, good ?? [shows, shows]),
  key: where,
  at: { kind: 'stays', where },
  name: watchPlace(where),
})

type Told = Pick<StopReading, 'unit' | 'should' | 'good' | 'band' | 'decimals'>

function fine(train: Train, value: number, band: Band | undefined, bare = false): Told {
  const digits = (one: number) => {
    const text = signedDigits(tidy(one), train.units)
    return bare ? text.replace(/^\W/, '') : text
  }
  const decimals = fineDecimals[train.units.fine]
  return told(digits, value, band, fineSign[train.units.fine], decimals)
}

function slope(train: Train, value: number, band: Band): Told {
  const digits = (one: number) => {
    const text = tidy(one).toFixed(2)
    return /[1-9]/.test(text) ? signed(text) : '0'
  }
  return told(digits, value, band, slopeSign(train.units), 2)
}

function told(
  digits: (value: number) => string,
  value: number,
  band: Band | undefined,
  unit: string,
  decimals: number,
): Told {
  const [low, high] = [band?.[0] ?? value, band?.[1] ?? value].map(digits)
  if (!band || low === undefined || high === undefined)
    return { unit, should: digits(value), good: '', decimals }
  const number = (text: string) => Number(text.replace('−', '-'))
  return {
    ...{ unit, should: digits(value), good: `${low} to ${high}`, decimals },
    band: [number(low), number(high)],
  }
}

/** A reading beside its band, in digits as people read them: who reads the last good digit is inside. */
export function judgeReading(
  { band, decimals, unit }: Pick<StopReading, 'band' | 'decimals' | 'unit'>,
  value: number,
): { readonly inside: boolean; readonly words: string } {
  const [low, high] = band ?? [0, 0]
  const read = Number(value.toFixed(decimals))
  const by = Math.max(low - read, read - high)
  if (by <= 0) return { inside: true, words: band ? 'inside' : 'set to 0 here' }
  const digits = by.toFixed(decimals)
  // by less than the digits show it is inside: both are rounded alike
  if (!/[1-9]/.test(digits)) return { inside: true, words: 'inside' }
  return {
    inside: false,
    words: band
      ? `outside by ${digits} ${unit}, ${read > high ? 'above' : 'below'}`
      : 'set the dial to 0 here, then read the others',
  }
}
