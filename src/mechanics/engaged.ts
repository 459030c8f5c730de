import type { Coupling, State, Train } from './train'

/** Whether a coupling carries the shafts together in a state; where its clutch is open nothing of it is judged. */
export const isEngaged = ({ disengaged }: Pick<Coupling, 'disengaged'>, state: string): boolean =>
  disengaged?.includes(state) !== true

/** The states in which a coupling is judged, with their places in the train. */
export const judgedStates = (
  { states }: Pick<Train, 'states'>,
  coupling: Pick<Coupling, 'disengaged'>,
): { readonly state: State; readonly s: number }[] =>
  states.flatMap((state, s) => (isEngaged(coupling, state.id) ? [{ state, s }] : []))
