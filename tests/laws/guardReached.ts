import { checksOf, checkValue } from '../../src/mechanics/misalignment/check'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { sharesOf } from '../../src/mechanics/misalignment/shares'
import type { Motion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import type { Train } from '../../src/mechanics/train'
import { errorsAt, guardedErrors } from '../../src/mechanics/uncertainty/judged'

/** 200 directions, the four of a box among them. */
const around = Array.from({ length: 200 }, (_, k) => (k * Math.PI) / 100)

/**
 * The largest part of a limit that any check reaches, v and room in every direction: each component by itself for a box,
 * all around for a circle, the root of the sum of squares taken error by error.
 */
export function reached(
  train: Train,
  motions: readonly Motion[],
): { most: number; correlated: boolean } {
  const found = train.couplings.map(asFound)
  const errors = guardedErrors(train)
  const { guard } = train.plan
  let most = 0
  let correlated = false
  for (const result of sharesOf(train, found, couplingMotions(train, motions))) {
    const coupling = train.couplings[result.coupling]
    const s = train.states.findIndex(({ id }) => id === result.state)
    if (!coupling) throw new RangeError('no coupling')
    const own = errorsAt(errors, result.coupling, s)
    const checks = checksOf(coupling)
    result.checks.forEach(({ x, y = 0, z = 0, limit }, i) => {
      const check = checks[i]
      if (x !== undefined || !check) {
        const u = Math.sqrt(own.reduce((sum, { gap }) => sum + gap ** 2, 0)) / 1000
        most = Math.max(most, (Math.abs(x ?? 0) + guard * u) / limit)
        return
      }
      const parts = own.map(({ misalignment }) => checkValue(check, misalignment))
      const sum = (of: (part: { y: number; z: number }) => number) =>
        parts.reduce((all, part) => all + of(part), 0)
      const along = sum((e) => e.y * e.z) / Math.sqrt(sum((e) => e.y ** 2) * sum((e) => e.z ** 2))
      if (Math.abs(along) > 0.05) correlated = true
      for (const [k, angle] of around.entries()) {
        if (coupling.tolerance.shape === 'box' && k % 50 !== 0) continue
        const n = { y: Math.cos(angle), z: Math.sin(angle) }
        const u = Math.sqrt(sum((e) => (n.y * e.y + n.z * e.z) ** 2))
        most = Math.max(most, (n.y * y + n.z * z + guard * u) / limit)
      }
    })
  }
  return { most, correlated }
}
