import { fineText } from '../../../language/amounts'
import type { Train } from '../../../mechanics/train'
import { listed } from '../../../language/names'
import { differs, marks, type CouplingChange, type DifferenceMeaning } from './change'
import { scaleOf } from './scale'

/**
 * What the difference between measured and expected readings means most likely. Judged by how the
 * couplings changed: a common factor, a reversed sign, one coupling alone, one machine between two.
 */
export function meaningOf(
  train: Train,
  changes: readonly CouplingChange[],
  whole = true,
): DifferenceMeaning {
  const off = changes.filter((change) => !withinDoubt(change))
  const most = Math.max(0, ...changes.map(({ largest }) => largest))
  if (off.length === 0)
    return {
      kind: 'within doubt',
      words: `Within what readings and shims can differ by: at most ${fineText(most, train.units)}.`,
    }
  const contradicting = off.filter(({ residual }) => residual > marks.contradict)
  const first = contradicting[0]
  if (first)
    return {
      kind: 'sets contradict',
      words: `The sets of ${first.coupling.name} contradict each other: a loose bracket, wrong sag, or a dial read with the wrong sign. Read it again before anything else.`,
    }
  const scaled = scaleOf(changes)
  if (scaled) return scaled
  const [one, two] = off
  if (whole && off.length === 1 && one && changes.length > 1)
    return {
      kind: 'one coupling',
      words: `Only ${one.coupling.name} differs, by up to ${fineText(one.largest, train.units)}; a machine out of place would show at the couplings on both its sides. Look at its bracket and its sag.${upAndDown(one) ? ' The difference is up and down only, as sag is.' : ''}`,
    }
  if (
    whole &&
    off.length === 2 &&
    one &&
    two &&
    Math.abs(one.coupling.left - two.coupling.left) === 1
  ) {
    const between = train.machines[Math.max(one.coupling.left, two.coupling.left)]
    return {
      kind: 'one machine',
      words: `Both couplings of ${between?.name ?? ''} differ and no other: it does not stand where it should. Was it bumped, did a foot spring, or is an actual value not the one typed?`,
    }
  }
  if (off.every(upAndDown))
    return {
      kind: 'up and down only',
      words: `The difference is up and down only, by up to ${fineText(most, train.units)}: sag left out, taken off twice or measured on another bracket; or packs that are not what was told.`,
    }
  return {
    kind: 'other',
    words: `Differs by up to ${fineText(most, train.units)} at ${listed(off.map(({ coupling }) => coupling.name))}: check the distances, the actual shims and slides, and whether a held machine moved.`,
  }
}

function withinDoubt(change: CouplingChange): boolean {
  if (change.residual > marks.contradict) return false
  const over = differs(change)
  return over ? !over.includes(true) : change.largest <= marks.doubt
}

/** A difference of heights alone, as sag makes it. */
function upAndDown(change: CouplingChange): boolean {
  const over = differs(change)
  return over?.[0] === false && over[2] === false && (over[1] === true || over[3] === true)
}
