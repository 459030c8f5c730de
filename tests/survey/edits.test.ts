import { describe, expect, it } from 'vitest'
import { moveMachine, removeMachine } from '../../src/document/edits/machines'
import { shiftMachine } from '../../src/document/edits/shiftMachine'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { standNow } from '../../src/engine/fieldwork/loop/standNow'
import { everyField } from '../entry/everyField'
import { withSurveys } from '../second/randomSurvey'
import { given, twoMachines } from '../second/pairs'

const pointsOf = ({ surveys }: TrainDocument) => surveys?.map(({ points }) => points)

describe('places that were surveyed', () => {
  it('go along with a machine that is moved along the train', () => {
    const before = everyField()
    const { document } = shiftMachine(before, 0, -25)
    const [points] = pointsOf(document) ?? []
    expect(points?.map(({ machine, x }) => [machine, x])).toEqual([
      ['motor', 75],
      ['motor', 875],
      ['pump', 3500],
    ])
  })

  it('go with a machine that is taken out, and a survey of nothing else with them', () => {
    const before = everyField()
    const [survey] = before.surveys ?? []
    if (!survey) throw new Error('everyField.ts has lost its survey')
    const own = { ...survey, id: 'own', points: survey.points.slice(0, 2) }
    const { document } = removeMachine({ ...before, surveys: [survey, own] }, 0)
    expect(pointsOf(document)?.map((points) => points.map(({ machine }) => machine))).toEqual([
      ['pump'],
    ])
    // what is left tells of another train
    expect(document.surveys?.[0]).toMatchObject({
      use: false,
      why: 'a machine that was surveyed was taken out',
    })
  })

  it('count no more once machines stand in another order, and refuse nothing', () => {
    const { document } = moveMachine(everyField(), 0, 1)
    for (const survey of document.surveys ?? []) expect(survey.use).toBe(false)
    const read = readTrain(document)
    const at = read.ok ? [] : read.refused.map((refusal) => refusal.at)
    expect(at.filter((place) => place.startsWith('surveys'))).toEqual([])
  })

  describe('once the train was worked on', () => {
    const train = withSurveys(twoMachines({ offset: 50 }, [given(10, 200)]), 3) as TrainDocument
    const stood = (lift: number) => {
      const read = readTrain(train)
      if (!read.ok) throw new Error(JSON.stringify(read.refused))
      const round = {
        actuals: ['1000a', '1000b', '2000a', '2000b'].map((foot) => ({
          body: 'B',
          foot,
          shim: lift,
          side: 0,
        })),
        readings: [
          { coupling: 'c', set: 0, offset: { y: 10, z: 200 + lift }, slope: { y: 0, z: 0 } },
        ],
        sign: { when: '2026-05-05' },
        after: 'step 2',
      }
      const now = standNow(read.document, read.train, round)
      if (!now.ok) throw new Error(now.why)
      return now.document
    }

    it('tell of a train that is no more, and stay in the file unused', () => {
      const now = stood(-150)
      for (const survey of now.surveys ?? [])
        expect(survey).toMatchObject({ use: false, why: 'surveyed before step 2' })
      expect(pointsOf(now)).toEqual(pointsOf(train))
      expect(readTrain(now).ok).toBe(true)
    })

    it('count as before where nothing was moved', () => {
      expect(stood(0).surveys).toEqual(train.surveys)
    })
  })
})
