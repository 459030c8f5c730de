import { describe, expect, it } from 'vitest'
import { limitName } from '../../src/engine/infeasible/conflict/limitWords'
import type { Conflict } from '../../src/engine/infeasible/conflict/answer'
import { conflictsOf, contradictionOf } from '../../src/engine/infeasible/conflict/conflict'
import { asFound } from '../../src/mechanics/readings/asFound'
import { glpkSolver } from '../../src/solvers/glpk'
import { given, twoMachines } from '../second/pairs'
import { example, trainOf } from './examples'

const solver = await glpkSolver()

function conflicts(file: string, held: readonly string[]): Conflict[] {
  const train = trainOf(example(file, held))
  return conflictsOf(contradictionOf(train, train.couplings.map(asFound), solver), solver)
}

const partsOf = (told: readonly Conflict[]) =>
  told.flatMap(({ members }) =>
    members.map(({ limit }) =>
      [
        limitName(limit),
        limit.kind === 'coupling' ? limit.coupling : limit.body,
        ('toward' in limit && limit.toward) || '',
      ]
        .join(' ')
        .trim(),
    ),
  )

describe('why holding the gear is refused in bolt-bound-gearbox', () => {
  const told = conflicts('bolt-bound-gearbox', ['gear'])

  it('is the sideways room of the low stage, then its flange', () => {
    expect(partsOf(told.slice(0, 1))).toEqual([
      'held gear',
      'tolerance low-gear',
      'hole low-stage nine',
    ])
    expect(partsOf(told.slice(1, 2))).toEqual([
      'held gear',
      'tolerance low-gear',
      'restraint low-stage nine',
    ])
  })

  it('is said with what is missing, and toward which side', () => {
    expect(told[0]?.sentence).toMatch(
      /^With the step-up gear fixed, low stage to gear in turndown cannot come within the 70 % of tolerance asked for: the feet of the low-stage compressor lack at least \d+ µm toward the workshop/,
    )
    expect(told[1]?.sentence).toContain('outlet flange of the low-stage compressor lacks')
  })

  it('holding the low stage too is worse, and no limit of a foot is to blame', () => {
    const both = conflicts('bolt-bound-gearbox', ['low-stage', 'gear'])
    expect(partsOf(both)).toEqual(['held low-stage', 'held gear', 'tolerance low-gear'])
    expect(both[0]?.floor).toBeGreaterThan(told[0]?.floor ?? Infinity)
  })
})

describe('why the motor is base-bound in base-bound-motor', () => {
  it.each([
    ['holding the fluid drive', ['fluid-drive']],
    ['moving the motor only', ['fluid-drive', 'gear', 'pump']],
  ])('%s: it has no shims left to go down by', (_, held) => {
    const [first] = conflicts('base-bound-motor', held)
    expect(partsOf(first ? [first] : [])).toEqual([
      'held fluid-drive',
      'tolerance motor-drive',
      'minimum pack motor down',
    ])
    expect(first?.sentence).toMatch(
      /the feet of the spare motor lack (at least )?1[23]\d\d µm downward \(base-bound, packs at their minimum\)/,
    )
  })

  it('with the fluid drive alone held, its feet lack 1.3 mm: lowered by that they are enough', () => {
    const document = example('base-bound-motor', ['fluid-drive'])
    const lowered = (by: number) => {
      const train = trainOf({
        ...document,
        machines: document.machines.map((machine) => ({
          ...machine,
          feet: machine.feet.map((foot) =>
            machine.id === 'motor' && foot.pack
              ? { ...foot, pack: { ...foot.pack, now: foot.pack.now + by } }
              : foot,
          ),
        })),
      })
      return conflictsOf(contradictionOf(train, train.couplings.map(asFound), solver), solver)
        .length
    }
    const [first] = conflicts('base-bound-motor', ['fluid-drive'])
    const lack = Number(/lack (\d+) µm/.exec(first?.sentence ?? '')?.[1])
    expect(lowered(lack + 1)).toBe(0)
    expect(lowered(lack - 1)).toBeGreaterThan(0)
  })
})

describe('why a change between states cannot be planned away', () => {
  it('names both states, no foot and no held body', () => {
    const document = example('piped-compressor', [])
    const train = trainOf({ ...document, plan: { ...document.plan, share: 0.6 } })
    const [first] = conflictsOf(
      contradictionOf(train, train.couplings.map(asFound), solver),
      solver,
    )
    expect(first?.members.every(({ limit }) => limit.kind === 'coupling')).toBe(true)
    expect(
      new Set(first?.members.map(({ limit }) => limit.kind === 'coupling' && limit.state)).size,
    ).toBeGreaterThan(1)
    expect(first?.sentence).toMatch(/^Whatever is fixed, .* and no move can close that\.$/)
  })

  it('needs as much more as each says, by itself', () => {
    const [first] = conflicts('piped-compressor', ['motor', 'compressor'])
    expect(first?.members.filter(({ lacks }) => lacks !== null).length).toBeGreaterThan(1)
    for (const { limit, lacks } of first?.members ?? []) {
      if (limit.kind === 'held') expect(lacks).toBeNull()
      else {
        expect(lacks?.amount).toBeGreaterThan(0)
        expect(lacks?.quantity).toBe('slope')
      }
    }
  })
})

it('a train that can be planned has no conflict', () => {
  expect(conflicts('bolt-bound-gearbox', ['low-stage'])).toEqual([])
})

describe('two states of one coupling that want 100 um between them, within 40', () => {
  const hot = { growth: { hot: [{ at: 0, rise: 100 }] } }
  const states = ['cold', 'hot'].map((id) => ({ id, name: id }))
  const train = trainOf(
    twoMachines({ offset: 40, angle: 1 }, [given(0, 0)], hot, { states, plan: { share: 1 } }),
  )
  const [told] = conflictsOf(
    contradictionOf(train, train.couplings.map(asFound), solver),
    solver,
    1,
  )

  it('lack 10 um, since a tolerance is entered once for both, and never more than is enough', () => {
    expect(told?.members.map(({ limit }) => limit.kind)).toEqual(['coupling', 'coupling'])
    for (const { lacks, alone } of told?.members ?? []) {
      expect(lacks?.amount).toBeCloseTo(10, 2)
      expect(alone?.amount).toBeCloseTo(10, 2)
    }
    expect(told?.sentence).toContain('at least 10 µm more of offset would be needed')
  })
})
