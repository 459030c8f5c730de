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

/** What is found of surveys: the tolerance, as wide as can be, is asked about too. */
const ofSurveys = ({ findings }: ReturnType<typeof checkRead>) =>
  findings.filter(({ where }) => where.startsWith('surveys'))

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
    const [finding, ...more] = ofSurveys(report)
    expect(more).toEqual([])
    expect(finding?.where).toBe('surveys')
    expect(finding?.what).toContain('Survey 1 and survey 2 contradict one another')
    expect(finding?.what).toContain('are fitted to both all the same')
    expect(checkText(train, report).replace(/\s+/g, ' ')).toContain(
      'Survey 1 and survey 2 contradict one another',
    )
    for (const { others } of report.surveys ?? []) expect(others?.agree).toBe(false)
    expect(report.surveysTogether?.agree).toBe(false)
    expect(ofSurveys(checkRead(surveyed([260, 255])))).toEqual([])
  })

  it('that nothing joins are told apart from the plan', () => {
    const [finding] = ofSurveys(checkRead(surveyed([260, -260], false)))
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

/**
 * Three machines in a row, the couplings between them at x = 100 and 300 mm, read to 20 um and a slope as good as exactly;
 * two surveys of heights known to 10 um, at three places of each machine.
 */
const three = (read: number, off: readonly number[] = []) => {
  const machine = (id: string, x: number) => ({
    ...{ id, name: id, axis: { z: 500 } },
    feet: [
      { id: '1', x, y: -200 },
      { id: '2', x, y: 200 },
      { id: '3', x: x + 80, y: -200 },
      { id: '4', x: x + 80, y: 200 },
    ],
  })
  const coupling = (left: string, right: string, at: number, z: number) => ({
    ...{
      id: `${left}${right}`,
      left: { machine: left, plane: at },
      right: { machine: right, plane: at },
    },
    tolerance: { offset: 2000, angle: 50 },
    found: [{ kind: 'line', at, offset: { y: 0, z }, slope: { y: 0, z: 0 }, u: 20, uSlope: 0.001 }],
  })
  const places = [
    ['A', 0],
    ['A', 80],
    ['B', 110],
    ['B', 190],
    ['B', 290],
    ['C', 310],
    ['C', 390],
  ] as const
  const answer = readTrain({
    ...{ format: 'holdfast-train', version: 1, name: 'three' },
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'left' },
    machines: [machine('A', 0), machine('B', 110), machine('C', 310)],
    couplings: [coupling('A', 'B', 100, read), coupling('B', 'C', 300, 0)],
    surveys: [0, 1].map((s) => ({
      id: `s${s + 1}`,
      u: 10,
      points: places.map(([on, x], p) => ({
        ...{ machine: on, x },
        z: 500 + x + (p === 3 && s === 1 ? (off[0] ?? 0) : 0),
      })),
    })),
  })
  if (!answer.ok) throw new Error(JSON.stringify(answer.refused))
  return answer.train
}

describe('one entry that makes several surveys contradict', () => {
  // a line of a survey takes the 1 mm/m that the heights rise by: what is left is that B and C lie straight on with A
  it('is named once for all of them: the offset that a coupling was read with', () => {
    const train = three(300)
    expect(surveyChecks(train).single.map(({ agree }) => agree)).toEqual([false, false])
    const { surveysTogether: all, findings } = checkRead(train)
    expect(all?.agree).toBe(false)
    expect(all?.explains).toHaveLength(1)
    expect(all?.explains[0]).toMatchObject({ coupling: 'AB', what: 'offset', way: 'z' })
    expect(all?.explains[0]?.off).toBeCloseTo(300, 3)
    expect(all?.sentence).toContain(
      'one entry would explain all of it: the offset of A to B as read, 300 µm too far up; read it again',
    )
    const [said, ...more] = findings.filter(({ where }) => where === 'surveys')
    expect(said?.what).toContain('one entry would explain all of it')
    expect(more).toEqual([])
  })

  it('is told with its survey where it stands in one of them', () => {
    const { surveysTogether: all } = checkRead(three(0, [150]))
    expect(all?.agree).toBe(false)
    expect(all?.explains[0]).toMatchObject({ survey: 's2', machine: 'B', x: 190, way: 'z' })
    expect(all?.explains[0]?.off).toBeCloseTo(150, 3)
    expect(all?.sentence).toContain('the height of B at x 190 mm in survey 2, 150 µm too high')
  })

  it('is none where two things are wrong, and none where nothing is', () => {
    expect(checkRead(three(300, [150])).surveysTogether?.explains).toEqual([])
    expect(checkRead(three(0)).surveysTogether).toMatchObject({ agree: true, explains: [] })
  })
})
