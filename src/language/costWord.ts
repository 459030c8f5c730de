import type { Train } from '../mechanics/train'

/** What a cost is an amount of: "moves", or "weighted moves" where the file weighs some moves more than others. */
export const costWord = ({ plan, bodies }: Train): string =>
  [...Object.values(plan.weights), ...bodies.map(({ weight }) => weight)].every((w) => w === 1)
    ? 'moves'
    : 'weighted moves'
