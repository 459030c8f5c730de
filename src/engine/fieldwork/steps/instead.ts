import { fineText } from '../../../language/amounts'
import type { Train } from '../../../mechanics/train'
import { inSentence, listed } from '../../../language/names'
import type { Action } from './action'
import { largestMove, scaled } from './moves'
import { groupsOf, mostPortions, type OrderedAction } from './search'
import { stopIn, portionTurns, wholeMoves, type Stop } from './stop'

/** What would keep a limit that a step passes: a stop, another order, portions, or both moves at once. */
export interface Instead {
  readonly words: string
  readonly stop?: Stop
}

const nouns = {
  axial: 'the move along the train of',
  vertical: 'the shimming of',
  lateral: 'the slide of',
}

/** "the slide of the pump". */
const moveName = (train: Train, { kind, body }: Action): string =>
  `${nouns[kind]} ${inSentence(train.bodies[body]?.name ?? '')}`

/**
 * Tells of any step of an order what would keep the limits that it passes.
 * @param foundPasses true where the order that the rules give passes a limit too
 */
export function insteadOf(
  train: Train,
  placed: readonly OrderedAction[],
  foundPasses: boolean,
): (at: number) => Instead {
  const actions = placed.map(({ action }) => action)
  const groups = groupsOf(train, actions).map((group) => ({ group, together: memo(group) }))
  function memo(group: readonly Action[]): () => Instead {
    let known: Instead | undefined
    return () => (known ??= togetherOf(train, wholeMoves(group)))
  }
  return (at) => {
    const action = actions[at]
    if (!action) throw new RangeError(`no step ${at}`)
    const found = stopIn(train, actions, at)
    if (found === 'passed before')
      return { words: 'A step before this one passes it already: see what would keep it there.' }
    const words = found && stopWords(train, actions, action, found)
    const rules = 'The order that the rules give keeps it'
    if (!foundPasses)
      return found && words !== undefined
        ? { words: `${words} ${rules} too.`, stop: found }
        : {
            words: `${rules}: take that, or stop short of the limit and do the other moves first.`,
          }
    const of = groups.find(({ group }) => group.includes(action))
    const together = of?.together()
    if (together?.stop) return together
    if (found && words !== undefined) return { words, stop: found }
    return together ?? { words: 'No order of single moves keeps it.' }
  }
}

/** Where no order of a group's moves keeps every limit: turns in many portions, or all of them at once. */
function togetherOf(train: Train, group: readonly Action[]): Instead {
  const turns = portionTurns(train, group)
  if (turns) {
    const { pieces, moves } = turns
    return {
      words: `No order of single moves keeps it in ${mostPortions} portions: let ${listed(moves.map((move) => moveName(train, move)))} take turns, a stop after every ${ordinal(pieces)} of each. That keeps every limit.`,
      stop: { part: 1 / pieces, then: [], pieces },
    }
  }
  const names = [...new Set(group.map(({ body }) => body))].map((b) =>
    inSentence(train.bodies[b]?.name ?? ''),
  )
  return {
    words:
      names.length > 1
        ? `No order of single moves keeps it: move ${listed(names)} in step with each other, in small portions.`
        : `No order of single moves keeps it: make the moves of ${listed(names)} at once, in small portions.`,
  }
}

function stopWords(
  train: Train,
  actions: readonly Action[],
  action: Action,
  { part, then }: Stop,
): string {
  const others = listed(
    then.map((id) => {
      const other = actions.find((one) => one.id === id)
      return other ? moveName(train, other) : id
    }),
  )
  if (part === 0) return `Make ${others} before it. That keeps it.`
  const body = train.bodies[action.body]
  const piece = scaled(action.whole, (action.to - action.from) * part)
  const most = body ? fineText(largestMove(body, piece), train.units) : ''
  return `Stop ${moveName(train, action)} after ${Math.round(100 * part)} % of it, at most ${most} at a foot; then ${others}; then the rest. That keeps it.`
}

const ordinals: Readonly<Record<number, string>> = { 12: 'twelfth', 16: 'sixteenth' }

const ordinal = (pieces: number): string => ordinals[pieces] ?? `1/${pieces}`
