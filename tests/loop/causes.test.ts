import { describe, expect, it } from 'vitest'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { addMisalignments } from '../../src/mechanics/misalignment/stateShift'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readingWithoutZero, type Misalignment } from '../../src/mechanics/readings/equation'
import type { Train } from '../../src/mechanics/train'
import { actualMotion, type Actual } from '../../src/engine/fieldwork/loop/actual'
import { compareReadings, type NewReadings } from '../../src/engine/fieldwork/loop/compare'
import type { CauseAnswer, DifferenceMeaning } from '../../src/engine/fieldwork/loop/meaning'
import { fourFeet, pair, trainOf, type Json } from '../engine/pair'
import { Random } from '../second/random'
import { counted, firstOf } from '../counts'

/** Standard deviations of what is never quite right: readings, shims and slides (um). */
const errors = { reading: 12, shim: 10, slide: 20 }
const draws = counted(30, 60, 60)

interface Cause {
  /** What the sets are like in truth, beside what the file says: distance of the rims, their sag at the second reading. */
  readonly rimsApart?: number
  readonly sag?: { readonly coupling: number; readonly by: number }
  /** Part of each shim, or of everything, that comes about at machine B or at all. */
  readonly springs?: number
  readonly all?: number
  readonly bumped?: { readonly body: string; readonly by: number }
  readonly slidesTurned?: boolean
  readonly misread?: {
    readonly coupling: number
    readonly set: number
    readonly hour: number
    readonly by: number
  }
  readonly turned?: { readonly coupling: number; readonly set: number }
}

const rims = (x: number, apart: number): Json[] =>
  (['left', 'right'] as const).map((rides) => ({
    kind: 'rim',
    rides,
    at: rides === 'left' ? x + 100 - apart / 2 : x + 100 + apart / 2,
    readings: [12, 3, 6, 9].map((hour) => [hour, 0]),
  }))

/** What a train is like in which causes are to be told. */
interface Layout {
  readonly machines: number
  /** Without a spacer a coupling bends in one plane. */
  readonly short?: boolean
  /** Machines by their place that ride on one skid, which is moved as well. */
  readonly onSkid?: readonly number[]
}

const three: Layout = { machines: 3 }
const names = ['Motor', 'Pump', 'Fan', 'Gear', 'Blower']
const idOf = (m: number) => String.fromCharCode(65 + m)
/** Ids and names of couplings: the first two as in the train of three. */
const couplingIds = ['c', 'd', 'e', 'f']
const couplingNames = ['first', 'second', 'third', 'fourth']

/** A motor that stays and machines in a line after it, feet at two places 1 m apart; each coupling read by two rims. */
function inLine({ machines: count, short = false, onSkid = [] }: Layout, apart: number): Train {
  const span = short ? 0 : 200
  const { machines, couplings, ...rest } = pair({ found: rims(0, apart) })
  const [a, b] = machines as Json[]
  const [c] = couplings as Json[]
  const shifted = (m: number) => fourFeet.map((foot) => ({ ...foot, x: foot.x + 2000 * (m - 1) }))
  const rider = (m: number) => (onSkid.includes(m) ? { base: 300 } : {})
  const xs = onSkid.flatMap((m) => shifted(m).map(({ x }) => x))
  return trainOf({
    ...rest,
    machines: [
      a,
      { ...b, ...rider(1) },
      ...Array.from({ length: count - 2 }, (_, k) => ({
        ...{ id: idOf(k + 2), name: names[k + 2], axis: { z: 400 }, feet: shifted(k + 2) },
        ...rider(k + 2),
      })),
    ],
    ...(onSkid.length > 0 && {
      skids: [
        {
          ...{ id: 'S', name: 'Bedplate', carries: onSkid.map(idOf) },
          feet: [Math.min(...xs) - 200, Math.max(...xs) + 200].flatMap((x, row) =>
            [600, -600].map((y) => ({ id: `S${row}${y > 0 ? 'a' : 'b'}`, x, y })),
          ),
        },
      ],
    }),
    couplings: Array.from({ length: count - 1 }, (_, k) => {
      const x = k === 0 ? 0 : 2000 * k + 500
      return {
        ...c,
        ...{ id: couplingIds[k], name: couplingNames[k] },
        left: { machine: idOf(k), plane: x },
        right: { machine: idOf(k + 1), plane: x + span },
        ...(short && { tolerance: { offset: 100, angle: 0.5 } }),
        found: rims(x, apart),
      }
    }),
  })
}

/** The train with readings that these lines give, with the errors of dials. */
function readingsOf(
  random: Random,
  truth: Train,
  lines: readonly Misalignment[],
  { sag, misread, turned }: Cause,
): NewReadings[] {
  return truth.couplings.flatMap((coupling, c) =>
    coupling.found.flatMap((set, s): NewReadings[] => {
      const line = lines[c]
      if (set.kind !== 'rim' || !line) return []
      const hang = sag?.coupling === c ? sag.by : 0
      const shown = set.readings.map(({ hour }) => {
        const cos = Math.cos((hour * Math.PI) / 6)
        const read = readingWithoutZero(set, coupling, line, hour) + hang * cos
        const here = (one?: { coupling: number; set: number }) =>
          one?.coupling === c && one.set === s
        const off = here(misread) && misread?.hour === hour ? misread.by : 0
        const sign = here(turned) ? -1 : 1
        return [hour, sign * (read + off) + random.about(errors.reading)] as [number, number]
      })
      return [{ coupling: coupling.id, set: s, readings: shown }]
    }),
  )
}

const withReadings = (train: Train, readings: readonly NewReadings[]): Train => ({
  ...train,
  couplings: train.couplings.map((coupling) => ({
    ...coupling,
    found: coupling.found.map((set, s) => {
      const entry = readings.find((one) => one.coupling === coupling.id && one.set === s)
      return entry && 'readings' in entry && set.kind === 'rim'
        ? { ...set, readings: entry.readings.map(([hour, value]) => ({ hour, value })) }
        : set
    }),
  })),
})

/** One job: read, moved by what feet were told, read again; what the difference is said to mean. */
function meaningAfter(seed: number, cause: Cause, layout: Layout): DifferenceMeaning {
  const random = new Random(seed)
  const told = inLine(layout, 200)
  const truth = inLine(layout, cause.rimsApart ?? 200)
  const lines = truth.couplings.map(() => ({
    y: random.about(300),
    z: random.about(300),
    sy: random.about(0.3),
    sz: random.about(0.3),
  }))
  const before = withReadings(told, readingsOf(random, truth, lines, {}))
  const sizes = () => (random.chance(0.5) ? 1 : -1) * random.between(300, 900)
  const moving = told.bodies.filter(({ feet }) => feet.length > 0)
  const actuals: Actual[] = moving.flatMap(({ id: body, rows, feet }) => {
    const each = rows.map(() => ({ shim: sizes(), side: sizes() }))
    return feet.map(({ id }, f): Actual => {
      const row = rows.findIndex(({ feet: own }) => own.includes(f))
      return { body, foot: id, shim: each[row]?.shim ?? 0, side: each[row]?.side ?? 0 }
    })
  })
  const slips = new Map<string, number>()
  const came = actuals.map((row): Actual => {
    const key = `${row.body} ${row.foot.slice(0, -1)}`
    const slip = slips.get(key) ?? random.about(errors.slide)
    slips.set(key, slip)
    const springs = row.body === 'B' ? (cause.springs ?? 1) : 1
    const all = cause.all ?? 1
    const bump = cause.bumped?.body === row.body ? cause.bumped.by : 0
    const turn = cause.slidesTurned === true && row.body === 'B' ? -1 : 1
    return {
      ...row,
      shim: (row.shim ?? 0) * springs * all + random.about(errors.shim),
      side: (row.side ?? 0) * all * turn + slip + bump,
    }
  })
  const motions = (rows: readonly Actual[]): Motion[] =>
    told.bodies.map((body) => (body.feet.length > 0 ? actualMotion(told, body, rows) : noMotion))
  const now = couplingMotions(truth, motions(came)).map(({ misalignment }, c) =>
    addMisalignments(lines[c] ?? misalignment, misalignment),
  )
  const readings = readingsOf(random, truth, now, cause)
  const { meaning } = compareReadings(
    before,
    before.couplings.map(asFound),
    motions(actuals),
    readings,
  )
  return meaning
}

/** Of so many jobs with one cause, those that were given a meaning, and what else was said. */
function said(
  cause: Cause,
  layout: Layout = three,
  jobs: number = draws,
): { counts: Record<string, number>; meanings: DifferenceMeaning[] } {
  const counts: Record<string, number> = {}
  const meanings = Array.from({ length: jobs }, (_, seed) => meaningAfter(seed + 1, cause, layout))
  for (const { kind } of meanings) counts[kind] = (counts[kind] ?? 0) + 1
  return { counts, meanings }
}

const mostly = Math.ceil(0.9 * draws)

describe(`the meaning of a difference by its true cause, ${draws} jobs each with all errors of readings and work`, () => {
  it('is nothing where there is no cause but those errors', () => {
    const { counts } = said({})
    expect(counts['within doubt'], JSON.stringify(counts)).toBeGreaterThanOrEqual(mostly)
  })

  const causes: [string, Cause, Partial<CauseAnswer>, RegExp][] = [
    [
      'every foot springs or slips back by a third',
      { all: 2 / 3 },
      { kind: 'part of the work' },
      /^all that was done came to 6\d %/,
    ],
    [
      'rims 300 mm apart that were entered as 200',
      { rimsApart: 300 },
      { kind: 'distance' },
      /^a distance: angles changed 1[345]\d % of what was expected/,
    ],
    [
      'rims 133 mm apart that were entered as 200',
      { rimsApart: 133 },
      { kind: 'distance' },
      /^a distance: angles changed [67]\d % of what was expected/,
    ],
    ['shims out for in and slides the wrong way', { all: -1 }, { kind: 'wrong way' }, /a sign/],
    [
      'the slides of one machine the wrong way',
      { slidesTurned: true },
      { kind: 'wrong way', body: 'B' },
      /^the slides of the pump went the other way/,
    ],
    [
      'the feet of one machine spring under their shims',
      { springs: 2 / 3 },
      { kind: 'part of the work', body: 'B' },
      /^the shims of the pump came to \d\d %/,
    ],
    [
      'the machine in the middle was bumped',
      { bumped: { body: 'B', by: 250 } },
      { kind: 'stands off', body: 'B' },
      /^the pump stands elsewhere/,
    ],
    [
      'the machine at the end was bumped',
      { bumped: { body: 'C', by: 250 } },
      { kind: 'stands off', body: 'C' },
      /^the fan stands elsewhere/,
    ],
    [
      'a bracket that sags 80 um and was not entered',
      { sag: { coupling: 1, by: 80 } },
      { kind: 'bracket', coupling: 'd' },
      /^the bracket of second/,
    ],
    [
      'one value misread by 150 um',
      { misread: { coupling: 0, set: 1, hour: 9, by: 150 } },
      { kind: 'dial', coupling: 'c', set: 1, hour: 9 },
      /one dial alone: set 2 at first/,
    ],
    [
      'a dial read with its sign turned',
      { turned: { coupling: 1, set: 0 } },
      { kind: 'sign of a dial', coupling: 'd', set: 0 },
      /^set 1 at second read with its sign turned/,
    ],
  ]
  it.each(causes)('%s', (_, cause, wanted, words) => {
    const { counts, meanings } = said(cause)
    const differing = meanings.filter(({ kind }) => kind !== 'within doubt')
    const planted = differing.flatMap((meaning) => {
      const named = meaning.causes.find(
        ({ kind, coupling, body, set, hour }) =>
          kind === wanted.kind &&
          body === wanted.body &&
          coupling === wanted.coupling &&
          (wanted.set === undefined || set === wanted.set) &&
          hour === wanted.hour,
      )
      return named ? [named] : []
    })
    const story = `${JSON.stringify(counts)} ${differing.find(({ causes: all }) => !all.some(({ kind }) => kind === wanted.kind))?.words ?? ''}`
    // the cause is first, or among those that cannot be told from the first: 19 of 20 by the odds that are kept
    expect(differing.length, story).toBeGreaterThanOrEqual(0.7 * draws)
    expect(planted.length, story).toBeGreaterThanOrEqual(0.93 * differing.length)
    expect(planted.filter((one) => words.test(one.words)).length).toBeGreaterThanOrEqual(
      0.8 * differing.length,
    )
  })

  it('neither accuses nor clears a machine at the end by a number of couplings', () => {
    const sagged = said({ sag: { coupling: 1, by: 80 } }).meanings
    const bumped = said({ bumped: { body: 'C', by: 250 } }).meanings
    for (const { words } of [...sagged, ...bumped])
      expect(words).not.toMatch(/both (its )?couplings|couplings of (the )?(fan|motor)/i)
    const open = sagged.filter(({ kind }) => kind === 'causes')
    const named = open.filter(({ causes: all }) => all.some(({ body }) => body === 'C'))
    expect(open.length).toBeGreaterThan(draws / 2)
    expect(named.length).toBeGreaterThanOrEqual(0.9 * open.length)
  })
})

const jobs = process.env['HOLDFAST_LONG'] === '1' ? 60 : 4

const layouts: [string, Layout][] = [
  ['two machines', { machines: 2 }],
  ['two machines without a spacer', { machines: 2, short: true }],
  ['three machines without spacers', { machines: 3, short: true }],
  ['four machines', { machines: 4 }],
  ['five machines', { machines: 5 }],
  ['the last machine of three on a skid', { machines: 3, onSkid: [2] }],
  ['two machines of four on a skid', { machines: 4, onSkid: [1, 2] }],
]

describe.each(firstOf(layouts, 3, layouts.length))(
  `the meaning of a difference on %s, ${jobs} jobs each`,
  (_, layout) => {
    const last = layout.machines - 2
    const end = idOf(layout.machines - 1)
    const causes: [string, Cause, (one: CauseAnswer) => boolean][] = [
      [
        'the machine at the end was bumped',
        { bumped: { body: end, by: 300 } },
        ({ kind, body }) => kind === 'stands off' && body === end,
      ],
      [
        'a bracket at the last coupling sags and was not entered',
        { sag: { coupling: last, by: 90 } },
        ({ kind, coupling }) => kind === 'bracket' && coupling === couplingIds[last],
      ],
      [
        'one value misread at the first coupling',
        { misread: { coupling: 0, set: 1, hour: 9, by: 180 } },
        ({ kind, coupling, set, hour }) =>
          kind === 'dial' && coupling === 'c' && set === 1 && hour === 9,
      ],
      [
        'a dial read with its sign turned at the last coupling',
        { turned: { coupling: last, set: 0 } },
        ({ kind, coupling, set }) =>
          kind === 'sign of a dial' && coupling === couplingIds[last] && set === 0,
      ],
      [
        'shims out for in and slides the wrong way',
        { all: -1 },
        ({ kind }) => kind === 'wrong way',
      ],
    ]

    it('is nothing where there is no cause', () => {
      const { counts } = said({}, layout, jobs)
      expect(counts['within doubt'], JSON.stringify(counts)).toBeGreaterThanOrEqual(0.85 * jobs)
    })

    it.each(causes)('%s', (_, cause, planted) => {
      const { counts, meanings } = said(cause, layout, jobs)
      const differing = meanings.filter(({ kind }) => kind !== 'within doubt')
      const missed = differing.filter(({ causes: all }) => !all.some(planted))
      const story = `${JSON.stringify(counts)} ${missed[0]?.words ?? ''}`
      expect(differing.length, story).toBeGreaterThanOrEqual(0.6 * jobs)
      // 19 of 20 by the odds that are kept; of a few jobs one may be the twentieth
      expect(missed.length, story).toBeLessThanOrEqual(Math.max(1, 0.13 * differing.length))
      // an end machine has one coupling: neither it nor any other is accused by a number of them
      for (const { words } of meanings) expect(words).not.toMatch(/both (its )?couplings/i)
    })
  },
)
