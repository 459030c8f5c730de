import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { chiSquareQuantile } from '../../src/mechanics/chiSquare'
import { surveyChecks } from '../../src/mechanics/uncertainty/surveyChecks'
import type { Train } from '../second/train'
import { soundJob, spoiledJob } from './simulated'
import { counted, isWhole } from '../counts'

const jobs = counted(150, 2000, 300)

function checked(document: Train) {
  const answer = readTrain(document)
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  const [check] = surveyChecks(answer.train).single
  if (!check) throw new Error('no check')
  return check
}

describe(`surveys of ${jobs} jobs whose true errors are drawn by other code`, () => {
  it.runIf(isWhole)('that are sound are said to disagree in 6 % at most', () => {
    let [wrong, squares, freedom] = [0, 0, 0]
    for (let seed = 1; seed <= jobs; seed++) {
      const check = checked(soundJob(seed))
      if (!check.agree) wrong++
      squares += check.squares
      freedom += check.freedom
    }
    console.log(`sound: ${wrong} of ${jobs} flagged, chi-square ${squares / freedom} of its mean`)
    expect(wrong / jobs).toBeLessThan(0.06)
    // a test that never says no would show here
    expect(wrong).toBeGreaterThan(0)
    // four standard deviations of a sum of chi-squares
    expect(Math.abs(squares - freedom)).toBeLessThan(4 * Math.sqrt(2 * freedom))
  })

  it.runIf(isWhole)(
    'that are sound, two and three of them, are said to contradict by any test in 6 % at most',
    () => {
      let [wrong, together, squares, freedom, among, amongFreedom] = [0, 0, 0, 0, 0, 0]
      for (let seed = 1; seed <= jobs; seed++) {
        const answer = readTrain(soundJob(seed, 2 + (seed % 2)))
        if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
        const checks = surveyChecks(answer.train)
        if (!checks.together) throw new Error('no check of all')
        if (!checks.together.agree || checks.single.some(({ agree }) => !agree)) wrong++
        if (!checks.together.agree) together++
        squares += checks.together.all.squares
        freedom += checks.together.all.freedom
        among += checks.together.among?.squares ?? 0
        amongFreedom += checks.together.among?.freedom ?? 0
      }
      console.log(
        `sound together: ${wrong} of ${jobs} flagged, ${together} together; chi-square ${squares / freedom}, among ${among / amongFreedom} of its mean`,
      )
      expect(wrong / jobs).toBeLessThan(0.06)
      expect(together).toBeGreaterThan(0)
      // four standard deviations of a sum of chi-squares
      expect(Math.abs(squares - freedom)).toBeLessThan(4 * Math.sqrt(2 * freedom))
      expect(Math.abs(among - amongFreedom)).toBeLessThan(4 * Math.sqrt(2 * amongFreedom))
    },
  )

  it.runIf(isWhole)(
    'with one entry off by 6 sigma are said to disagree in 95 %, and the entry is among those named',
    () => {
      let [flagged, among, alone, right] = [0, 0, 0, 0]
      for (let seed = 1; seed <= jobs; seed++) {
        const { train, planted } = spoiledJob(seed, 6)
        const check = checked(train)
        if (check.agree) continue
        flagged++
        // whatever is named leaves, out of the way, what chance leaves
        const most = check.freedom > 1 ? chiSquareQuantile(0.05, check.freedom - 1) : Infinity
        for (const { left } of check.explains) expect(left, `job ${seed}`).toBeLessThanOrEqual(most)
        const isPlanted = check.explains.map((one) =>
          planted.kind === 'point'
            ? one.kind === 'point' && one.index === planted.index && one.way === planted.way
            : one.kind === 'coupling' &&
              one.coupling === planted.coupling &&
              one.number === planted.number,
        )
        if (isPlanted.includes(true)) among++
        if (isPlanted.length !== 1) continue
        alone++
        if (isPlanted[0] === true) right++
      }
      console.log(
        `spoiled: ${flagged} of ${jobs} flagged, named among ${among}, alone ${alone}, right ${right}`,
      )
      expect(flagged / jobs).toBeGreaterThanOrEqual(0.95)
      expect(among / flagged).toBeGreaterThan(0.85)
      expect(right / alone).toBeGreaterThan(0.95)
      expect(alone).toBeGreaterThan(0)
    },
  )
})
