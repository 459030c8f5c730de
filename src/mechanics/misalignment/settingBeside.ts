import { judgedStates } from '../engaged'
import { growthPointsIn } from '../growth'
import type { Aim, Coupling, Train } from '../train'
import { checksOf, checkValue, shareOf } from './check'
import { grownShift } from './stateShift'

/** What growth asks of a coupling in one state, and how far the maker's setting is from it. */
interface GrowthAsks {
  readonly state: string
  /** The cold line at which the state would find the coupling exactly right. */
  readonly asks: Aim
  /** The maker's setting less that line. */
  readonly by: Aim
  /** Share of the tolerance in that state that the difference alone uses. */
  readonly share: number
  /** Whether anything was entered that grows there across the train. */
  readonly grown: boolean
}

/** A maker's cold setting beside what the growth figures ask for. Engine units. */
export interface SettingBeside {
  readonly coupling: string
  readonly maker: Aim
  readonly used: boolean
  readonly growthAsks: readonly GrowthAsks[]
}

/**
 * The cold line that makes a state zero is the aim there less growth: d(cold) + growth - aim = 0.
 * @returns undefined where the coupling has no cold setting
 */
export function settingBeside(train: Train, coupling: Coupling): SettingBeside | undefined {
  const { setting } = coupling
  if (!setting) return undefined
  const { y, z, sy, sz, used } = setting
  const maker = { y, z, sy, sz }
  return {
    coupling: coupling.id,
    maker,
    used,
    growthAsks: judgedStates(train, coupling).map(({ state }) => {
      const shift = grownShift(train, coupling, state.id).misalignment
      const asks = { y: 0 - shift.y, z: 0 - shift.z, sy: 0 - shift.sy, sz: 0 - shift.sz }
      const by = { y: y - asks.y, z: z - asks.z, sy: sy - asks.sy, sz: sz - asks.sz }
      const shares = checksOf(coupling).map((check) =>
        shareOf(checkValue(check, by), check.limit * state.factor, coupling.tolerance.shape),
      )
      return {
        state: state.id,
        asks,
        by,
        share: Math.max(...shares),
        grown: growsAcross(train, coupling, state.id),
      }
    }),
  }
}

/** Whether either shaft was given a rise or a slide in the state; a growth of 0 that was entered counts. */
function growsAcross(train: Train, { left, right }: Coupling, state: string): boolean {
  const ends = [
    [train.machines[left], 'right'],
    [train.machines[right], 'left'],
  ] as const
  return ends.some(([body, axis]) => {
    const points = body ? growthPointsIn(body, state) : []
    return points.some(
      (point) =>
        (point.axis === axis || point.axis === 'both') &&
        (point.rise !== undefined || point.side !== undefined),
    )
  })
}
