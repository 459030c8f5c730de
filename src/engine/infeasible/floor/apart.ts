import { axialChecks } from '../../../mechanics/axial'
import { judgedStates } from '../../../mechanics/engaged'
import type { Train } from '../../../mechanics/train'
import { checksOf, checkValue, shareOf } from '../../../mechanics/misalignment/check'
import { stateShift } from '../../../mechanics/misalignment/stateShift'
import { roomToward, type KeptRooms } from '../../../mechanics/uncertainty/kept'
import type { CheckResult } from '../../../mechanics/misalignment/shares'

/** What two states alone do to a coupling, wherever its machines are put. */
export interface Apart {
  readonly coupling: number
  /** Indices of the two states. */
  readonly states: readonly [number, number]
  readonly what: CheckResult['what']
  /** How far the check's value lies apart in the two: um for the offset, mm for the gap, else mrad. */
  readonly value: number
  /** No move brings the worse of the two under this share of its tolerance. */
  readonly share: number
}

/**
 * The pair of states that pulls a coupling furthest apart for its tolerance. A move changes a check
 * by the same amount in every state, so the difference of two states stays; the better they share it,
 * the worse one still uses |difference| / (sum of the two limits); what is kept free of both, in the direction of the
 * difference, comes on top.
 */
export function furthestApart(
  train: Train,
  index: number,
  kept: KeptRooms | undefined,
): Apart | undefined {
  const coupling = train.couplings[index]
  if (!coupling) return undefined
  const shifts = train.states.map((state) => stateShift(train, coupling, state.id))
  let worst: Apart | undefined
  const consider = (apart: Apart) => {
    if (worst === undefined || apart.share > worst.share) worst = apart
  }
  const judged = judgedStates(train, coupling)
  judged.forEach(({ state: a, s: i }, n) => {
    judged.slice(n + 1).forEach(({ state: b, s: k }) => {
      const states = [i, k] as const
      const [from, to] = [shifts[states[0]], shifts[states[1]]]
      if (!from || !to) return
      const rooms = states.flatMap((s) => kept?.[index]?.[s] ?? [])
      for (const [c, check] of checksOf(coupling).entries()) {
        const [here, there] = [
          checkValue(check, from.misalignment),
          checkValue(check, to.misalignment),
        ]
        const by = { y: there.y - here.y, z: there.z - here.z }
        const value = shareOf(by, 1, coupling.tolerance.shape)
        const ways =
          coupling.tolerance.shape === 'round'
            ? [Math.atan2(by.z, by.y)]
            : [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2)
        const reached = ways.map((angle) => {
          const room = rooms.reduce((sum, { checks }) => {
            const around = checks[c]
            return sum + (around ? roomToward(around, angle) : 0)
          }, 0)
          return Math.cos(angle) * by.y + Math.sin(angle) * by.z + room
        })
        const most = rooms.length === 0 ? value : Math.max(...reached)
        const share = most / (check.limit * (a.factor + b.factor))
        consider({ coupling: index, states, what: check.what, value, share })
      }
      if (coupling.axial) {
        const value = Math.abs(to.gap - from.gap) / 1000
        const room = rooms.reduce((sum, { gap }) => sum + gap / 1000, 0)
        const there = axialChecks(coupling.axial, b.factor)
        // the middle of what is allowed is the same in both
        axialChecks(coupling.axial, a.factor).forEach(({ what, limit }, i) => {
          const share = (value + room) / (limit + (there[i]?.limit ?? limit))
          consider({ coupling: index, states, what, value, share })
        })
      }
    })
  })
  return worst
}
