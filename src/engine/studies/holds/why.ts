import { chanceOf } from '../../chance/interval'
import { chanceText } from '../../../language/chanceText'
import { toldText } from '../../../language/amounts'
import type { Train } from '../../../mechanics/train'
import { bestShareText, fineAmount } from '../../../language/roundedAmounts'
import type { FloorCause } from '../../infeasible/floor/floorCause'
import { floorCause } from '../../infeasible/floor/floorReason'
import { keptAloneInWords } from '../../infeasible/floor/keptAlone'
import {
  propsInWords,
  pulled,
  bestText,
  towardInWords,
  teethInWords,
} from '../../infeasible/floor/sentence'
import type { LimitWeight } from '../../infeasible/floor/dualWeights'
import { noRoomAt } from '../../plan/sentence'
import { footLimitWords } from '../../../language/footLimitWords'
import { limitSides } from '../../../mechanics/footLimits'
import { inSentence, listed, namesOfThose } from '../../../language/names'
import { effortOf, type HoldComparison } from './compare'
import type { HoldSolver } from './holdSolver'
import { lackOf, type MissingRoom } from './lack'
import { equal, fallsShort } from './rank'
import type { HoldRow } from './row'

/** "the gear and the motor", "nothing". */
function fixedInWords(train: Train, held: readonly string[]): string {
  const names = namesOfThose(train.bodies, held)
  return names.length === 0 ? 'nothing' : listed(names)
}

/** One sentence on why a choice is not the first; empty for the first itself. */
export function whyNot(
  solver: HoldSolver,
  row: HoldRow,
  { sameAs, beatenBy, impliedBy }: HoldComparison,
  best: HoldRow,
): string {
  const { train } = solver
  if (row === best) return ''
  if (row.fault !== undefined) return `no plan is shown: ${row.fault}`
  if (impliedBy)
    return `has more fixed than ${fixedInWords(train, impliedBy)}, which alone is impossible`
  if (row.status === 'impossible') return whyImpossible(solver, row)
  if (sameAs) return `has the same plan as with ${fixedInWords(train, sameAs)} fixed`
  const than = beatenBy ? `; ${fixedInWords(train, beatenBy)} fixed is no worse on any count` : ''
  return `${fallingShort(train, row)}${difference(train, row, best)}${edge(row)}${than}`
}

function whyImpossible(solver: HoldSolver, row: HoldRow): string {
  const { train } = solver
  const held = new Set(row.held)
  const choice = train.bodies.map(({ id }) => held.has(id))
  const setting = solver.setting(choice)
  const cause = floorCause(setting, solver.free(choice))
  if (!cause) return 'no move reaches what was asked for'
  const lead = `with ${fixedInWords(train, row.held)} fixed, ${pulled(train, cause)} comes to ${bestText(cause.floor, train.plan.share)} at best`
  const tail = tailOf(train, cause, lackOf(setting, cause))
  return tail === '' ? lead : `${lead}: ${tail}`
}

function tailOf(train: Train, cause: FloorCause, lack: MissingRoom | undefined): string {
  switch (cause.kind) {
    case 'kept':
      return cause.kept ? keptAloneInWords(train, cause.kept) : ''
    case 'states':
      return 'its states alone pull it so far apart'
    case 'still':
      return 'both its machines stay'
    case 'teeth':
      return teethInWords(train, cause)
    case 'machines':
      return cause.pulls.length > 1 ? 'the machines that are free cannot serve all couplings' : ''
    case 'limits':
      return lack ? lackInWords(train, lack) : propsInWords(train, cause.props)
    case 'none':
      return ''
  }
}

/** "the turbine and the low stage lack 0.41 mm of clearance at their bolts toward the crane bay". */
function lackInWords(train: Train, { props, amount }: MissingRoom): string {
  const bodies = [...new Set(props.map(({ meaning }) => meaning.body))]
  const owners = listed(bodies.map((b) => inSentence(train.bodies[b]?.name ?? '')))
  const one = bodies.length === 1
  const places = new Set(props.map((prop) => placeInWords(train, prop, one)))
  const toward = props.every(({ meaning }) => meaning.fact === 'hole')
    ? towardInWords(train, props)
    : ''
  const size = `${fineAmount(amount, 'up', train)} ${listed([...places]).replaceAll(' and of room', ' and')}`
  return `${owners} ${one ? 'lacks' : 'lack'} ${size}${toward === '' ? '' : ` ${toward}`}`
}

function placeInWords(train: Train, { meaning, side }: LimitWeight, one: boolean): string {
  if ('foot' in meaning && meaning.fact !== 'shim') {
    const { lacks } = footLimitWords[limitSides[meaning.fact][side]]
    return lacks?.(one ? 'its' : 'their') ?? 'of room'
  }
  switch (meaning.fact) {
    case 'restraint': {
      const point = train.bodies[meaning.body]?.restraints[meaning.restraint]
      return `of room at ${point?.id ?? 'a restraint'}`
    }
    case 'shim':
    case 'slide':
    case 'axial':
    case 'tilt':
      return 'of room'
  }
}

/** "comes to 63 % at best and "; empty where the chance asked for is reached, or none is asked for. */
function fallingShort(train: Train, row: HoldRow): string {
  const draws = train.plan.sure?.draws
  if (!fallsShort(row) || draws === undefined || !row.wanted) return ''
  const chance = chanceText(chanceOf(row.wanted.all * draws, draws))
  return `comes to ${chance}${row.wanted.looked === false ? ' as it is' : ' at best'} and `
}

/** What a choice costs more than the best, and what it saves. */
function difference(train: Train, row: HoldRow, best: HoldRow): string {
  const text = (value: number) => toldText(value, train.units)
  const [moves, effort] = [
    (row.cost ?? 0) - (best.cost ?? 0),
    effortOf(train, row) - effortOf(train, best),
  ]
  const sameMoves = equal(row.cost ?? 0, best.cost ?? 0)
  const sameEffort = equal(effortOf(train, row), effortOf(train, best))
  const extra = train.bodies.filter(
    ({ id }) => row.disturbed.includes(id) && !best.disturbed.includes(id),
  )
  const names =
    extra.length === 0 ? '' : ` and disturbs ${listed(extra.map((b) => inSentence(b.name)))}`
  const price = sameEffort
    ? ''
    : `, ${text(Math.abs(effort))} ${effort > 0 ? 'more' : 'less'} effort`
  if (sameMoves && sameEffort) {
    if (row.disturbed.length > best.disturbed.length) return `costs the same${names}`
    if (!equal(row.floor ?? 0, best.floor ?? 0))
      return `costs the same, but the best it can reach is ${bestShareText(row.floor ?? 0)}`
    return 'costs the same'
  }
  const lead = sameMoves
    ? 'costs the same in moves'
    : `costs ${text(Math.abs(moves))} ${moves > 0 ? 'more' : 'less'} in moves`
  return `${lead}${names}${price}`
}

const edge = (row: HoldRow): string => (noRoomAt(row.floor ?? 0) ? '; no room for error' : '')
