import { describe, expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { changesSince, notComparable } from '../../src/engine/fieldwork/since/changes'
import { overTimes, sinceOf, type FittedSuspect } from '../../src/engine/fieldwork/since/since'
import { movedAt, sinceWords } from '../../src/engine/fieldwork/since/sinceWords'
import { sinceJson } from '../../src/json/sinceJson'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { isWhole, counted } from '../counts'
import { Random } from '../second/random'
import { readAfter, startLines, type Walk } from './walking'

function read(document: TrainDocument): Train {
  const result = readTrain(document)
  if (!result.ok) throw new Error(JSON.stringify(result.refused))
  return result.train
}

const jobs = counted(60, 2000, 200)

/** A walk of a tenth of a millimetre and more at some end. */
function walkOf(random: Random, machine: number): Walk {
  const end = () => ({ y: random.between(-200, 200), z: random.between(-200, 200) })
  return { machine, left: { ...end(), z: random.pick([-160, 160]) }, right: end() }
}

/** A machine inside the train shows at both its couplings; at an end no reading tells it from a wrong one. */
const inside = [1, 2, 3] as const
const atAnEnd = [0, 4] as const

describe('which machine walked since the last time', () => {
  test('one inside the train is named, and where it stands, in 95 of 100', () => {
    let [named, right] = [0, 0]
    for (let seed = 1; seed <= jobs; seed++) {
      const random = new Random(seed)
      const walk = walkOf(random, random.pick(inside))
      const then = read(readAfter(random))
      const now = read(readAfter(random, walk))
      const [first, ...more] = sinceOf(then, now).causes
      if (first?.suspect.kind !== 'body' || first.suspect.body !== walk.machine || !first.explains)
        continue
      named++
      if (more.some(({ suspect }) => suspect.kind === 'body')) named--
      const body = now.bodies[walk.machine]
      if (!body || first.suspect.way !== undefined) continue
      const moved = { body: walk.machine, by: first.by, covariance: first.covariance }
      const [from, to] = [3000 * walk.machine, 3000 * walk.machine + 2400]
      const apart = [
        { told: movedAt(body, moved, from), true: walk.left },
        { told: movedAt(body, moved, to), true: walk.right },
      ].map(({ told, true: t }) =>
        Math.max(
          Math.abs(told.rise.by - t.z) / told.rise.u,
          Math.abs(told.side.by - t.y) / told.side.u,
        ),
      )
      if (Math.max(...apart) < 3.5) right++
    }
    expect(named / jobs).toBeGreaterThanOrEqual(0.95)
    expect(right / named).toBeGreaterThanOrEqual(0.97)
  })

  test('nobody is, where none did, in 95 of 100', () => {
    let quiet = 0
    for (let seed = 1; seed <= jobs; seed++) {
      const random = new Random(seed + 10_000)
      const since = sinceOf(read(readAfter(random)), read(readAfter(random)))
      if (!since.differs) quiet++
      else expect(since.causes.length).toBeGreaterThan(0)
    }
    expect(quiet / jobs).toBeGreaterThanOrEqual(0.95)
  })

  test.runIf(isWhole)(
    'over five outages one that walks a little every time is named in 95 of 100, and nobody where none does',
    () => {
      let [named, quiet, alone] = [0, 0, 0]
      const outages = 4
      for (let seed = 1; seed <= jobs; seed++) {
        const random = new Random(seed + 40_000)
        const machine = random.pick(inside)
        const sink = { y: 0, z: -random.between(25, 40) }
        const walk = { machine, left: sink, right: { y: 10, z: sink.z } }
        // left and found again four times, realigned in between
        const told = (by?: Walk) =>
          Array.from({ length: outages }, () => ({
            left: read(readAfter(random)),
            found: read(readAfter(random, by)),
          }))
        const together = (times: ReturnType<typeof told>) => {
          const now = times[0]?.found
          if (!now) throw new Error('no time')
          return overTimes(
            now,
            times.map(({ left, found }) => changesSince(left, found)),
          )
        }
        const walking = told(walk)
        const [first, ...more] = together(walking).causes
        const is = ({ suspect }: FittedSuspect) => suspect.kind === 'body'
        if (first && is(first) && 'body' in first.suspect && first.suspect.body === machine)
          if (first.explains && !more.some(is)) named++
        if (walking.every(({ left, found }) => sinceOf(left, found).differs)) alone++
        if (!together(told()).differs) quiet++
      }
      expect(named / jobs).toBeGreaterThanOrEqual(0.95)
      expect(quiet / jobs).toBeGreaterThanOrEqual(0.95)
      // one time alone would often not have shown it
      expect(alone / jobs).toBeLessThan(0.5)
    },
  )

  test('at an end a machine and the readings of its coupling are both named', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = new Random(seed + 20_000)
      const machine = random.pick(atAnEnd)
      const then = read(readAfter(random))
      const now = read(readAfter(random, walkOf(random, machine)))
      const { causes } = sinceOf(then, now)
      const kinds = causes.map(({ suspect }) =>
        suspect.kind === 'body'
          ? `m${suspect.body}`
          : suspect.kind === 'readings'
            ? `c${suspect.coupling}`
            : suspect.kind,
      )
      expect(kinds, `seed ${seed}`).toEqual(
        expect.arrayContaining([`m${machine}`, machine === 0 ? 'c0' : 'c3']),
      )
      expect(sinceWords(now, sinceOf(then, now)).headline).toMatch(/cannot tell them apart\.$/)
    }
  })

  test('two that walked are no one cause: it is said, and every place against one that is fixed', () => {
    const random = new Random(7)
    const then = read(readAfter(random))
    const once = readAfter(random, { machine: 1, left: { y: 0, z: 200 }, right: { y: 90, z: 0 } })
    const lines = once.couplings.map(({ found }) => {
      const [set] = found
      if (set?.kind !== 'line') throw new Error('no line')
      const { offset, slope } = set
      if (!offset || !slope) throw new Error('no line')
      const [y = 0, z = 0, sy = 0, sz = 0] = [offset.y, offset.z, slope.y, slope.z]
      return { y, z, sy, sz }
    })
    const twice = readAfter(
      random,
      { machine: 3, left: { y: 150, z: 0 }, right: { y: 0, z: -180 } },
      lines,
    )
    const now = read(twice)
    const { headline, stayed, places } = sinceWords(now, sinceOf(then, now))
    expect(headline).toMatch(/^More than one thing changed/)
    expect(stayed).toBe('the machine 2')
    expect(places).toHaveLength(4)
    const rows = sinceJson(now, sinceOf(then, now)).places
    const at = (body: string) => rows.filter((row) => row.body === body)
    // the feet stand 300 mm inside the ends: 200 at the left and 0 at the right, then 0 and -180
    const errors = (row: (typeof rows)[number] | undefined, stood: number) =>
      Math.abs((row?.rise ?? NaN) - stood) / (row?.u.rise ?? 0)
    expect(errors(at('m1')[0], 200 * (2100 / 2400))).toBeLessThan(4)
    expect(errors(at('m3')[1], -180 * (2100 / 2400))).toBeLessThan(4)
    expect(Math.abs(at('m0')[0]?.side ?? NaN)).toBeLessThan(4 * (at('m0')[0]?.u.side ?? 0))
  })

  test('a base that bends evenly is named as such', () => {
    let bent = 0
    for (let seed = 1; seed <= 20; seed++) {
      const random = new Random(seed + 30_000)
      const then = read(readAfter(random))
      // slopes of a parabola 2 mm high over 14 400 mm, a machine each: every coupling kinks by the same angle
      const [half, height] = [6900, 2000]
      const kinks = [0, 1, 2, 3].map((c) => {
        const slope = (m: number) => (-2 * height * (3000 * m + 1200 - 7200)) / half ** 2
        const rise = (m: number, x: number) => {
          const middle = 3000 * m + 1200
          const at = (middle - 7200) / half
          return height * (1 - at * at) + slope(m) * (x - middle)
        }
        const mid = 3000 * c + 2700
        const start = startLines[c] ?? { y: 0, z: 0, sy: 0, sz: 0 }
        return {
          ...{ y: start.y, sy: start.sy },
          z: start.z + rise(c + 1, mid) - rise(c, mid),
          sz: start.sz + slope(c + 1) - slope(c),
        }
      })
      const { causes } = sinceOf(then, read(readAfter(random, undefined, kinks)))
      const [first] = causes
      if (first?.suspect.kind !== 'base' || !first.explains) continue
      bent++
      expect(Math.abs((first.by[0] ?? 0) - height)).toBeLessThan(
        4 * Math.sqrt(first.covariance[0]?.[0] ?? 0) + 6,
      )
    }
    expect(bent).toBeGreaterThanOrEqual(18)
  })
})

test('a line read about another mid-span then is carried to that of today', () => {
  const random = new Random(3)
  const then = readAfter(random)
  const moved = structuredClone(then)
  for (const { left, right } of moved.couplings) {
    left.plane -= 100
    right.plane -= 100
  }
  const { changes } = sinceOf(read(moved), read(then))
  for (const { change } of changes)
    for (const part of [change.y, change.sy, change.z, change.sz])
      expect(Math.abs(part)).toBeLessThan(1e-9)
})

test('other machines cannot be compared, and both are named', () => {
  const random = new Random(3)
  const now = readAfter(random)
  const then = structuredClone(now)
  const [first] = then.machines
  if (first) first.id = 'x9'
  for (const { left } of then.couplings) if (left.machine === 'm0') left.machine = 'x9'
  expect(notComparable(read(then), read(now))).toEqual([
    'the machines are others: x9, m1, m2, m3 and m4 then, m0, m1, m2, m3 and m4 now; both files must have the same ids in the same order',
  ])
  expect(notComparable(read(now), read(now))).toEqual([])
})
