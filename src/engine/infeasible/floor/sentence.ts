import { keptInWords } from '../../../language/keptWords'
import { bestShareText } from '../../../language/roundedAmounts'
import { fineText, lengthText, slopeText } from '../../../language/amounts'
import type { Train } from '../../../mechanics/train'
import { wayInWords } from '../../../language/sides'
import { footLimitWords } from '../../../language/footLimitWords'
import { circleToward, restraintToward } from '../../plan/bindingLimit'
import { limitSides } from '../../../mechanics/footLimits'
import { capital, inSentence, listed } from '../../../language/names'
import type { Apart } from './apart'
import type { FloorCause } from './floorCause'
import { keptAloneInWords } from './keptAlone'
import type { LimitWeight } from './dualWeights'

/** A pair of states explains a floor when it alone leaves at least this part of it. */
const almostAll = 0.98
/** Pulls of less weight than this are not named. */
const lightest = 0.05
/** Most bodies named as being at their limits. */
const mostNamed = 3

/** Why the floor is where it is, in one sentence; what is kept free of the limits is told where it counts. */
export function floorSentence(train: Train, cause: FloorCause): string {
  const kept = keptInWords(train)
  const said = causeSentence(train, cause)
  return kept === '' || cause.kind === 'none' || cause.kind === 'kept'
    ? said
    : `${said.replace(/\.$/, '')}; that counts ${kept} kept free of every limit.`
}

function causeSentence(train: Train, cause: FloorCause): string {
  switch (cause.kind) {
    case 'none':
      return 'Nothing is in the way: every coupling can be put right in every state at once.'
    case 'kept':
      return cause.kept
        ? `${capital(pulled(train, cause))} comes to ${bestText(cause.floor)} at best: ${keptAloneInWords(train, cause.kept)}.`
        : ''
    case 'still':
      return `${capital(pulled(train, cause))} lies between machines that stay, and stays at ${bestText(cause.floor)}.`
    case 'states':
      return cause.apart ? statesSentence(train, cause, cause.apart) : ''
    case 'teeth':
      return `${capital(pulled(train, cause))} comes to ${bestText(cause.floor)} at best: ${teethInWords(train, cause)}.`
    case 'machines':
      return `${capital(pullsInWords(train, cause))} come to ${bestShareText(cause.floor)} of tolerance at best: the machines between them cannot serve one without losing the other.`
    case 'limits':
      return `${capital(pulled(train, cause))} comes to ${bestText(cause.floor)} at best: ${propsInWords(train, cause.props)}.`
  }
}

/** "84 % of its tolerance", told apart from the share that was asked for. */
export const bestText = (share: number, asked?: number): string =>
  `${bestShareText(share, asked)} of its tolerance`

/** The coupling that pulls most, with its state in brackets. */
export function pulled(train: Train, { pulls }: Pick<FloorCause, 'pulls'>): string {
  const first = pulls[0]?.meaning
  if (!first) return 'a coupling'
  return `${couplingName(train, first.coupling)} (${stateName(train, first.state)})`
}

/** "the teeth of motor to blower must run at their least angle". */
export function teethInWords(train: Train, { teeth = [] }: Pick<FloorCause, 'teeth'>): string {
  const names = [...new Set(teeth.map(({ coupling }) => couplingName(train, coupling)))]
  return `the teeth of ${listed(names)} must run at their least angle, on the sides of this plan`
}

function statesSentence(train: Train, cause: FloorCause, apart: Apart): string {
  const coupling = couplingName(train, apart.coupling)
  const [first, second] = apart.states.map((state) => stateName(train, state))
  if (apart.share >= cause.floor * almostAll)
    return `${capital(`${first} and ${second}`)} pull ${coupling} apart by ${apartText(train, apart)}; no shim can close that.`
  const states = new Map<number, number>()
  for (const { meaning, weight } of cause.pulls)
    if (meaning.coupling === apart.coupling)
      states.set(meaning.state, (states.get(meaning.state) ?? 0) + weight)
  const names = [...states]
    .filter(([, weight]) => weight >= lightest)
    .map(([s]) => stateName(train, s))
  return `${capital(listed(names))} together leave ${coupling} no better place than ${bestText(cause.floor)}, ${first} and ${second} alone by ${apartText(train, apart)}; no shim can close that.`
}

function apartText(train: Train, { what, value }: Apart): string {
  switch (what) {
    case 'offset':
      return `${fineText(value, train.units)} of offset`
    case 'gap':
    case 'stretch':
    case 'float':
      return `${lengthText(value, train.units)} of gap`
    case 'angle':
      return `${slopeText(value, train.units)} of angle`
    case 'left plane':
    case 'right plane':
      return `${slopeText(value, train.units)} at its ${what}`
  }
}

/** "motor to gear (hot summer) and gear to compressor (turndown)". */
function pullsInWords(train: Train, { pulls }: FloorCause): string {
  const weights = new Map<string, number>()
  for (const { meaning, weight } of pulls) {
    const name = `${couplingName(train, meaning.coupling)} (${stateName(train, meaning.state)})`
    weights.set(name, (weights.get(name) ?? 0) + weight)
  }
  const names = [...weights].filter(([, weight]) => weight >= lightest).map(([name]) => name)
  return listed(names.slice(0, mostNamed))
}

/** What keeps the machines from going further, those first that matter most. */
export function propsInWords(train: Train, props: readonly LimitWeight[]): string {
  const said = new Map<string, { price: number; props: LimitWeight[] }>()
  for (const prop of props) {
    const { meaning, side } = prop
    const point = meaning.fact === 'restraint' ? ` ${meaning.restraint} ${meaning.way}` : ''
    const key = `${meaning.fact} ${side} ${meaning.body}${point}`
    const known = said.get(key) ?? { price: 0, props: [] }
    said.set(key, { price: known.price + prop.price, props: [...known.props, prop] })
  }
  return listed(
    [...said.values()]
      .sort((a, b) => b.price - a.price)
      .slice(0, mostNamed)
      .map(({ props: alike }) => propInWords(train, alike)),
  )
}

function propInWords(train: Train, props: readonly LimitWeight[]): string {
  const [first] = props
  if (!first) return ''
  const { meaning, side } = first
  const body = train.bodies[meaning.body]
  const name = inSentence(body?.name ?? '')
  if ('foot' in meaning && meaning.fact !== 'shim') {
    const words = footLimitWords[limitSides[meaning.fact][side]]
    const way = words.presses === 'round' ? towardInWords(train, props) : ''
    return `${name} ${words.floor(way === '' ? '' : ` ${way}`)}`
  }
  switch (meaning.fact) {
    case 'tilt':
      return `${name} may be pitched no further`
    case 'restraint': {
      const point = body?.restraints[meaning.restraint]?.id ?? ''
      return `${point} of ${name} may be carried no further ${wayInWords(train, restraintToward[meaning.way][side])}`
    }
    case 'shim':
    case 'slide':
    case 'axial':
      return `${name} may not move so`
  }
}

/** The way in which feet press on their holes; empty where they press in different ways. */
export function towardInWords(train: Train, props: readonly LimitWeight[]): string {
  const sum = (way: 'u' | 'w') =>
    props.reduce((total, { toward }) => total + (toward?.[way] ?? 0), 0)
  const [u, w] = [sum('u'), sum('w')]
  const all = props.reduce((total, { price }) => total + price, 0)
  if (Math.hypot(u, w) < all / 2) return ''
  return wayInWords(train, circleToward({ u, w }))
}

/** The name of a coupling by its index. */
const couplingName = (train: Train, index: number): string => train.couplings[index]?.name ?? ''
/** The name of a state by its index. */
const stateName = (train: Train, index: number): string => train.states[index]?.name ?? ''
