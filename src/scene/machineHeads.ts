import { spread } from './spread'

/** A machine's name over its drawing. */
interface Wanted {
  readonly name: string
  /** Where its middle should be (px). */
  readonly want: number
  /** Between the couplings beside it (px); next to nothing where another machine stands beside it along the train. */
  readonly room: number
}

interface Head {
  readonly left: number
  readonly width: number
}

const widest = 280
/** Room of one letter of a name, and beside its longest word (px): the widest usual letters, as the sheet draws them. */
const [letter, beside] = [9, 14]
/** A word longer than this is broken (px). */
const longestWord = 160

/**
 * Names in one row, each over its machine as far as its neighbours allow. None gets less than its longest word: a name
 * of one letter a line is no name. Those with more than theirs give what that takes.
 */
export function machineHeads(machines: readonly Wanted[], width: number): readonly Head[] {
  const least = machines.map(({ name }) => {
    const longest = Math.max(...name.split(/\s+/).map((word) => word.length))
    return Math.min(longestWord, longest * letter + beside)
  })
  const usual = machines.map(({ room }, m) => Math.max(least[m] ?? 0, Math.min(widest, room)))
  const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0)
  const spare = sum(usual) - sum(least)
  const over = sum(usual) - width
  // as much of what each has to spare as brings the row into the page; where that is not enough, names are broken
  const given = spare > 0 ? Math.min(1, Math.max(0, over / spare)) : 0
  const fitting = usual.map((one, m) => one - given * (one - (least[m] ?? 0)))
  const shrunk = Math.min(1, width / sum(fitting))
  const widths = fitting.map((one) => one * shrunk)
  const lefts = spread(
    machines.map(({ want }, m) => ({ want, width: widths[m] ?? 0 })),
    0,
    0,
    width,
  )
  return widths.map((one, m) => ({ left: lefts[m] ?? 0, width: one }))
}
