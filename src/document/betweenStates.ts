import type { StateBetween } from '../mechanics/train'
import { shown, type Refusal } from './refusal'
import type { StateDocument } from './schema'

type Between = NonNullable<StateDocument['between']>

/** How far a state lies from one state to another, by their loads or temperatures; undefined where it lies nowhere. */
export function betweenOf(
  { between, ...state }: StateDocument,
  states: readonly StateDocument[],
): StateBetween | undefined {
  if (!between) return undefined
  const { by } = between
  const [here, from, to] = [state, ...endsOf(between, states)].map((one) => one?.[by])
  if (here === undefined || from === undefined || to === undefined || from === to) return undefined
  return { ...between, part: (here - from) / (to - from) }
}

const endsOf = ({ from, to }: Between, states: readonly StateDocument[]) =>
  [from, to].map((end) => states.find(({ id }) => id === end))

/** What a state between two others may get wrong; the first fault of each. */
export const betweenRefusals = (states: readonly StateDocument[]): Refusal[] =>
  states.flatMap((state, i) => {
    const fault = state.between && faultOf(state, state.between, states, i)
    return fault ? [fault] : []
  })

function faultOf(
  state: StateDocument,
  between: Between,
  states: readonly StateDocument[],
  index: number,
): Refusal | undefined {
  const { from, to, by } = between
  const place = `states[${index}]`
  for (const key of ['from', 'to'] as const) {
    const end = between[key]
    const at = `${place}.between.${key}`
    const other = states.find(({ id }) => id === end)
    if (!other) return { at, why: notListed(end, states) }
    if (end === state.id)
      return {
        at,
        why: `${shown(end)} is the state itself: give one of the states it lies between`,
      }
    if (other.between)
      return {
        at,
        why: `${shown(end)} lies between two states itself: give a state whose growth is entered`,
      }
  }
  if (from === to)
    return {
      at: `${place}.between.to`,
      why: `${shown(to)} is given at both ends: give the two states between which this one lies`,
    }
  const [first, last] = endsOf(between, states)
  for (const one of [state, first, last])
    if (one && one[by] === undefined)
      return {
        at: `states[${states.indexOf(one)}].${by}`,
        why: `missing: the growth of ${shown(state.id)} is taken between ${shown(from)} and ${shown(to)} by ${by}, so give the ${by} of all three`,
      }
  const [here = NaN, low = NaN, high = NaN] = [state, first, last].map((one) => one?.[by])
  if (low === high)
    return {
      at: `${place}.between.by`,
      why: `${shown(by)} does not tell ${shown(from)} and ${shown(to)} apart, both have ${low}: give two states of different ${by}`,
    }
  const part = (here - low) / (high - low)
  if (part < 0 || part > 1)
    return {
      at: `${place}.${by}`,
      why: `${here} does not lie between ${low} of ${shown(from)} and ${high} of ${shown(to)}: growth is not carried on beyond them; give a ${by} between, or growth of its own`,
    }
  return undefined
}

/** A name that is none of the listed states, and what is. */
export function notListed(state: string, states: readonly StateDocument[] = []): string {
  return states.length === 0
    ? `${shown(state)} is not a listed state, and the document lists none: list it under states`
    : `${shown(state)} is not a listed state: give one of ${states
        .slice(0, 10)
        .map(({ id }) => shown(id))
        .join(', ')}${states.length > 10 ? ', ...' : ''}, or list it under states`
}
