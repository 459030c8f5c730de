import type { StandingAnswer } from '../engine/plan/answer'
import { meshSaid, teethAsked } from '../engine/plan/teethWords'
import type { Train } from '../mechanics/train'
import { heading, paragraph } from './layout'

/** How the teeth of gear couplings run, mesh by mesh and state by state. */
export function teethText(train: Train, { teeth = [] }: Pick<StandingAnswer, 'teeth'>): string[] {
  if (teeth.length === 0) return []
  return [
    ...heading('GEAR COUPLINGS', 'angle at the teeth as they run, no aim taken off'),
    ...train.couplings.flatMap(({ id, name }) => {
      const own = teeth.filter(({ coupling }) => coupling === id)
      const asked = teethAsked(train, id)
      return [
        ...(own.length > 0 && asked !== '' ? paragraph(`${name}: ${asked}.`, '', 2) : []),
        ...own.flatMap((mesh) => paragraph(`${meshSaid(train, mesh)}.`, '  - ')),
      ]
    }),
  ]
}
