import {
  differs,
  doubtOf,
  marks,
  parts,
  type CouplingChange,
  type DifferenceMeaning,
} from './change'

/** Of the components of a change: all of them, or the angles alone. */
const all = [0, 1, 2, 3]
const angles = [2, 3]

/** A factor by which everything changed, or every angle; undefined where there is none. */
export function scaleOf(changes: readonly CouplingChange[]): DifferenceMeaning | undefined {
  const ratio = commonScale(changes, all)
  if (ratio !== undefined) return scaleMeaning(ratio)
  const offsetsHold = changes.every((change) => {
    const [y = true, z = true] = differs(change) ?? []
    return !y && !z
  })
  const turned = offsetsHold ? commonScale(changes, angles) : undefined
  if (turned === undefined || turned <= 0) return undefined
  return changes.every((change) => showsIt(change, turned)) ? angleMeaning(turned) : undefined
}

/** A coupling whose angles the factor would change by more than can go unseen has to show it. */
function showsIt(change: CouplingChange, ratio: number): boolean {
  const doubt = doubtOf(change)
  const unseen = 2 * Math.max(...angles.map((k) => doubt[k] ?? 0))
  const over = differs(change)
  return Math.abs(ratio - 1) * sizeOf(change) < unseen || angles.some((k) => over?.[k] === true)
}

/** How far the angles of a coupling should have changed, as displacements. */
function sizeOf(change: CouplingChange): number {
  const should = parts(change, change.expected)
  return Math.hypot(...angles.map((k) => should[k] ?? 0))
}

/**
 * The factor that all couplings which should have changed share, by least squares; undefined where
 * nothing should have changed enough, or one factor does not explain them.
 */
function commonScale(
  changes: readonly CouplingChange[],
  which: readonly number[],
): number | undefined {
  const pairs = changes.flatMap((change) => {
    if (!change.measured) return []
    const [is, should] = [parts(change, change.measured), parts(change, change.expected)]
    const doubt = doubtOf(change)
    return which.map((k) => ({ should: should[k] ?? 0, is: is[k] ?? 0, doubt: doubt[k] ?? 0 }))
  })
  const squares = pairs.reduce((sum, { should }) => sum + should * should, 0)
  if (Math.sqrt(squares) < marks.tells) return undefined
  const ratio = pairs.reduce((sum, { should, is }) => sum + should * is, 0) / squares
  // what the factor itself may be off by
  const unsure = Math.max(...pairs.map(({ doubt }) => doubt)) / Math.sqrt(squares)
  if (Math.abs(ratio - 1) < Math.max(marks.scale, unsure)) return undefined
  const fits = pairs.every(
    ({ should, is, doubt }) =>
      Math.abs(is - ratio * should) <= Math.max(doubt, (Math.abs(should) * marks.scale) / 2),
  )
  return fits ? ratio : undefined
}

const angleMeaning = (ratio: number): DifferenceMeaning => ({
  kind: ratio < 1 ? 'too small' : 'too large',
  ratio,
  words: `All angles changed ${partWords(Math.abs(ratio - 1))} too ${ratio < 1 ? 'little' : 'much'} (${Math.round(ratio * 100)} % of what was expected), and the offsets as expected: the distance between the dials, or the diameter that a face is read at, is not what was entered.`,
})

function scaleMeaning(ratio: number): DifferenceMeaning {
  const percent = `${Math.round(Math.abs(ratio) * 100)} %`
  if (ratio < -0.5)
    return {
      kind: 'reversed',
      ratio,
      words: `Everything changed the other way (${percent} of what was expected): a sign, the wrong side, or shims out where they should go in. Move nothing before it is found.`,
    }
  if (ratio < 1)
    return {
      kind: 'too small',
      ratio,
      words: `All changes are ${partWords(1 - ratio)} too small (${percent} of what was expected): a springing foot, or a distance that is wrong, of feet or of the dials.`,
    }
  return {
    kind: 'too large',
    ratio,
    words: `All changes are ${partWords(ratio - 1)} too large (${percent} of what was expected): a distance that is wrong, of feet or of the dials, or more shim than was told.`,
  }
}

function partWords(part: number): string {
  if (Math.abs(part - 1 / 3) < 0.06) return 'about a third'
  if (Math.abs(part - 1 / 2) < 0.06) return 'about half'
  if (Math.abs(part - 1 / 4) < 0.03) return 'about a quarter'
  return `about ${Math.round(part * 100)} %`
}
