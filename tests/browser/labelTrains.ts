import { Random } from '../second/random'

/** How far apart the rows of feet of a machine stand (mm). */
type Rows = (machine: number, random: Random) => number

export interface LabelTrain {
  readonly what: string
  readonly machines: number
  readonly rows: Rows
  /** Rows of feet a machine. */
  readonly most?: number
  readonly skid?: boolean
  /** Bolts without room: nothing can be moved to where it should be. */
  readonly impossible?: boolean
  readonly inches?: boolean
  readonly name: (random: Random, words: number) => string
}

const words =
  'high low pressure motor gear drive gas air feed water main spare double helical second stage turbine blower'.split(
    ' ',
  )

/** Names of 40 letters: of words, of one long word, and of the widest letter. */
const names = {
  words: (random: Random): string => {
    let name = ''
    while (name.length < 32) name += `${name === '' ? '' : ' '}${random.pick(words as [string])}`
    return name.slice(0, 40).trim()
  },
  oneWord: (random: Random): string =>
    `${names.words(random).replaceAll(' ', '')}verdichter`.slice(0, 40).padEnd(40, 'n'),
  widest: (): string => 'W'.repeat(40),
  short: (random: Random): string => random.pick(words as [string]),
} as const

const even =
  (apart: number): Rows =>
  () =>
    apart

/** Feet from 0.2 to 6 m apart, names up to 40 letters, 2 to 8 machines, possible and not. */
export const labelTrains: readonly LabelTrain[] = [
  { what: 'two machines with rows 0.2 m apart', machines: 2, rows: even(200), name: names.words },
  {
    what: 'eight machines with rows 0.2 m apart',
    machines: 8,
    rows: even(200),
    name: names.oneWord,
  },
  { what: 'eight machines with rows 6 m apart', machines: 8, rows: even(6000), name: names.words },
  {
    what: 'rows 0.2 m apart beside rows 6 m apart, three a machine',
    machines: 5,
    most: 3,
    rows: (machine) => (machine % 2 === 0 ? 200 : 6000),
    name: names.oneWord,
  },
  {
    what: 'an impossible train of six with the widest letters',
    machines: 6,
    rows: (_, random) => random.scale(200, 6000),
    impossible: true,
    name: names.widest,
  },
  {
    what: 'four on a skid, in inches',
    machines: 4,
    rows: (_, random) => random.scale(200, 2000),
    skid: true,
    inches: true,
    name: names.oneWord,
  },
  {
    what: 'an impossible train of three on a skid, rows 0.2 to 1 m apart',
    machines: 3,
    rows: (_, random) => random.scale(200, 1000),
    skid: true,
    impossible: true,
    name: names.words,
  },
]

/** A train of any of these kinds, at random. */
export function randomLabelTrain(seed: number): LabelTrain {
  const random = new Random(seed)
  const [low, high] = [random.scale(200, 6000), random.scale(200, 6000)]
  return {
    what: `random train ${seed}`,
    machines: random.whole(2, 8),
    most: random.whole(1, 4),
    rows: (_, own) => own.scale(Math.min(low, high), Math.max(low, high)),
    skid: random.chance(0.3),
    impossible: random.chance(0.4),
    inches: random.chance(0.4),
    name: random.pick([names.words, names.oneWord, names.widest, names.short]),
  }
}

/** The train file of such a train. */
export function labelDocument(train: LabelTrain, seed: number): object {
  const random = new Random(seed)
  const name = () => train.name(random, 40)
  const length =
    train.inches === true
      ? (mm: number) => Number((mm / 25.4).toFixed(3))
      : (mm: number) => Math.round(mm)
  const fine =
    train.inches === true
      ? (um: number) => Number((um / 25.4).toFixed(1))
      : (um: number) => Math.round(um)
  const roles = ['motor', 'gearbox', 'compressor', 'turbine', 'pump', 'fan', 'generator', 'blower']
  const [clearance, pack, thickest] =
    train.impossible === true ? [60, 3000, 6000] : [40000, 30000, 90000]
  let x = 0
  let last = 0
  const feetAt = (rows: readonly number[], half: number, spare: number) =>
    rows.flatMap((at, row) =>
      [half, -half].map((y) => ({
        id: `${row + 1} ${y > 0 ? 'a' : 'b'} ${name()}`.slice(0, 40),
        x: length(at),
        y: length(y),
        pack: { now: fine(pack), min: fine(500), max: fine(thickest) },
        hole: { clearance: fine(spare) },
      })),
    )
  const starts: number[] = []
  const ends: number[] = []
  const machines = Array.from({ length: train.machines }, (_, m) => {
    const count = random.whole(1, train.most ?? 2)
    const rows = [x]
    while (rows.length < Math.max(count, 1)) rows.push((rows.at(-1) ?? x) + train.rows(m, random))
    if (rows.length === 1 && (train.most ?? 2) > 1) rows.push(x + train.rows(m, random))
    starts.push(rows[0] ?? x)
    last = rows.at(-1) ?? x
    ends.push(last)
    x = last + random.scale(400, 1600)
    return {
      id: `m${m}`,
      name: name(),
      role: roles[m % roles.length],
      speed: 1490,
      axis: { z: length(random.between(300, 900)) },
      ...(m === train.machines - 1 && train.skid !== true && train.impossible === true
        ? { held: true, anchored: `pipes: ${name()}` }
        : {}),
      feet: feetAt(rows, random.between(200, 600), clearance),
      growth: { hot: [{ at: length(rows[0] ?? 0), rise: fine(random.between(50, 400)), side: 0 }] },
    }
  })
  const couplings = machines.slice(1).map((right, c) => {
    const [from, to] = [ends[c] ?? 0, starts[c + 1] ?? 0]
    const [p, q] = [from + (to - from) / 3, to - (to - from) / 3]
    return {
      id: `c${c}`,
      name: name(),
      left: { machine: machines[c]?.id, plane: length(p) },
      right: { machine: right.id, plane: length(q) },
      tolerance: { flex: 0.5, shape: 'round', basis: `${name()}, as agreed` },
      found: [
        {
          kind: 'rim',
          rides: 'left',
          at: length(q),
          sag: fine(-20),
          readings: [
            [12, 0],
            [3, fine(random.about(200))],
            [6, fine(random.about(400))],
            [9, fine(random.about(200))],
          ],
        },
        {
          kind: 'rim',
          rides: 'right',
          at: length(p),
          sag: fine(-20),
          readings: [
            [12, 0],
            [3, fine(random.about(200))],
            [6, fine(random.about(400))],
            [9, fine(random.about(200))],
          ],
        },
      ],
    }
  })
  const [firstX, lastX] = [starts[0] ?? 0, ends.at(-1) ?? 1000]
  return {
    format: 'holdfast-train',
    version: 1,
    name: train.what,
    note: name(),
    units: train.inches === true ? { length: 'in', fine: 'mil' } : { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'left' },
    sides: { three: `toward the ${name()}`.slice(0, 40), nine: `toward ${name()}`.slice(0, 40) },
    machines,
    couplings,
    ...(train.skid === true && {
      skids: [
        {
          id: 'skid',
          name: name(),
          carries: machines.slice(0, 2).map(({ id }) => id),
          feet: feetAt([firstX - 100, (ends[1] ?? lastX) + 100], 900, clearance),
        },
      ],
    }),
    states: [
      { id: 'cold', name: `cold ${name()}`.slice(0, 40) },
      { id: 'hot', name: `hot ${name()}`.slice(0, 40) },
    ],
    plan: { share: 0.7, reserve: fine(10) },
  }
}
