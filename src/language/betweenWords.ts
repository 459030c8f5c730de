import type { StateBetween, Train } from '../mechanics/train'
import { shareText } from './amounts'

/** How growth of a state is taken between two others: "on a straight line, 60 % of the way from "idle" to "full" by load". */
export function betweenWords(train: Train, { from, to, by, part }: StateBetween): string {
  const name = (id: string) => `"${train.states.find((state) => state.id === id)?.name ?? id}"`
  return `on a straight line, ${shareText(part)} of the way from ${name(from)} to ${name(to)} by ${by}`
}
