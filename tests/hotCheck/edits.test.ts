import { describe, expect, it } from 'vitest'
import { moveMachine, removeMachine } from '../../src/document/edits/machines'
import { shiftMachine } from '../../src/document/edits/shiftMachine'
import { renamedState, withoutState } from '../../src/document/edits/stateEdits'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { standNow } from '../../src/engine/fieldwork/loop/standNow'
import { everyField } from '../entry/everyField'

const [june] = everyField().hotChecks ?? []
const checkOf = ({ hotChecks }: TrainDocument) => {
  const [check] = hotChecks ?? []
  if (!check) throw new Error('the hot check is gone')
  return check
}
const rims = (document: TrainDocument) =>
  checkOf(document).couplings?.[0]?.times.map(({ found }) =>
    found.flatMap((set) => (set.kind === 'rim' ? [[set.rides, set.at]] : [])),
  )

describe('a hot check', () => {
  it('goes along with a machine that is moved: dials that ride on its shaft, and its points', () => {
    const { document } = shiftMachine(everyField(), 0, -25)
    const moved = [
      ['left', 1285],
      ['right', 1590],
    ]
    expect(rims(document)).toEqual([moved, moved])
    expect(checkOf(document).moved?.map(({ points }) => points.map(({ at }) => at))).toEqual([
      [425],
      [2100],
    ])
    // the coupling's own sets went the same way
    expect(document.couplings[0]?.found.flatMap((set) => ('at' in set ? [set.at] : []))).toEqual([
      1285, 1590,
    ])
  })

  it('loses what it tells of a machine that is taken out, and counts no more', () => {
    const { document } = removeMachine(everyField(), 2)
    const { couplings, moved, datum, use, why } = checkOf(document)
    expect(couplings?.map(({ coupling }) => coupling)).toEqual(['motor-gear'])
    expect(moved?.map(({ machine }) => machine)).toEqual(['motor', 'gear'])
    expect(datum).toBeUndefined()
    expect([use, why]).toEqual([false, 'a machine that it tells of was taken out'])
  })

  it('counts no more once machines stand in another order', () => {
    expect(checkOf(moveMachine(everyField(), 0, 1).document)).toMatchObject({
      use: false,
      why: 'the machines stood in another order',
    })
  })

  it('follows its state by name, and goes with it', () => {
    const index = everyField().states?.findIndex(({ id }) => id === june?.state) ?? -1
    const renamed = renamedState(everyField(), index, 'Full load')
    expect(checkOf(renamed).state).toBe('full-load')
    expect(withoutState(everyField(), index).hotChecks).toBeUndefined()
    expect(withoutState(everyField(), 0).hotChecks).toEqual(everyField().hotChecks)
  })

  it('tells of the train before once something was moved, and still of it where nothing was', () => {
    const document = everyField()
    delete document.surveys
    const read = readTrain(document)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const [foot] = document.machines[2]?.feet ?? []
    const stood = (shim: number) => {
      const actual = { body: 'pump', foot: foot?.id ?? '', shim, side: 0 }
      const feet = (document.machines[2]?.feet ?? []).map(({ id }) => ({ ...actual, foot: id }))
      return standNow(document, read.train, {
        actuals: feet,
        readings: [
          { coupling: 'gear-pump', set: 0, offset: { y: 1, z: 2 }, slope: { y: 0, z: 0 } },
        ],
        sign: { when: 'today' },
        after: 'step 3',
      })
    }
    const [worked, still] = [stood(150), stood(0)]
    if (!worked.ok || !still.ok) throw new Error('the train does not stand')
    expect(checkOf(worked.document)).toMatchObject({ use: false, why: 'hot check before step 3' })
    expect(checkOf(still.document).use).toBeUndefined()
  })
})
