import type { ReadyItem } from './answer'

/** Hot checks that show what the growth in use does not expect: nothing that is said of a train is to be read without them. */
export const unexpectedRuns = (items: readonly ReadyItem[]): ReadyItem[] =>
  items.filter(({ what, state }) => what === 'hot check' && state === 'bad')
