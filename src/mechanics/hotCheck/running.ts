import { coverage95 } from '../coverage'
import type { HotCheck } from '../hotCheck'
import { checksOf, checkValue, shareOf } from '../misalignment/check'
import type { CouplingResult } from '../misalignment/shares'
import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import { lineChange } from '../uncertainty/errorSource'
import { checkCovariance } from '../uncertainty/judged'
import { reachedShares, type SharesReached } from '../uncertainty/verdict'
import { coldErrors, type AtStop, type LineError } from './atStop'
import { across } from './chain'
import { expectedRunning, gainsAt, type Movement } from './movement'

/** A coupling as it ran, against what was expected of it and against its tolerance. */
export interface RunningCoupling {
  readonly coupling: number
  /** Whether it was read, or follows from movement that was measured. */
  readonly read: boolean
  /** Line running, and the one that readings as found and the growth in use give. */
  readonly line: Misalignment
  readonly expected: Misalignment
  /** Running less expected, with the standard uncertainty of each number of the difference. */
  readonly apart: Misalignment
  readonly u: Misalignment
  /** Standard uncertainty of the line running. */
  readonly uLine: Misalignment
  /** Shares of the tolerance in that state, less any aim, and as expected. */
  readonly result: CouplingResult
  readonly expectedShare: number
  /** From where to where its share lies 19 times of 20. */
  readonly reached: SharesReached
}

/** Every coupling whose line running is told. */
export const runningCouplings = (
  train: Train,
  check: HotCheck,
  lines: readonly AtStop[],
  movement: Movement,
): RunningCoupling[] =>
  train.couplings.flatMap((coupling, c) => {
    const read = lines.some((one) => one.coupling === c && one.how !== 'open')
    return read || isMeasured(movement, coupling)
      ? [runningAt(train, check, movement, c, read)]
      : []
  })

/** Both machines measured at two places and more in both directions, or told against one another. */
function isMeasured(
  { chains }: Movement,
  { left, right }: { left: number; right: number },
): boolean {
  const of = (machine: number) => chains.find(({ machines }) => machines.includes(machine))
  const [a, b] = [of(left), of(right)]
  if (!a || !b) return false
  const whole = (chain: typeof a) => across.every((way) => chain.held[way].by === 'measured')
  return a === b || (whole(a) && whole(b))
}

function runningAt(
  train: Train,
  check: HotCheck,
  movement: Movement,
  c: number,
  read: boolean,
): RunningCoupling {
  const coupling = train.couplings[c]
  const state = train.states[check.state]
  if (!coupling || !state) throw new RangeError(`no coupling ${c} or no state ${check.state}`)
  const gains = four.map((i) => gainsAt(train, coupling, i))
  const ofMachines = (numbers: (machine: number) => readonly number[]) =>
    gains.map((row) =>
      [...row].reduce(
        (sum, [machine, gain]) =>
          sum + gain.reduce((all, one, k) => all + one * (numbers(machine)[k] ?? 0), 0),
        0,
      ),
    )
  const of = (machine: number) => movement.machines.find((one) => one.machine === machine)
  const apart = ofMachines((machine) => of(machine)?.by ?? [])
  const keys = of(coupling.left)?.errors.map(({ key }) => key) ?? []
  const off = keys.map((key, k): LineError => ({
    key,
    by: ofMachines((machine) => of(machine)?.errors[k]?.by ?? []),
  }))
  const expected = expectedRunning(train, coupling, c, check.state)
  const running = expected.map((value, i) => value + (apart[i] ?? 0))
  const errors = together([...coldErrors(train, c), ...off]).map(({ by }) => by)
  const { y = 0, sy = 0, z = 0, sz = 0 } = coupling.aim.get(state.id) ?? {}
  const wanted = [y, sy, z, sz]
  const judged = (numbers: readonly number[]) =>
    lineOf(numbers.map((value, i) => value - (wanted[i] ?? 0)))
  const result = resultOf(train, c, check.state, judged(running))
  const changes = errors.map((by) => lineChange(by))
  return {
    coupling: c,
    read,
    line: lineOf(running),
    expected: lineOf(expected),
    apart: lineOf(apart),
    u: rootOf(off.map(({ by }) => by)),
    uLine: rootOf(errors),
    result,
    expectedShare: resultOf(train, c, check.state, judged(expected)).share,
    reached: reachedShares(train, result, {
      checks: checksOf(coupling).map((one) => {
        const { yy, yz, zz } = checkCovariance(one, changes)
        const part = coverage95 * coverage95
        return { ellipse: { yy: part * yy, yz: part * yz, zz: part * zz }, y: 0, z: 0 }
      }),
      gap: 0,
    }),
  }
}

function resultOf(train: Train, c: number, s: number, line: Misalignment): CouplingResult {
  const [coupling, state] = [train.couplings[c], train.states[s]]
  if (!coupling || !state) throw new RangeError(`no coupling ${c} or no state ${s}`)
  const checks = checksOf(coupling).map((check) => {
    const value = checkValue(check, line)
    const limit = check.limit * state.factor
    const share = shareOf(value, limit, coupling.tolerance.shape)
    return { what: check.what, ...value, limit, share }
  })
  return {
    coupling: c,
    state: state.id,
    share: Math.max(...checks.map(({ share }) => share)),
    checks,
  }
}

/** Errors of one name are one error. */
function together(list: readonly LineError[]): LineError[] {
  const sums = new Map<string, number[]>()
  for (const { key, by } of list) {
    const known = sums.get(key)
    sums.set(
      key,
      by.map((value, i) => value + (known?.[i] ?? 0)),
    )
  }
  return [...sums].map(([key, by]) => ({ key, by }))
}

/** Standard uncertainty of each number by independent errors. */
const rootOf = (errors: readonly (readonly number[])[]): Misalignment =>
  lineOf(four.map((i) => Math.hypot(...errors.map((by) => by[i] ?? 0))))

const four = [0, 1, 2, 3] as const
const lineOf = (numbers: readonly number[]): Misalignment => lineChange(numbers).misalignment
