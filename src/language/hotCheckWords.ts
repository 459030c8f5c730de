import type { AtStop, OpenBecause } from '../mechanics/hotCheck/atStop'
import type { Chain } from '../mechanics/hotCheck/chain'
import type { Cooling } from '../mechanics/hotCheck/cooling'
import type { GrowthFound, MachineGrowth } from '../mechanics/hotCheck/growthFound'
import type { RunningCoupling } from '../mechanics/hotCheck/running'
import type { Train } from '../mechanics/train'
import type { Micrometres, Minutes } from '../mechanics/units'
import { fineText, lengthText, shareText, toldNought, toldText } from './amounts'
import { capital, inSentence, listed } from './names'
import { lineInWords, toldWays } from './readingSets'
import { towardSide } from './sides'

/** "95 min", "2.5 h" from three hours on. */
export const minutesText = (minutes: Minutes): string =>
  minutes < 180
    ? `${Number(minutes.toPrecision(3))} min`
    : `${Number((minutes / 60).toPrecision(2))} h`

const openWords: Readonly<Record<OpenBecause, string>> = {
  'one time':
    'read once after the stop: how far it had drifted by then is not known; enter its time constant, or read at three times',
  'two times':
    'read at two times after the stop, which any time constant fits; enter it, or read at a third time',
  'any time constant':
    'the readings after the stop allow any time constant: the movement is too small, or the times lie too close or too late; enter the time constant, or read earlier and longer',
  'cooled before':
    'read so late that nearly all of the movement was over: the line at the stop cannot be told; read earlier after the stop',
}

/** How the line of a coupling at the stop comes about, in one sentence without its stop. */
export function atStopWords(train: Train, one: AtStop): string {
  const name = train.couplings[one.coupling]?.name ?? ''
  if (one.how === 'open') return `${name}: ${openWords[one.why]}`
  const times = one.times.map(({ after }) => after)
  const read = `read ${listed(times.map((after) => minutesText(after)))} after the stop`
  switch (one.how) {
    case 'at the stop':
      return `${name}: read running, or as it stopped`
    case 'bounded':
      return `${name}: ${read}, once; by its time constant it may have drifted up to ${toldText(Math.max(Math.abs(one.drift?.[0] ?? 0), Math.abs(one.drift?.[2] ?? 0)), train.units)} by then, and half of that is added, as unsure as an interval`
    case 'fitted':
      return `${name}: ${read}, and carried back to the stop: ${one.cooling ? coolingWords(one.cooling) : ''}`
  }
}

/** A time constant in two digits: nobody knows it better. */
const aboutText = (minutes: Minutes): string => minutesText(Number(minutes.toPrecision(2)))

function coolingWords({ time, between, test }: Cooling): string {
  const { low, high } = between
  const range =
    high === low
      ? 'as entered'
      : high === undefined
        ? `${aboutText(low)} or more, 19 times of 20`
        : `${aboutText(low)} to ${aboutText(high)}, 19 times of 20`
  const constant =
    time === undefined
      ? `a straight line, time constant ${range}`
      : `time constant ${aboutText(time)} (${range})`
  return test && test.squares > test.limit
    ? `${constant}; the readings do not follow one cooling (sum of squares ${test.squares.toFixed(1)}, up to ${test.limit.toFixed(1)} is allowed): one of them is wrong, or it was moved or heated on the way`
    : constant
}

/**
 * How a coupling ran beside what was expected of it, in one sentence without its stop.
 * @param judged whether it is engaged in that state
 */
export function runningWords(train: Train, one: RunningCoupling, judged = true): string {
  const coupling = train.couplings[one.coupling]
  if (!coupling) return ''
  const said = ({ y, z, sy, sz }: RunningCoupling['line']) =>
    lineInWords(train, coupling, toldWays({ y, z }), toldWays({ y: sy, z: sz }))
  const beyond = (['y', 'z', 'sy', 'sz'] as const).map((key) =>
    one.apart[key] === 0 ? 0 : Math.abs(one.apart[key]) / one.u[key],
  )
  const most = Math.max(...beyond)
  const { low, high } = one.reached
  return `${coupling.name} ran with ${said(one.line)}; expected was ${said(one.expected)}. Running less expected: ${said(one.apart)} (${sigmasText(most)} at most). ${judged ? `It used ${shareText(one.result.share)} of its tolerance, ${shareText(low)} to ${shareText(high)} 19 times of 20; ${shareText(one.expectedShare)} was expected` : 'Its clutch is open in this state: it is not judged'}`
}

/** How much of its tolerance a coupling used as it ran. */
export const ranAt = (name: string, share: number): string =>
  `${name} ran at ${shareText(share)} of its tolerance`

/** How far a machine moved beside its growth, in one sentence without its stop. */
export function movedWords(train: Train, { machine, rows }: MachineGrowth): string {
  const name = train.machines[machine]?.name ?? ''
  return `${capital(inSentence(name))}: ${rows.map((row) => rowWords(train, row)).join('; ')}`
}

/** "rise at 1200 mm 95 µm where 60 µm is entered, 35 µm more (2.3 u)". */
function rowWords(train: Train, row: GrowthFound): string {
  const { units } = train
  const { quantity, axis, x, entered, found, sigmas } = row
  const place = `at ${lengthText(x, units)}${axis === 'both' ? '' : `, ${axis} axis`}`
  const by = found - entered
  const said = (value: Micrometres) => grownText(train, quantity, value)
  const more =
    quantity === 'rise' ? `${fineText(Math.abs(by), units)} ${by < 0 ? 'less' : 'more'}` : said(by)
  return `${quantity === 'rise' ? 'rise' : 'sideways'} ${place} ${said(found)} where ${said(entered)} is entered, ${quantity === 'rise' ? more : `${more} beyond that`} (${sigmasText(sigmas)})`
}

/** How far an axis goes: a rise with its sign, sideways with the side that it goes to. */
export const grownText = (
  train: Train,
  quantity: GrowthFound['quantity'],
  value: Micrometres,
): string =>
  quantity === 'rise' || toldNought(value, train.units)
    ? toldText(value, train.units)
    : `${toldText(Math.abs(value), train.units)} ${towardSide(train, value)}`

const sigmasText = (sigmas: number): string =>
  sigmas > 99 ? 'over 99 u' : `${sigmas.toFixed(1)} u`

/** What the machines of a chain are told against, in one sentence without its stop; undefined where all was measured. */
export function againstWords(train: Train, { held }: Chain): string | undefined {
  const name = (machine: number) => inSentence(train.machines[machine]?.name ?? '')
  const said = (['z', 'y'] as const).map((way) => {
    const { by, machine } = held[way]
    return by === 'measured' ? '' : `${by === 'tilt' ? 'the tilt of ' : ''}${name(machine)}`
  })
  const [up = '', side = ''] = said
  const parts =
    up === side
      ? [up].filter((part) => part !== '')
      : [...(up === '' ? [] : [`up and down ${up}`]), ...(side === '' ? [] : [`sideways ${side}`])]
  return parts.length === 0
    ? undefined
    : `couplings tell how machines moved against one another and no more: ${listed(parts)} is taken to have moved as its growth says, and the others are told against it`
}

/** What no reading after a stop shows; common practice, no source. */
export const notInReadings =
  'what goes the moment the load or the speed goes is not in readings after a stop: lift of gears and oil films, forces of pipes under pressure'
