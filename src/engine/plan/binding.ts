import { once } from '../../mechanics/once'
import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import type { Solver } from '../lp/solver'
import { reach, programUnit, type Program } from '../lp/program'
import { costWithRoom, loosen, roomAtPrice } from '../lp/relax'
import { RoomPaths } from '../lp/roomPaths'
import type { BindingAnswer } from './answer'
import { bindingGroups, type BindingGroup } from './bindingGroups'
import { rowGroup } from './rowGroup'
import { solveRounds } from '../lp/rounds'
import type { CostAnswer, LeastOfPart } from './solvePlan'
import { bindingLimit } from './bindingLimit'

/** A price counts as holding while every unit of room saves at least this part of it on average. */
const holding = 0.99
/** Room tried where the duals promise a saving that the first step does not keep (program units). */
const firstStep = 0.5
/** The shortest step tried: below it the solver's last digits would show in the price. */
const lastStep = 0.02

/**
 * Every limit that the least cost leans on, dearest first: what one more unit of room would save,
 * and for how much room that holds. Duals price a limit to one side only and, where several limits
 * meet, may promise more than loosening this one alone gives; so each price is tried out. Where feet of
 * a row are at the same limit and one gives nothing alone, the row is told as one.
 */
export function bindingOf(
  train: Train,
  parts: readonly LeastOfPart[],
  solver: Solver,
): BindingAnswer[] {
  return inWords(
    train,
    parts.flatMap((part) => pricesOf(train, part, solver)),
  )
}

/** A limit that binds, with its price tried out (program units). */
export interface Priced {
  readonly group: BindingGroup
  readonly price: number
  readonly room: number
}

/** The prices of one part's limits; a limit touches one part alone. */
export function pricesOf(train: Train, part: LeastOfPart, solver: Solver): Priced[] {
  const { program, least } = part
  const paths = new RoomPaths(program, least, solver)
  const price = (group: BindingGroup): Priced[] => {
    const priced = tried(program, least, group, paths, solver)
    return priced ? [{ group, ...priced }] : []
  }
  const groups = bindingGroups(train, program, least)
  const alone = new Map(groups.map((group) => [group, price(group)]))
  const rows = groups.flatMap((group): BindingGroup[] => {
    const row =
      alone.get(group)?.length === 0 ? rowGroup(train, program, least, group, groups) : undefined
    return row ? [row] : []
  })
  const told = new Set<string>()
  const together = rows.filter((row) => {
    const key = JSON.stringify([row.rows, row.circles, row.side])
    return !told.has(key) && told.add(key)
  })
  return [...[...alone.values()].flat(), ...together.flatMap(price)]
}

/** Prices as they are told, dearest first. */
export const inWords = (train: Train, prices: readonly Priced[]): BindingAnswer[] =>
  [...prices]
    .sort((a, b) => b.price * b.group.perUnit - a.price * a.group.perUnit)
    .map(({ group, price, room }) => answer(train, group, price, room))

/** Followed from the least cost where that tells; asked of the solver where not. */
function tried(
  program: Program,
  least: CostAnswer,
  group: BindingGroup,
  paths: RoomPaths,
  solver: Solver,
): { price: number; room: number } | undefined {
  const loose = once(() => loosen(program, group))
  const { share } = least
  const cost = least.answer.objective
  const roomFor = (price: number): number | undefined => {
    const cap = cost * (1 + tol.lastDigits) + tol.dust
    const followed = paths.roomFor(group, cap, price * holding, reach)
    if (followed !== undefined) return followed
    const written = roomAtPrice(loose(), share, cap, price * holding, reach)
    const outcome = solveRounds(loose(), written, least.cuts, solver)
    return outcome.kind === 'optimal' ? outcome.answer.columns.at(-1) : undefined
  }
  const promised = roomFor(group.price)
  if (promised !== undefined && promised > tol.noPriceRoom)
    return { price: group.price, room: promised }
  const savedAUnit = (room: number): number => {
    const followed = paths.costWith(group, room)
    if (followed !== undefined) return (cost - followed) / room
    const step = solveRounds(loose(), costWithRoom(loose(), share, room), least.cuts, solver)
    return step.kind === 'optimal' ? (cost - step.answer.objective) / room : 0
  }
  let price = savedAUnit(firstStep)
  if (price < tol.noSaving) return undefined
  // Where the saving ends within the step, a shorter one saves more a unit.
  for (let step = firstStep / 2; step >= lastStep; step /= 2) {
    const nearer = savedAUnit(step)
    if (nearer * holding <= price) break
    price = nearer
  }
  const room = roomFor(price)
  return room === undefined ? undefined : { price, room }
}

const answer = (train: Train, group: BindingGroup, price: number, room: number): BindingAnswer => ({
  limit: bindingLimit(train, group),
  price: price * group.perUnit * programUnit,
  quantity: group.quantity,
  upTo: room >= reach * 0.999 ? null : room / group.perUnit,
})
