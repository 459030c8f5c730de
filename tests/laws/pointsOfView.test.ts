import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { AnswerJson } from '../../src/json/answerJson'
import { converted } from '../second/metric'
import { fineFactor, lengthFactor, type Train } from '../second/train'
import {
  apart,
  differences,
  faultsOf,
  fineOf,
  movesOf,
  original,
  patience,
  plan,
  seeds,
  Tally,
  type Move,
} from './bench'
import { mirrored, mirroredMove, reversed, reversedMove, shifted } from './pointsOfView'

/** Moves nearer than this are the same (um; turns in um at a metre). */
const sameMove = 0.05

interface PointOfView {
  readonly name: string
  readonly change: (train: Train) => Train
  /** Turns a move of the changed train into one of the original. */
  readonly back: (move: Move) => Move
}

const stay = (move: Move): Move => move

/** The train in other units, temperatures the other way about. */
const written = (length: 'mm' | 'in', fine: 'um' | 'mm' | 'mil') => (train: Train) => {
  const long = lengthFactor(train) / { mm: 1, in: 25.4 }[length]
  const size = fineFactor(train) / { um: 1, mm: 1000, mil: 25.4 }[fine]
  const scaled = converted(train, { length: (v) => v * long, fine: (v) => v * size })
  return otherDegrees({ ...scaled, units: { ...train.units, length, fine } })
}

function otherDegrees(train: Train): Train {
  const toFahrenheit = train.units.temperature !== 'F'
  const degrees = (v: number) => (toFahrenheit ? v * 1.8 + 32 : (v - 32) / 1.8)
  const machines = train.machines.map((machine) => ({
    ...machine,
    growth:
      machine.growth &&
      Object.fromEntries(
        Object.entries(machine.growth).map(([state, points]) => [
          state,
          points.map(({ heat, ...point }) => ({
            ...point,
            heat: heat && {
              ...heat,
              expansion: toFahrenheit ? heat.expansion / 1.8 : heat.expansion * 1.8,
              from: degrees(heat.from),
              to: degrees(heat.to),
            },
          })),
        ]),
      ),
  }))
  return {
    ...train,
    machines,
    units: { ...train.units, temperature: toFahrenheit ? 'F' : 'C' },
  }
}

const views: PointOfView[] = [
  { name: 'in mm and um', change: written('mm', 'um'), back: stay },
  { name: 'in mm throughout', change: written('mm', 'mm'), back: stay },
  { name: 'in inches and mils', change: written('in', 'mil'), back: stay },
  { name: 'shifted along x', change: (train) => shifted(train, 1234.5), back: stay },
  { name: 'mirrored left to right', change: mirrored, back: mirroredMove },
  { name: 'reversed end for end', change: reversed, back: reversedMove },
  {
    name: 'turned half round',
    change: (train) => mirrored(reversed(train)),
    back: (move) => mirroredMove(reversedMove(move)),
  },
]

describe.each(views)('a train $name', ({ change, back }) => {
  it(
    'has the same answer, and its moves are a proven plan of the train as first written',
    () => {
      const tally = new Tally()
      for (const seed of seeds(16, 20)) {
        const { train, answer } = original(seed)
        const other = change(train)
        const after = plan(other)
        const fine = { before: fineOf(train), after: fineOf(other) }
        expect(differences(answer, after, fine), `seed ${seed}`).toEqual([])
        tally.add(after.status)
        if (after.bodies === undefined) continue
        const moves = movesOf(after, fine.after, back)
        expect(faultsOf(train, answer, moves), `seed ${seed}`).toEqual([])
        if (after.status !== 'planned') continue
        const by = apart(movesOf(answer, fine.before), moves)
        if (by <= sameMove) {
          tally.add('same moves')
          expect(sharesApart(answer, after), `seed ${seed}`).toBeLessThan(1e-3)
        }
      }
      for (const status of ['planned', 'in-tolerance', 'impossible'])
        expect(tally.of(status), status).toBeGreaterThan(0)
      // plans equal in cost, floor and worst share may differ in their moves, but most do not
      expect(tally.of('same moves')).toBeGreaterThanOrEqual(0.6 * tally.of('planned'))
    },
    patience,
  )
})

/** Most that the shares of the same coupling in the same state differ by. */
function sharesApart(before: AnswerJson, after: AnswerJson): number {
  const rows = before.couplings ?? []
  const gaps = rows.map(({ coupling, state, share }) => {
    const other = after.couplings?.find((c) => c.coupling === coupling && c.state === state)
    return Math.abs(share - (other?.share ?? Infinity))
  })
  return Math.max(...gaps)
}

it('is noticed when hours are left as they were in the mirror', () => {
  const noticed = seeds(16, 20).filter((seed) => {
    const { train, answer } = original(seed)
    const wrong: Train = {
      ...mirrored(train),
      couplings: mirrored(train).couplings.map((coupling, c) => ({
        ...coupling,
        found: coupling.found.map((set, i) => {
          const as = train.couplings[c]?.found[i]
          return set.kind !== 'line' && as?.kind === set.kind ? as : set
        }),
      })),
    }
    return differences(answer, plan(wrong), { before: 1, after: 1 }).length > 0
  })
  expect(noticed.length).toBeGreaterThan(10)
})

it.each(['bolt-bound-gearbox', 'piped-compressor', 'base-bound-motor'])(
  'in the mirror the words of %s name the same sides of the room',
  (file) => {
    const train = JSON.parse(
      readFileSync(new URL(`../../examples/${file}.json`, import.meta.url), 'utf8'),
    ) as Train
    const [before, after] = [train, mirrored(train)].map((t) => plan(t, { prices: true }))
    const words = (answer: AnswerJson | undefined) =>
      (answer?.binding ?? []).map(({ limit, where }) => `${limit}: ${where}`).sort()
    expect(words(before).length).toBeGreaterThan(2)
    expect(words(after)).toEqual(words(before))
    expect(after?.findings).toEqual(before?.findings)
    expect(after?.notEntered).toEqual(before?.notEntered)
  },
)
