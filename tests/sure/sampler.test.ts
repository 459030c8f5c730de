import { describe, expect, test } from 'vitest'
import { metric } from '../second/metric'
import { given, twoMachines } from '../second/pairs'
import { randomSureTrain } from '../second/randomSure'
import { randomTrain } from '../second/randomTrain'
import { misalignment } from '../second/reading'
import { still } from '../second/sure/bodies'
import { workedOut } from '../second/sure/covariance'
import { fitted, shows } from '../second/sure/coupled'
import { misreads } from '../second/sure/misreads'
import { sampled } from '../second/sure/sampled'
import { counted, type Coupling } from '../second/train'
import { exact, known, run, sameChance, sameSpread, spread, wide } from './handWorked'
import { within } from './phi'
import { isWhole, counted as counts } from '../counts'

describe.runIf(isWhole)('one coupling as found', () => {
  test('in one direction has the chance that the normal distribution gives', () => {
    const axial = { found: 5, want: 4.95, tolerance: 0.1, u: 0.06 }
    const train = twoMachines({ offset: wide }, [known(0, 0, exact)], {}, {}, { axial })
    const answer = run(train)
    const chance = within(50, 60, 100)
    for (const one of [answer.all, answer.reread, answer.asFound, answer.couplings[0]?.chance])
      sameChance(one, chance)
    sameSpread(spread(answer, 'gap').x, 0.06)
    expect(answer.bolts).toBeUndefined()
  })

  test('takes y and z apart where its shape is a box, and their length where it is round', () => {
    const box = run(twoMachines({ offset: 20 }, [known(12, -5, 10)])).asFound
    sameChance(box, within(12, 10, 20) * within(-5, 10, 20))
    const round = run(twoMachines({ offset: 20, shape: 'round' }, [known(0, 0, 10)])).asFound
    // two equal normals: the length is Rayleigh distributed
    sameChance(round, 1 - Math.exp(-(20 ** 2) / (2 * 10 ** 2)))
  })

  test('is judged at its full limit, times the factor of the state', () => {
    const rest = { plan: { share: 0.5 }, states: [{ id: 'a', name: 'A', tolerance: 2 }] }
    const answer = run(twoMachines({ offset: 10 }, [known(12, -5, 10)], {}, rest))
    sameChance(answer.asFound, within(12, 10, 20) * within(-5, 10, 20))
  })

  test('takes the usual uncertainties where nothing is entered', () => {
    const axial = { found: 5, want: 5, tolerance: 1 }
    const answer = run(twoMachines({ offset: wide, angle: wide }, [given(0, 0)], {}, {}, { axial }))
    sameSpread(spread(answer, 'offset').y, 10)
    sameSpread(spread(answer, 'angle').z, 0.05)
    sameSpread(spread(answer, 'gap').x, 0.1)
  })
})

describe.runIf(isWhole)('on random trains', () => {
  test('the lines found and what each error does to them are those of another least squares', () => {
    let seen = 0
    for (let seed = 1; seed <= 30; seed++) {
      for (const c of metric(randomTrain(seed)).couplings) {
        const fit = fitted(c)
        const numbers = (of: Coupling) => {
          const { offset, slope } = misalignment(of)
          return [offset.y, offset.z, slope.y, slope.z]
        }
        const before = numbers(c)
        fit.line.forEach((value, k) => {
          expect(value).toBeCloseTo(before[k] ?? NaN, 5)
        })
        // a set that stands 1 mm elsewhere than is written reads so, and is believed as written
        const sets = counted(c)
        sets.forEach((set, i) => {
          if (set.kind === 'line') return
          const elsewhere =
            set.kind === 'rim' ? { ...set, at: set.at + 1 } : { ...set, diameter: set.diameter + 1 }
          const misread = set.readings.map(([hour, value]): [number, number] => [
            hour,
            value + shows(c, elsewhere, hour, fit.line) - shows(c, set, hour, fit.line),
          ])
          const found = sets.map((other, k) => (k === i ? { ...set, readings: misread } : other))
          const after = numbers({ ...c, found: found })
          const changes = after.map((value, k) => value - (before[k] ?? NaN))
          const one = { ...c, found: sets.map((s) => ({ ...s, uAt: 1, uDiameter: 1 })) } as Coupling
          const told = misreads(one, fitted(one)).filter(({ group }) => group === 'readings')
          const places = told
            .slice(fit.reads.length)
            .map((misreadOf) => fit.answering(misreadOf.changes))
          const nearest = Math.min(
            ...places.map((p) => Math.hypot(...p.map((v, k) => v - (changes[k] ?? NaN)))),
          )
          expect(nearest).toBeLessThan(1e-6 * Math.hypot(...changes) + 1e-9)
          seen += 1
        })
      }
    }
    expect(seen).toBeGreaterThan(50)
  })

  test('a seed gives the same draws again, whatever the plan', () => {
    const train = randomTrain(3)
    const first = sampled(train, {}, { draws: 2000, seed: 5 })
    expect(sampled(train, {}, { draws: 2000, seed: 5 })).toEqual(first)
    const moved = Object.fromEntries(train.machines.map(({ id }) => [id, { ...still, tz: 5 }]))
    expect(sampled(train, moved, { draws: 2000, seed: 5 }).asFound).toBe(first.asFound)
    expect(sampled(train, {}, { draws: 2000, seed: 6 }).couplings).not.toEqual(first.couplings)
  })

  test('what is sampled spreads as much as can be worked out, and half of it where each u is', () => {
    const count = 20_000
    const several = counts(3, 8)
    let seen = 0
    for (let seed = 1; seed <= several; seed++) {
      const train = randomSureTrain(seed)
      const motions = Object.fromEntries(
        train.machines.map(({ id }) => [id, { ...still, tz: 10, ty: 5, sz: 0.3, sy: -0.1 }]),
      )
      const exact = workedOut(train, motions)
      for (const part of [1, 0.5]) {
        const factor = () => part
        const drawn = sampled(train, motions, { draws: count, seed, factor }).couplings
        for (const { coupling, state, u } of drawn) {
          for (const { what, ...ways } of u) {
            const other = exact.find(
              (of) => of.coupling === coupling && of.state === state && of.u.what === what,
            )
            for (const [way, value] of Object.entries(ways)) {
              const expected = part * (other?.u[way as 'x' | 'y' | 'z'] ?? NaN)
              expect(Math.abs(value - expected), `${seed} ${what} ${way}`).toBeLessThanOrEqual(
                (expected * 4.5) / Math.sqrt(2 * count) + 1e-12,
              )
              seen += 1
            }
          }
        }
      }
    }
    expect(seen).toBeGreaterThan(40)
  })
})
