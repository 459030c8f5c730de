import { expect, it } from 'vitest'
import { settingBeside } from '../../src/mechanics/misalignment/settingBeside'
import { randomTrain } from '../second/randomTrain'
import { fineFactor, type Train } from '../second/train'
import { differences, fineOf, patience, plan, read, seeds, Tally } from './bench'
import { isWhole } from '../counts'

/** The train in one of its states alone. */
function inOneState(train: Train): Train | undefined {
  // one that lies between two others is none without them
  const state = train.states?.findLast(({ between }) => !between)
  if (!state) return undefined
  const only = <V>(record: Record<string, V> | undefined): Record<string, V> | undefined => {
    const value = record?.[state.id]
    return value === undefined ? undefined : { [state.id]: value }
  }
  return {
    ...train,
    states: [state],
    machines: train.machines.map((machine) => ({ ...machine, growth: only(machine.growth) })),
    couplings: train.couplings.map((coupling) => ({
      ...coupling,
      aim: only(coupling.aim),
      setting: undefined,
    })),
  }
}

/** Every coupling judged by a cold setting that is exactly what its one state asks for. */
function bySettings(train: Train): Train {
  const beside = read({
    ...train,
    couplings: train.couplings.map((coupling) => ({ ...coupling, setting: {} })),
  })
  return {
    ...train,
    couplings: train.couplings.map((coupling, c) => {
      const joint = beside.couplings[c]
      const asks = joint && settingBeside(beside, joint)?.growthAsks[0]?.asks
      if (!asks) throw new Error('nothing asked')
      const fine = fineFactor(train)
      return {
        ...coupling,
        aim: undefined,
        setting: {
          offset: { y: asks.y / fine, z: asks.z / fine },
          slope: { y: asks.sy, z: asks.sz },
          use: true,
          why: 'what growth asks for',
        },
      }
    }),
  }
}

it(
  'a cold setting that is what the only state asks for gives the plan that growth gives',
  () => {
    const tally = new Tally()
    for (const seed of seeds(48)) {
      const train = inOneState(randomTrain(seed))
      if (!train) continue
      const [grown, set] = [train, bySettings(train)].map((t) => plan(t, { prices: false }))
      if (!grown || !set) continue
      const fine = { before: fineOf(train), after: fineOf(train) }
      expect(differences(grown, set, fine), `seed ${seed}`).toEqual([])
      tally.add(grown.status)
    }
    for (const status of ['planned', 'in-tolerance'])
      expect(tally.of(status), status).toBeGreaterThan(2)
  },
  patience,
)

it.runIf(isWhole)(
  'with growth applied as well it would not be: never both',
  () => {
    const noticed = seeds(48).filter((seed) => {
      const train = inOneState(randomTrain(seed))
      if (!train) return false
      const set = bySettings(train)
      // what applying both would come to: the setting as the aim of the state, growth still there
      const both = {
        ...set,
        couplings: set.couplings.map(({ setting, ...coupling }) => ({
          ...coupling,
          aim: { [set.states?.[0]?.id ?? '']: { offset: setting?.offset, slope: setting?.slope } },
        })),
      }
      const fine = { before: fineOf(train), after: fineOf(train) }
      const [right, wrong] = [set, both].map((t) => plan(t, { prices: false }))
      return right && wrong && differences(right, wrong, fine).length > 0
    })
    expect(noticed.length).toBeGreaterThan(20)
  },
  patience,
)

it('the random trains of the laws have settings, used and not', () => {
  const settings = seeds(48).flatMap((seed) =>
    randomTrain(seed).couplings.flatMap(({ setting }) => setting ?? []),
  )
  expect(settings.filter(({ use }) => use === true).length).toBeGreaterThan(8)
  expect(settings.filter(({ use }) => use !== true).length).toBeGreaterThan(5)
})
