import { expect, it } from 'vitest'
import { raisedReadings } from '../../src/engine/infeasible/remedies/raisedReadings'
import { changed } from '../../src/engine/infeasible/remedies/change'
import { asFound } from '../../src/mechanics/readings/asFound'
import { closure } from '../../src/mechanics/readings/closure'
import { randomTrain } from '../second/randomTrain'
import { readOf } from './bench'

it('readings worked out for a raised machine give the same line that much higher, of every kind', () => {
  const kinds = new Map<string, number>()
  for (let seed = 1; seed <= 60; seed++) {
    const { document, train } = readOf(randomTrain(seed))
    const rise = seed % 2 === 0 ? 730 : -410
    const after = readOf(
      changed(
        document,
        train.couplings.flatMap((coupling) => raisedReadings(document, train, coupling, rise)),
      ),
    )
    train.couplings.forEach((coupling, c) => {
      const raised = after.train.couplings[c]
      if (!raised) throw new Error(`seed ${seed}: no coupling ${c}`)
      for (const { kind } of coupling.found) kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
      const [was, is] = [asFound(coupling), asFound(raised)]
      expect(is.line.z - was.line.z, `seed ${seed}`).toBeCloseTo(rise, 5)
      for (const way of ['y', 'sy', 'sz'] as const)
        expect(is.line[way], `seed ${seed} ${way}`).toBeCloseTo(was.line[way], 6)
      expect(is.residual).toBeCloseTo(was.residual, 5)
      coupling.found.forEach((set, i) => {
        const other = raised.found[i]
        const [before, now] = [closure(set), other && closure(other)]
        if (before !== undefined) expect(now).toBeCloseTo(before, 5)
        if (set.kind === 'line' || !other || other.kind === 'line') return
        const zero = set.readings.findIndex(({ value }) => value === 0)
        if (zero >= 0) expect(other.readings[zero]?.value).toBe(0)
      })
    })
  }
  for (const kind of ['rim', 'face', 'gap', 'spool', 'line'])
    expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(5)
})
