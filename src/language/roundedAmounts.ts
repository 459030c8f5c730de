import { tol } from '../mechanics/tolerances'
import { micrometresPer, slopeSign, toLength } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { fineText, fineDecimals, underDigits } from './amounts'

/** An amount that is enough is told rounded up, one that is needed at least rounded down: both stay true. */
export type RoundTo = 'up' | 'down'

const stepped = (value: number, step: number, round: RoundTo): number =>
  (round === 'up' ? Math.ceil(value / step - tol.digit) : Math.floor(value / step + tol.digit)) *
  step

/** The step of two digits that say something. */
const twoDigits = (value: number): number => 10 ** (Math.floor(Math.log10(value)) - 1)

/** Before an amount that is needed at least; one smaller than people read says so itself. */
export const atLeast = (amount: string): string =>
  amount.startsWith(under) ? amount : `at least ${amount}`

const under = 'under '

/** A length of `um` micrometres in the digits that people read, never rounded to the wrong side. */
export function fineAmount(um: number, round: RoundTo, { units }: Pick<Train, 'units'>): string {
  const step = micrometresPer[units.fine] / 10 ** fineDecimals[units.fine]
  const value = stepped(um, step, round)
  if (value > 0) return fineText(value, units)
  // less than one step, rounded down, would read as nothing
  return um > 0 ? underDigits(units) : fineText(0, units)
}

/** A slope of `mrad` milliradians, two digits. */
export const slopeAmount = (
  mrad: number,
  round: RoundTo,
  { units }: Pick<Train, 'units'>,
): string => `${twoDigitText(mrad, round)} ${slopeSign(units)}`

/** A length of `mm` millimetres, two digits. */
export const lengthAmount = (mm: number, round: RoundTo, { units }: Pick<Train, 'units'>): string =>
  `${twoDigitText(toLength(mm, units), round)} ${units.length}`

function twoDigitText(value: number, round: RoundTo): string {
  if (!(value > 0)) return '0'
  const told = stepped(value, Math.max(tol.finestEntered, twoDigits(value)), round)
  return told > 0 ? String(Number(told.toPrecision(6))) : `${under}${tol.finestEntered}`
}

/** Decimals that tell two shares apart at most. */
const mostDecimals = 6

/**
 * The best share of tolerance that can be reached, in percent: rounded up everywhere, so that one share reads alike on
 * every face and can be had when it is entered as it is told.
 * @param asked the share beside which it is told, to be told apart from it with as many decimals as that takes
 */
export const bestShareText = (share: number, asked = NaN): string =>
  shareAt(share, tellingApart(share, asked))

/** The same in a sentence: "105 % of tolerance; 70 % was asked for". */
export function bestBesideAsked(share: number, asked: number): string {
  const decimals = tellingApart(share, asked)
  return `${shareAt(share, decimals)} of tolerance; ${askedText(asked, decimals)} was asked for`
}

/** The share asked for, in percent, with as many decimals as it takes to be told below another one. */
export function askedBelow(asked: number, other: number): string {
  let decimals = 0
  while (decimals < mostDecimals && askedText(asked, decimals) === askedText(other, decimals))
    decimals++
  return askedText(asked, decimals)
}

/** Decimals with which a share over the one asked for is told over it, and by no more than twice of what it is. */
function tellingApart(share: number, asked: number): number {
  const over = (share - asked) * 100
  const says = (decimals: number): boolean => {
    const told = upTo(share, decimals) - asked * 100
    return told > 0 && told <= 2 * over
  }
  let decimals = 0
  if (over > 0) while (decimals < mostDecimals && !says(decimals)) decimals++
  return decimals
}

/** In percent. */
const upTo = (share: number, decimals: number): number =>
  stepped(share * 100, 10 ** -decimals, 'up')

const shareAt = (share: number, decimals: number): string =>
  `${upTo(share, decimals).toFixed(decimals)} %`

const askedText = (asked: number, decimals: number): string =>
  `${(asked * 100).toFixed(decimals)} %`
