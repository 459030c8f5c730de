import { describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { ChanceStudy } from '../../src/engine/chance/chanceStudy'
import { sureSentence } from '../../src/engine/chance/sentence'
import { sureAnswer } from '../../src/engine/chance/sureAnswer'
import { foundLines } from '../../src/mechanics/uncertainty/foundLines'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { surveyChecks } from '../../src/mechanics/uncertainty/surveyChecks'
import { checkText } from '../../src/text/checkText'
import { twoMachines } from '../second/pairs'
import { known, wide } from '../sure/handWorked'

/**
 * Two machines with the coupling at x = 100 mm, its offset known to 300 um and its slope as good as exactly. Each survey tells
 * the offset by three heights known to 10 um: 10 times the root of 1 + 4 + 1, so the variance is 600 um2.
 */
const surveyed = (offsets: readonly number[], joins = true) => {
  const answer = readTrain(
    twoMachines(
      { offset: wide },
      [{ ...known(0, 0, 300), uSlope: 1e-6 }],
      {},
      {
        surveys: offsets.map((b, i) => ({
          id: `s${i + 1}`,
          u: 10,
          joins,
          points: [
            { machine: 'A', x: 0, z: 500 },
            { machine: 'A', x: 100, z: 700 },
            { machine: 'B', x: 200, z: 900 + b },
          ],
        })),
      },
    ),
  )
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  return answer.train
}

describe('two surveys that each agree with readings that are weak', () => {
  it('contradict one another where their difference says so', () => {
    const { single, together } = surveyChecks(surveyed([260, -260]))
    expect(single.map(({ agree }) => agree)).toEqual([true, true])
    // the difference 520 has the variance 2 * 600, and what they say together, nothing, is what was read
    expect(together?.all.squares).toBeCloseTo(520 ** 2 / 1200, 4)
    expect(together?.all.freedom).toBe(2)
    expect(together?.among?.squares).toBeCloseTo(520 ** 2 / 1200, 4)
    expect(together?.among?.freedom).toBe(1)
    // given the other, all but what the other alone differs by from the readings, whose variance is 300 squared
    expect(together?.others.get(0)?.squares).toBeCloseTo(520 ** 2 / 1200 - 260 ** 2 / 90_600, 4)
    expect(together?.others.get(0)?.freedom).toBe(1)
    expect(together?.agree).toBe(false)
  })

  it('agree together where they say the same, and there is no such test of one', () => {
    expect(surveyChecks(surveyed([260, 255])).together?.agree).toBe(true)
    expect(surveyChecks(surveyed([260])).together).toBeUndefined()
  })

  it('share the risk, so that the chance to accuse a sound train stays that of one survey', () => {
    const two = surveyChecks(surveyed([0, 0]))
    const risks = two.single.map(({ risk }) => risk)
    expect(risks).toEqual([0.0125, 0.0125])
    expect(risks.reduce((a, b) => a + b, two.together?.risk ?? NaN)).toBeCloseTo(0.05, 12)
    expect(surveyChecks(surveyed([0])).single[0]?.risk).toBe(0.05)
  })

  it('are told beside the chance, which does not count it, where the lines are fitted to them', () => {
    const told = (offsets: readonly number[], joins = true) => {
      const train = surveyed(offsets, joins)
      const study = new ChanceStudy(train, foundLines(train))
      return sureSentence(train, sureAnswer(study, undefined, undefined))
    }
    const words = 'contradicts what else is known: no chance counts that'
    expect(told([260, -260])).toContain(words)
    expect(told([260, 255])).not.toContain(words)
    expect(told([260, -260], false)).not.toContain(words)
  })

  it('are told so in a finding and in the text, with what is planned on', () => {
    const train = surveyed([260, -260])
    const report = checkRead(train)
    const [finding, ...more] = report.findings.filter(({ where }) => where.startsWith('surveys'))
    expect(more).toEqual([])
    expect(finding?.where).toBe('surveys')
    expect(finding?.what).toContain('Survey 1 and survey 2 contradict one another')
    expect(finding?.what).toContain('are fitted to both all the same')
    expect(checkText(train, report).replace(/\s+/g, ' ')).toContain(
      'Survey 1 and survey 2 contradict one another',
    )
    for (const { others } of report.surveys ?? []) expect(others?.agree).toBe(false)
    expect(report.surveysTogether?.agree).toBe(false)
    expect(checkRead(surveyed([260, 255])).findings).toEqual([])
  })

  it('that nothing joins are told apart from the plan', () => {
    const [finding] = checkRead(surveyed([260, -260], false)).findings
    expect(finding?.what).toContain('contradict one another')
    expect(finding?.what).toContain('the plan stands on the readings alone')
  })
})

describe('two surveys that agree with one another and not with the readings', () => {
  it('are not said to contradict one another', () => {
    const report = checkRead(surveyed([1500, 1500]))
    expect(report.surveysTogether?.among?.agree).toBe(true)
    expect(report.findings.map(({ what }) => what).join(' ')).not.toContain('one another')
  })
})
