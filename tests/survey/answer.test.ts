import { describe, expect, it } from 'vitest'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { reportJson } from '../../src/json/planJson'
import { standingFigures } from '../../src/scene/figures'
import { checkText } from '../../src/text/checkText'
import { foundFrom, train } from '../published/three'
import { caseOf } from '../published/cases'

type Lines = Parameters<typeof foundFrom>[0]
const t1 = caseOf<{ input: Lines; expected: unknown }>('trains', 'T1').input

/** T1 with a survey of its true heights (mil), the height of the gear at 75 in off by so much. */
function surveyed(off: number, more: object = {}): TrainDocument {
  const height = (machine: string, x: number) =>
    machine === 'motor' ? 18 - 0.2 * x : machine === 'gear' ? -12 + 0.1 * x : 0
  const places = [
    ['motor', 0],
    ['motor', 40],
    ['gear', 75],
    ['gear', 95],
    ['compressor', 130],
    ['compressor', 180],
  ] as const
  return {
    ...train({ found: foundFrom(t1), held: ['compressor'] }),
    surveys: [
      {
        id: 'level',
        u: 0.2,
        points: places.map(([machine, x]) => ({
          machine,
          x,
          z: height(machine, x) + (x === 75 ? off : 0),
        })),
        ...more,
      },
    ],
  } as unknown as TrainDocument
}

function report(document: TrainDocument) {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return { train: read.train, report: checkRead(read.train) }
}

const json = (document: TrainDocument) => {
  const { train: of, report: told } = report(document)
  return reportJson(told, of.units).surveys?.[0]
}

describe('what is told of a survey', () => {
  it('is in the units of the document', () => {
    const mil = json(surveyed(5))
    expect(mil).toMatchObject({ survey: 'level', agree: false, joins: false, dof: 4, risk: 0.05 })
    expect(mil?.explains[0]).toMatchObject({ machine: 'gear', x: 75, way: 'z', off: 5 })
    expect(mil?.where).toMatchObject({ machine: 'gear', x: 75 })
    expect(mil?.where?.apart?.by).toBeCloseTo(5, 9)
    const um = json(switchUnits(surveyed(5), { length: 'mm', fine: 'um', temperature: 'C' }))
    expect(um?.chi2).toBeCloseTo(mil?.chi2 ?? NaN, 6)
    expect(um?.where?.x).toBeCloseTo(75 * 25.4, 9)
    expect(um?.where?.apart?.by).toBeCloseTo(127, 6)
  })

  it('names the place, the size, the risk and what to do', () => {
    const { train: of, report: told } = report(surveyed(5))
    const text = checkText(of, told).replace(/\s+/g, ' ')
    expect(text).toContain('Survey 1 contradicts the readings of the couplings')
    expect(text).toContain('at most once in 20')
    expect(text).toContain('the height of gear at x 75 in, 5.0 mil too high; read it again')
    expect(text).toContain('The plan stands on the readings alone.')
    expect(told.findings.map(({ where }) => where)).toEqual(['surveys[0].points[2]'])
  })

  it('is a low place where it is low, and no finding where all agree', () => {
    const low = report(surveyed(-5))
    expect(checkText(low.train, low.report).replace(/\s+/g, ' ')).toContain('5.0 mil too low')
    const sound = report(surveyed(0.1))
    expect(sound.report.surveys?.[0]?.agree).toBe(true)
    expect(sound.report.findings).toEqual([])
  })

  it('is a coupling by its name and side where that was read wrongly', () => {
    const document = surveyed(0)
    const [first] = document.couplings
    const [set] = first?.found ?? []
    if (set?.kind !== 'line' || !set.offset) throw new Error('T1 has lost its lines')
    // read 6 mil too far up: the gear is said to lie higher than it does
    set.offset.z = (set.offset.z ?? 0) + 6
    const entries = json(document)?.explains ?? []
    const offset = entries.find((one) => 'coupling' in one && one.what === 'offset')
    expect(offset).toMatchObject({ coupling: 'coupling 1', way: 'z' })
    expect(offset?.off).toBeCloseTo(6, 9)
    expect(offset?.left).toBeCloseTo(0, 6)
  })

  it('is left out where there is none, and where none is used', () => {
    expect(json({ ...surveyed(5), surveys: [] })).toBeUndefined()
    expect(json(surveyed(5, { use: false }))).toBeUndefined()
  })
})

describe('what is unsure of the far end of a train', () => {
  it('falls when a survey joins', () => {
    const end = (joins: boolean) => {
      const drift = standingFigures(report(surveyed(0, { joins })).train).drift
      return drift[0]?.points[0]?.rise ?? NaN
    }
    // two couplings, read to 0.05 mrad and carried over 110 in and 60 in, against heights known to 0.2 mil
    expect(end(true)).toBeLessThan(0.2 * end(false))
    expect(end(true)).toBeGreaterThan(0)
  })
})
