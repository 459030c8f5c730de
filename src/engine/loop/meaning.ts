import { fineText } from '../units/format'
import type { Coupling, Train } from '../train/model'
import type { Misalignment } from '../readings/equation'
import { listed } from '../sheet/words'

export interface Meaning {
  kind:
    | 'within doubt'
    | 'too small'
    | 'too large'
    | 'reversed'
    | 'one coupling'
    | 'one machine'
    | 'up and down only'
    | 'sets contradict'
    | 'other'
  words: string
  /** Measured change as a part of the expected one, where the kind is about that. */
  ratio?: number
}

/** How a coupling changed, beside how it should have. Engine units. */
export interface Change {
  readonly coupling: Coupling
  readonly expected: Misalignment
  /** Missing where the new readings leave the line open. */
  readonly measured?: Misalignment
  /** Variances of `[y, sy, z, sz]` of the measured change. */
  readonly covariance?: readonly number[]
  /** Root mean square of residual / u of the new readings. */
  readonly residual: number
  /** Largest difference of any reading (um). */
  readonly largest: number
}

/**
 * Marks of common practice, no source: a difference up to 30 um is reading and shimming; a change of
 * less than 100 um says nothing about its own scale; a sixth more or less is a scale.
 */
const marks = { doubt: 30, tells: 100, scale: 1 / 6, contradict: 4 }

/**
 * What the difference between measured and expected readings means most likely. Judged by how the
 * couplings changed: a common factor, a reversed sign, one coupling alone, one machine between two.
 */
export function meaningOf(train: Train, changes: readonly Change[], whole = true): Meaning {
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
  const scaled = commonScale(changes)
  if (scaled !== undefined) return scaleMeaning(scaled)
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

/** Components as displacements (um) of a like size: offset, and slope at the coupling's reach. */
function parts({ coupling }: Change, d: Misalignment): number[] {
  const reach = Math.max(200, coupling.q - coupling.p)
  return [d.y, d.z, d.sy * reach, d.sz * reach]
}

function doubtOf(change: Change): number[] {
  const reach = Math.max(200, change.coupling.q - change.coupling.p)
  const [y = 0, sy = 0, z = 0, sz = 0] = change.covariance ?? []
  return [Math.sqrt(y), Math.sqrt(z), Math.sqrt(sy) * reach, Math.sqrt(sz) * reach]
}

function withinDoubt(change: Change): boolean {
  if (change.residual > marks.contradict) return false
  const { measured } = change
  if (!measured) return change.largest <= marks.doubt
  const doubt = doubtOf(change)
  const [is, should] = [parts(change, measured), parts(change, change.expected)]
  return is.every(
    (value, k) => Math.abs(value - (should[k] ?? 0)) <= Math.max(marks.doubt, 3 * (doubt[k] ?? 0)),
  )
}

/**
 * The factor that all couplings which should have changed share, by least squares; undefined where
 * nothing should have changed enough, or one factor does not explain them.
 */
function commonScale(changes: readonly Change[]): number | undefined {
  const pairs = changes.flatMap((change) => {
    if (!change.measured) return []
    const doubt = doubtOf(change)
    const is = parts(change, change.measured)
    return parts(change, change.expected).map((should, k) => ({
      should,
      is: is[k] ?? 0,
      doubt: Math.max(marks.doubt, 3 * (doubt[k] ?? 0)),
    }))
  })
  const squares = pairs.reduce((all, { should }) => all + should * should, 0)
  if (Math.sqrt(squares) < marks.tells) return undefined
  const ratio = pairs.reduce((all, { should, is }) => all + should * is, 0) / squares
  if (Math.abs(ratio - 1) < marks.scale) return undefined
  const fits = pairs.every(
    ({ should, is, doubt }) =>
      Math.abs(is - ratio * should) <= Math.max(doubt, (Math.abs(should) * marks.scale) / 2),
  )
  return fits ? ratio : undefined
}

function scaleMeaning(ratio: number): Meaning {
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

/** A difference of heights alone, as sag makes it. */
function upAndDown(change: Change): boolean {
  if (!change.measured) return false
  const doubt = doubtOf(change)
  const [is, should] = [parts(change, change.measured), parts(change, change.expected)]
  const over = is.map(
    (value, k) => Math.abs(value - (should[k] ?? 0)) > Math.max(marks.doubt, 3 * (doubt[k] ?? 0)),
  )
  return over[0] === false && over[2] === false && (over[1] === true || over[3] === true)
}
