import { describe, expect, it } from 'vitest'
import type { CauseAnswer, DifferenceMeaning } from '../../src/engine/fieldwork/loop/meaning'
import { counted, firstOf } from '../counts'
import { couplingIds, idOf, meaningAfter, type Cause, type Layout } from './jobs'

const draws = counted(30, 60, 60)

const three: Layout = { machines: 3 }

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
