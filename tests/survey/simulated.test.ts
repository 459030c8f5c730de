import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { surveyChecks } from '../../src/mechanics/uncertainty/surveyChecks'
import type { Train } from '../second/train'
import { soundJob, spoiledJob } from './simulated'

const long = process.env.HOLDFAST_LONG === '1'
const jobs = long ? 2000 : 500

function checked(document: Train) {
  const answer = readTrain(document)
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  const [check] = surveyChecks(answer.train)
  if (!check) throw new Error('no check')
  return check
}

describe(`surveys of ${jobs} jobs whose true errors are drawn by other code`, () => {
  it('that are sound are said to disagree in 6 % at most', () => {
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

  it('with one entry off by 6 sigma are said to disagree in 95 %, and the entry is among those named', () => {
    let [flagged, among, alone, right] = [0, 0, 0, 0]
    for (let seed = 1; seed <= jobs; seed++) {
      const { train, planted } = spoiledJob(seed, 6)
      const check = checked(train)
      if (check.agree) continue
      flagged++
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
  })
})
