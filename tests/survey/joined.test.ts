import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { foundLines, lineErrors } from '../../src/mechanics/uncertainty/foundLines'
import { metric } from '../second/metric'
import { randomSureTrain } from '../second/randomSure'
import { withSurveys } from '../second/randomSurvey'
import { fitted } from '../second/sure/coupled'
import { jointsOf } from '../second/sure/joints'
import { foundLines as secondLines } from '../second/sure/found'
import { misreads } from '../second/sure/misreads'
import { readingErrors } from '../second/sure/readingErrors'
import type { Train } from '../second/train'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 100 : 10

const read = (document: Train) => {
  const answer = readTrain(document)
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  return answer.train
}

describe('lines with surveys joined', () => {
  it('are the same in whatever order the file lists the couplings', () => {
    for (const seed of [3, 4, 5, 6]) {
      const document = withSurveys(randomSureTrain(seed), seed)
      const [there, back] = [document.couplings, document.couplings.toReversed()].map(
        (couplings) => {
          const lines = foundLines(read({ ...document, couplings }))
          return new Map(lines.map((found, c) => [couplings[c]?.id, found]))
        },
      )
      expect(there?.size).toBe(document.couplings.length)
      for (const [id, { line, covariance }] of there ?? []) {
        const other = back?.get(id)
        const near = (a: number, b = NaN) => {
          expect(Math.abs(a - b), `seed ${seed} ${id}`).toBeLessThan(1e-6 * Math.abs(a) + 1e-7)
        }
        for (const key of ['y', 'sy', 'z', 'sz'] as const) near(line[key], other?.line[key])
        covariance.forEach((row, i) => {
          row.forEach((value, j) => {
            near(value, other?.covariance[i]?.[j])
          })
        })
      }
    }
  })

  it(`are those of one fit of ${trains} random trains by other code, and so are their uncertainties`, () => {
    let moved = 0
    for (let seed = 1; seed <= trains; seed++) {
      const document = withSurveys(randomSureTrain(seed), seed)
      const train = read(document)
      const lines = foundLines(train)
      const apart = foundLines({ ...train, surveys: [] })
      const errors = lineErrors(train)
      const report = checkRead(train)
      const second = metric(document)
      const found = secondLines(second)
      const joints = jointsOf(second).filter(
        ({ state }) => state.id === jointsOf(second)[0]?.state.id,
      )
      const theirs = readingErrors(second, joints)
      second.couplings.forEach((c, i) => {
        const [oy, oz, sy, sz] = found.line(c)
        const line = lines[i]?.line
        const before = apart[i]?.line
        const near = (value: number | undefined, other: number) => {
          expect(Math.abs((value ?? NaN) - other), `seed ${seed} ${c.id}`).toBeLessThan(
            1e-6 * Math.abs(other) + 1e-7,
          )
        }
        near(line?.y, oy)
        near(line?.z, oz)
        near(line?.sy, sy)
        near(line?.sz, sz)
        if (Math.hypot((line?.y ?? 0) - (before?.y ?? 0), (line?.z ?? 0) - (before?.z ?? 0)) > 1)
          moved += 1
        const joint = joints.find((one) => one.c === c)
        const spread = (k: number) =>
          Math.sqrt(
            theirs.reduce((sum, { group, effects }) => {
              const by = effects
                .filter(({ to }) => group !== 'gap' && to === (joint?.first ?? NaN) + k)
                .reduce((all, effect) => all + effect.by, 0)
              return sum + by * by
            }, 0),
          )
        const own = (of: 'y' | 'z' | 'sy' | 'sz') =>
          Math.hypot(
            ...errors.flatMap(({ effects }) =>
              effects.filter(({ coupling }) => coupling === i).map(({ by }) => by.misalignment[of]),
            ),
          )
        near(own('y'), spread(0))
        near(own('z'), spread(1))
        near(own('sy'), spread(2))
        near(own('sz'), spread(3))
        const covariance = lines[i]?.covariance ?? []
        near(Math.sqrt(covariance[0]?.[0] ?? NaN), spread(0))
        near(Math.sqrt(covariance[3]?.[3] ?? NaN), spread(3))
        // what is told as read: errors of values alone, not of brackets and places
        const byValues = [
          ...found.surveyed.map(({ by }) => by.get(c) ?? []),
          ...second.couplings.flatMap((from) => {
            const fit = fitted(from)
            return misreads(from, fit)
              .slice(0, fit.reads.length)
              .map(({ changes }) => found.carried(from, fit.answering(changes)).get(c) ?? [])
          }),
        ]
        const told = report.asFound[i]?.u
        const ofValues = (k: number) => Math.hypot(...byValues.map((four) => four[k] ?? 0))
        near(told?.offset.y, ofValues(0))
        near(told?.offset.z, ofValues(1))
        near(told?.slope.y, ofValues(2))
        near(told?.slope.z, ofValues(3))
      })
    }
    expect(moved).toBeGreaterThan(trains)
  })
})
