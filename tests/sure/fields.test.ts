import { expect, test } from 'vitest'
import { randomSureTrain } from '../second/randomSure'
import { randomTrain } from '../second/randomTrain'
import { standings, type Motion } from '../second/sure/bodies'
import { countedPoints } from '../second/growth'
import { shutDown } from '../second/sure/growthPoints'
import { sampled } from '../second/sure/sampled'
import type { Body, GrowthPoint, ReadingSet, Train } from '../second/train'

const trains = Array.from({ length: 80 }, (_, i) => randomSureTrain(i + 1))

const bodies = (train: Train): Body[] => [...train.machines, ...(train.skids ?? [])]
const points = (train: Train): GrowthPoint[] =>
  train.machines.flatMap(({ growth }) => Object.values(growth ?? {}).flat())
const sets = (train: Train): ReadingSet[] => train.couplings.flatMap(({ found }) => found)
const without = (things: object[], key: string): void => {
  for (const thing of things) Reflect.deleteProperty(thing, key)
}

/** Every field of the contract, taken out of a train. */
const fields: Record<string, (train: Train) => void> = {
  'the u of a set': (t) => {
    without(sets(t), 'u')
  },
  uSlope: (t) => {
    without(sets(t), 'uSlope')
  },
  uSag: (t) => {
    without(sets(t), 'uSag')
  },
  bracket: (t) => {
    without(sets(t), 'bracket')
  },
  uAt: (t) => {
    without(sets(t), 'uAt')
  },
  uDiameter: (t) => {
    without(sets(t), 'uDiameter')
  },
  use: (t) => {
    without(sets(t), 'use')
  },
  'the u of growth': (t) => {
    without(points(t), 'u')
  },
  'a range of growth': (t) => {
    without(points(t), 'range')
  },
  'the u of a gap': (t) => {
    without(
      t.couplings.flatMap(({ axial }) => axial ?? []),
      'u',
    )
  },
  'the u of a hole': (t) => {
    without(
      bodies(t).flatMap(({ feet }) => feet.flatMap(({ hole }) => hole ?? [])),
      'u',
    )
  },
  'sure.shim': (t) => {
    without([t.plan?.sure ?? {}], 'shim')
  },
  'sure.slide': (t) => {
    without([t.plan?.sure ?? {}], 'slide')
  },
  'sure.foot': (t) => {
    without([t.plan?.sure ?? {}], 'foot')
  },
}

/** A motion of every body that makes some: it need not be a plan. */
function stirred(train: Train): Record<string, Motion> {
  const size = { um: 100, mm: 0.1, mil: 4 }[train.units.fine]
  const motion = { tx: 0, ty: size, tz: -size, sy: 0.2, sz: 0.1, roll: 0 }
  return Object.fromEntries(bodies(train).map(({ id }) => [id, motion]))
}

const told = (train: Train) =>
  JSON.stringify(sampled(train, stirred(train), { draws: 200, seed: 11 }))

test.each(Object.keys(fields))('%s matters to the chances of some train', (field) => {
  let matters = 0
  for (const train of trains) {
    const less = structuredClone(train)
    fields[field]?.(less)
    if (JSON.stringify(less) !== JSON.stringify(train) && told(less) !== told(train)) matters++
    if (matters > 2) break
  }
  expect(matters).toBeGreaterThan(2)
})

/** What must be among the random trains, or agreeing on them means little. */
const situations: Record<string, (train: Train) => boolean> = {
  'a bracket with two different u': (t) =>
    t.couplings.some(({ found }) => {
      const on = found.flatMap((s) => ('bracket' in s && s.bracket === 'bar' ? [s.uSag] : []))
      return new Set(on).size > 1
    }),
  'a sag left out': (t) => sets(t).some((s) => s.kind === 'rim' && s.sag === undefined),
  'a gap set before rims on one bracket': (t) =>
    t.couplings.some(
      ({ found }) =>
        found[0]?.kind === 'gap' &&
        found.filter((s) => s.kind === 'rim' && s.bracket === 'bar').length > 1,
    ),
  'a set that does not count': (t) => sets(t).some(({ use }) => use === false),
  'an uncertainty of 0': (t) => sets(t).some((s) => 'uSag' in s && s.uSag === 0),
  'growth from heat': (t) => points(t).some(({ heat }) => heat !== undefined),
  'growth of the rise alone': (t) =>
    points(t).some((p) => p.side === undefined && p.range?.side === undefined),
  'growth of one axis': (t) =>
    t.machines.some(({ growth }) =>
      Object.values(growth ?? {}).some((of) => new Set(of.map(({ axis }) => axis)).size > 1),
    ),
  'a machine that says nothing of a state that others grow in': (t) =>
    (t.states ?? []).some(
      ({ id }) => !shutDown(t, id) && t.machines.some(({ growth }) => growth?.[id] === undefined),
    ),
  'a growth point that does not count': (t) => points(t).some(({ use }) => use === false),
  'a state between two others': (t) => (t.states ?? []).some(({ between }) => between),
  'growth of its own between two states': (t) =>
    (t.states ?? []).some(
      ({ id, between }) => between && t.machines.some((m) => countedPoints(m, id).length > 0),
    ),
  'a state taken as shut down': (t) => (t.states ?? []).some(({ id }) => shutDown(t, id)),
  'a key': (t) => bodies(t).some(({ feet }) => feet.some(({ free }) => free?.side === false)),
  'a foot without shims': (t) =>
    bodies(t).some(({ feet }) => feet.some(({ free }) => free?.shim === false)),
  'six feet': (t) => bodies(t).some(({ feet }) => feet.length === 6),
  'one row of feet': (t) => standings(t).some(({ rows }) => rows.length === 1),
  'a machine without feet': (t) => t.machines.some(({ feet }) => feet.length === 0),
  'a skid that moves': (t) => (t.skids ?? []).some((s) => !s.held && s.anchored === undefined),
  'a gap without u': (t) => t.couplings.some(({ axial }) => axial && axial.u === undefined),
  'a hole without u': (t) =>
    bodies(t).some(({ feet }) => feet.some(({ hole }) => hole && hole.u === undefined)),
  'round and box': (t) => new Set(t.couplings.map((c) => c.tolerance.shape ?? 'box')).size > 1,
  'factors of states': (t) => (t.states ?? []).some(({ tolerance = 1 }) => tolerance !== 1),
  'a cold setting in use': (t) => t.couplings.some(({ setting }) => setting?.use === true),
}

test.each(Object.keys(situations))('%s is in some random trains', (situation) => {
  const having = trains.filter((train) => situations[situation]?.(train))
  expect(having.length).toBeGreaterThan(2)
})

test('the trains beneath are those of the other comparisons', () => {
  const plain = randomTrain(4)
  const sure = randomSureTrain(4)
  expect(sure.machines.map(({ feet }) => feet.map(({ x, pack }) => [x, pack]))).toEqual(
    plain.machines.map(({ feet }) => feet.map(({ x, pack }) => [x, pack])),
  )
})
