import { noMotion, type Motion } from '../../src/mechanics/motion'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { addMisalignments } from '../../src/mechanics/misalignment/stateShift'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readingWithoutZero, type Misalignment } from '../../src/mechanics/readings/equation'
import type { Train } from '../../src/mechanics/train'
import { actualMotion, type Actual } from '../../src/engine/fieldwork/loop/actual'
import { compareReadings, type NewReadings } from '../../src/engine/fieldwork/loop/compare'
import type { DifferenceMeaning } from '../../src/engine/fieldwork/loop/meaning'
import { fourFeet, pair, trainOf, type Json } from '../engine/pair'
import { Random } from '../second/random'

// Jobs on trains in a line with a cause planted in them: read, moved, read again, with all errors of dials and of work.

/** Standard deviations of what is never quite right: readings, shims and slides (um). */
const errors = { reading: 12, shim: 10, slide: 20 }

/** What is wrong in truth, beside the errors of every job. */
export interface Cause {
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
export interface Layout {
  readonly machines: number
  /** Without a spacer a coupling bends in one plane. */
  readonly short?: boolean
  /** Machines by their place that ride on one skid, which is moved as well. */
  readonly onSkid?: readonly number[]
}

const names = ['Motor', 'Pump', 'Fan', 'Gear', 'Blower', 'Turbine']
export const idOf = (m: number) => String.fromCharCode(65 + m)
/** Ids and names of couplings: the first two as in the train of three. */
export const couplingIds = ['c', 'd', 'e', 'f', 'g']
const couplingNames = ['first', 'second', 'third', 'fourth', 'fifth']

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

/** One job in a layout of these: what the difference is said to mean. */
export const meaningAfter = (seed: number, cause: Cause, layout: Layout): DifferenceMeaning =>
  meaningOf(new Random(seed), cause, inLine(layout, 200), inLine(layout, cause.rimsApart ?? 200))

/**
 * One job: read, moved by what feet were told, read again; what the difference is said to mean.
 * @param told the train as the file has it
 * @param truth as it is
 */
export function meaningOf(
  random: Random,
  cause: Cause,
  told: Train,
  truth: Train,
): DifferenceMeaning {
  const lines = truth.couplings.map(() => ({
    y: random.about(300),
    z: random.about(300),
    sy: random.about(0.3),
    sz: random.about(0.3),
  }))
  const before = withReadings(told, readingsOf(random, truth, lines, {}))
  const sizes = () => (random.chance(0.5) ? 1 : -1) * random.between(300, 900)
  const moving = told.bodies.filter(({ feet, held }) => feet.length > 0 && !held)
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

/** A train of so many machines as chance has it: how long each is, which are fixed, flex planes apart or together. */
export function randomLine(random: Random, count: number): Train {
  const doc = pair()
  const [c] = doc['couplings'] as Json[]
  let x = 0
  const machines: Json[] = []
  const couplings: Json[] = []
  for (let m = 0; m < count; m++) {
    const [from, to] = [x + random.between(150, 700), x + random.between(1200, 3200)]
    machines.push({
      ...{ id: idOf(m), name: names[m], axis: { z: random.between(200, 900) } },
      held: random.chance(0.35),
      feet: [from, to].flatMap((at, row) =>
        [300, -300].map((y) => ({ id: `${row}${y > 0 ? 'a' : 'b'}`, x: at, y })),
      ),
    })
    x = to + random.between(150, 700)
    if (m === count - 1) break
    const span = random.chance(0.3) ? 0 : random.between(150, 900)
    const apart = random.between(150, 400)
    couplings.push({
      ...c,
      ...{ id: couplingIds[m], name: couplingNames[m] },
      left: { machine: idOf(m), plane: x },
      right: { machine: idOf(m + 1), plane: x + span },
      tolerance: span === 0 ? { offset: 100, angle: 0.5 } : { offset: 100 },
      found: rims(x + span / 2 - 100, apart),
    })
    x += span
  }
  // one that moves, or there is no work to read again
  if (machines.every(({ held }) => held === true))
    machines.forEach((machine, m) => (machine['held'] = m === 0))
  return trainOf({ ...doc, machines, couplings })
}
