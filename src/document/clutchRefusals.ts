import { notListed } from './betweenStates'
import { shown, type Refusal } from './refusal'
import type { CouplingDocument, TrainDocument } from './schema'

/** What a clutch may get wrong: a state that is not there or stands twice, none left in which it is engaged. */
export function clutchRefusals(
  { disengaged }: CouplingDocument,
  place: string,
  document: TrainDocument,
): Refusal[] {
  if (!disengaged) return []
  const states = document.states ?? [{ id: 'cold' }]
  const out = disengaged.flatMap((state, i): Refusal[] => {
    const at = `${place}.disengaged[${i}]`
    if (!states.some(({ id }) => id === state))
      return [{ at, why: notListed(state, document.states) }]
    return disengaged.indexOf(state) === i
      ? []
      : [{ at, why: `duplicate state ${shown(state)}: it is listed already; name each state once` }]
  })
  if (out.length > 0 || states.some(({ id }) => !disengaged.includes(id))) return out
  return [
    {
      at: `${place}.disengaged`,
      why: `${disengaged.map(shown).join(', ')}: these are all states, so the coupling would be judged in none; leave out those in which it is engaged`,
    },
  ]
}
