import { readFileSync } from 'node:fs'
import { planRead, planTrain } from '../planned'
import type { AnswerJson } from '../../src/json/answerJson'
import { sharesOf, worstShare } from '../../src/mechanics/misalignment/shares'
import { addMisalignments } from '../../src/mechanics/misalignment/stateShift'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readingWithoutZero, type Misalignment } from '../../src/mechanics/readings/equation'
import type { TrainDocument } from '../../src/document/schema'
import type { Body, Coupling, ReadingSet, Train } from '../../src/mechanics/train'
import { readTrain } from '../../src/document/readTrain'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { micrometresPer } from '../../src/mechanics/units'
import { actualMotion, type Actual } from '../../src/engine/fieldwork/loop/actual'
import { compareReadings, type NewReadings } from '../../src/engine/fieldwork/loop/compare'
import { addPage } from '../../src/engine/fieldwork/loop/record'
import { afterWork, type AfterWork } from '../../src/engine/fieldwork/loop/afterWork'
import { stepPage } from '../../src/engine/fieldwork/loop/pages'
import { withValue } from '../../src/document/place'
import { workRecordOf } from '../../src/document/work'
import { nextRound, verdictOf, worthMoving } from '../../src/engine/fieldwork/loop/doubt'
import { standNow } from '../../src/engine/fieldwork/loop/standNow'
import { solver } from '../engine/pair'
import type { Random } from '../second/random'

/** Standard deviations of what goes wrong: readings, shims and slides in um, distances in mm. */
const errors = { reading: 12, distance: 2, shim: 10, slide: 20 }

export const shapes = [
  'base-bound-motor',
  'bolt-bound-gearbox',
  'five-in-a-line',
  'piped-compressor',
  'pump-and-motor',
  'skid-as-one',
]

export interface Job {
  readonly shape: string
  /** Worst share of full tolerance by the true geometry: as found and after each round. */
  readonly shares: readonly number[]
  readonly end: 'done' | 'three rounds' | 'left alone'
  readonly trims: readonly Trim[]
  /** What the sheet says after each round of work, with all in that must be in before anything moves. */
  readonly said: readonly AfterWork[]
  /** Starts that had no plan and were drawn again. */
  readonly redrawn: number
}

/** A round after the first: the share it was planned to come to, how unsure that was said to be, and what it came to. */
interface Trim {
  readonly said: number
  readonly u: number
  readonly came: number
}

/** One dial that reads so much more at one hour, from the start or once the work has begun (um). */
export interface Planted {
  readonly coupling: number
  readonly set: number
  readonly hour: number
  readonly by: number
  readonly from: 'the start' | 'the work'
}

/** How well everything else is read (um), and the dial that is not. */
interface Read {
  readonly reading: number
  readonly planted?: Planted
}

const mostRounds = 3

/** One job from as found to as left; the true train is known to the simulation alone. */
export function simulate(random: Random, shape: string, packs: boolean, how?: Read): Job {
  for (let redrawn = 0; redrawn < 50; redrawn++) {
    const start = begin(random, shape, packs, how)
    // a start that needs no move, or has no plan, is no job
    if (firstPlan(start.document, packs).status !== 'planned') continue
    return { shape, redrawn, ...worked(random, start, packs, how) }
  }
  throw new Error(`no start of ${shape} has a plan`)
}

interface Start {
  readonly document: TrainDocument
  readonly truth: Train
  readonly lines: readonly Misalignment[]
}

function worked(
  random: Random,
  start: Start,
  packs: boolean,
  how?: Read,
): Pick<Job, 'shares' | 'end' | 'trims' | 'said'> {
  let { document, lines } = start
  const { truth } = start
  const shares = [trueShare(truth, lines)]
  const trims: Trim[] = []
  const said: AfterWork[] = []
  for (let round = 1; round <= mostRounds; round++) {
    const read = trainOf(document)
    const found = read.couplings.map(asFound)
    // only a round that follows on others is a trim: the first plan is the one asked for
    if (round > 1 && verdictOf(read, found).verdict === 'in')
      return { shares, trims, said, end: 'done' }
    const next = round === 1 ? undefined : trim(document, packs)
    const plan = round === 1 ? firstPlan(document, packs) : next?.plan
    if (!plan) return { shares, trims, said, end: 'left alone' }
    const told = toldBy(plan)
    const motions = trueMotions(random, truth, told)
    lines = couplingMotions(truth, motions).map(({ misalignment }, c) =>
      addMisalignments(lines[c] ?? zero, misalignment),
    )
    const came = trueShare(truth, lines)
    shares.push(came)
    if (next) trims.push({ said: next.after, u: next.u, came })
    const readings = readAll(random, read, truth, lines, how)
    const acted = read.bodies.map((body) => actualMotion(read, body, told))
    const page = stepPage(
      { work: [], read: [], steps: { done: 0, of: 0 }, units: read.units },
      compareReadings(read, found, acted, readings),
      { when: '2031-05-09' },
    )
    const pages = addPage(workRecordOf(document.record)?.pages ?? [], page)
    const stood = standNow(withValue(document, ['record', 'pages'], pages), read, {
      actuals: told,
      readings,
      sign: { when: `2031-05-0${round}` },
      after: `round ${round}`,
    })
    if (!stood.ok) throw new Error(stood.why)
    document = repeatedly(random, stood.document, truth, lines, how)
    said.push(saidOf(document))
  }
  return { shares, trims, said, end: 'three rounds' }
}

/** Reads again, up to twice more, where one set of readings cannot tell whether the work is done. */
function repeatedly(
  random: Random,
  start: TrainDocument,
  truth: Train,
  lines: readonly Misalignment[],
  how?: Read,
): TrainDocument {
  const first = trainOf(start)
  let document = start
  for (let again = 0; again < 2; again++) {
    const train = trainOf(document)
    const { verdict } = verdictOf(train, train.couplings.map(asFound))
    if (verdict !== 'not sure' && verdict !== 'contradicting') break
    const stood = standNow(document, train, {
      actuals: [],
      readings: readAll(random, first, truth, lines, how),
      repeated: true,
      sign: { when: '2031-05-09' },
      after: 'repeat',
    })
    if (!stood.ok) throw new Error(stood.why)
    document = stood.document
  }
  return document
}

/** What the sheet says of a train that was worked on and read again, were all in that must be in. */
function saidOf(document: TrainDocument): AfterWork {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const answer = planRead(read.train, solver, { prices: false, packs: false })
  const said = afterWork(read.document, read.train, answer, {
    ...{ ready: true, provisional: false, sentence: 'Ready.', provisionalSentence: '' },
    ...{ items: [], softFoot: [], strain: [], closure: [], signs: [] },
  })
  if (!said) throw new Error('no round on the record')
  return said
}

/** The plan of a job's first round, at the share asked for. */
const firstPlan = (document: TrainDocument, packs: boolean) =>
  planAt(document, document.plan?.share ?? 1, packs)

/** The plan of a round that follows others; undefined where it is not worth its errors, or there is none. */
function trim(
  document: TrainDocument,
  packs: boolean,
): { plan: AnswerJson; after: number; u: number } | undefined {
  const train = trainOf(document)
  const { floor } = planAt(document, train.plan.share, false)
  const next = nextRound(train, train.couplings.map(asFound), floor)
  const plan = planAt(document, next.share, packs)
  const after = plan.rounded?.worstShare ?? plan.worstShare
  if (plan.status !== 'planned' || after === undefined) return undefined
  return worthMoving(plan.standingShare, after, next) ? { plan, after, u: next.u } : undefined
}

function planAt(document: TrainDocument, share: number, packs: boolean): AnswerJson {
  const asked = { ...document, plan: { ...document.plan, share } }
  const plan = planTrain(asked, solver, { reasons: false, prices: false, packs })
  if ('refused' in plan) throw new Error(JSON.stringify(plan.refused))
  return plan
}

function trainOf(document: TrainDocument): Train {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train
}

const zero: Misalignment = { y: 0, z: 0, sy: 0, sz: 0 }

/** The example's shape with readings of a train that stands somewhere near where it stood. */
function begin(random: Random, shape: string, packs: boolean, how?: Read): Start {
  const file = new URL(`../../examples/${shape}.json`, import.meta.url)
  const plain = JSON.parse(readFileSync(file, 'utf8')) as TrainDocument
  const inches = plain.units.length === 'in'
  const document: TrainDocument = {
    ...plain,
    plan: {
      ...plain.plan,
      share: 0.7,
      ...(packs && {
        shims: inches
          ? { step: 1, stock: [1, 2, 5, 10, 20, 25, 50, 100, 125], most: 6 }
          : inFine(plain, { step: 25, stock: [25, 50, 100, 200, 250, 500, 1000, 2000], most: 6 }),
      }),
    },
  }
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const truth = mismeasured(random, read.train)
  const lines = read.train.couplings.map((coupling): Misalignment => {
    const { line } = asFound(coupling)
    const part = random.between(0.4, 1.1)
    return {
      y: line.y * part + random.about(80),
      z: line.z * part + random.about(80),
      sy: line.sy * part + random.about(0.1),
      sz: line.sz * part + random.about(0.1),
    }
  })
  const from = how?.planted?.from === 'the work' ? { reading: how.reading } : how
  const readings = readAll(random, read.train, truth, lines, from)
  return { document: withReadings(document, readings), truth, lines }
}

function inFine(
  { units }: TrainDocument,
  { step, stock, most }: { step: number; stock: number[]; most: number },
) {
  const per = micrometresPer[units.fine]
  return { step: step / per, stock: stock.map((value) => value / per), most }
}

/** The first readings take the place of the example's own. */
const withReadings = (
  document: TrainDocument,
  readings: readonly NewReadings[],
): TrainDocument => ({
  ...document,
  couplings: document.couplings.map((coupling) => ({
    ...coupling,
    found: coupling.found.map((set, s) => {
      const entry = readings.find((one) => one.coupling === coupling.id && one.set === s)
      if (entry && 'readings' in entry && set.kind !== 'line')
        return { ...set, readings: entry.readings }
      if (entry && 'offset' in entry && set.kind === 'line')
        return { ...set, offset: entry.offset, slope: entry.slope }
      return set
    }),
  })),
})

/** The train as it is: every distance differs from what was taped. */
function mismeasured(random: Random, train: Train): Train {
  const off = () => random.about(errors.distance)
  const body = (one: Body): Body => {
    const shifts = one.rows.map(() => off())
    const feet = one.feet.map((foot, f) => ({
      ...foot,
      x: foot.x + (shifts[one.rows.findIndex((row) => row.feet.includes(f))] ?? 0),
      y: foot.y === 0 ? 0 : foot.y + off(),
    }))
    const rows = one.rows.map((row, r) => ({ ...row, x: row.x + (shifts[r] ?? 0) }))
    const x0 = feet.length === 0 ? one.x0 : feet.reduce((sum, { x }) => sum + x, 0) / feet.length
    const up = off()
    const raised = ({ y, z }: { y: number; z: number }) => ({ y, z: z + up })
    const axis = { left: raised(one.axis.left), right: raised(one.axis.right) }
    return { ...one, feet, rows, x0, axis }
  }
  const set = (one: ReadingSet): ReadingSet => {
    if (one.kind === 'line' || one.kind === 'rim') return { ...one, at: one.at + off() }
    return { ...one, diameter: one.diameter + off() }
  }
  const coupling = (one: Coupling): Coupling => {
    const p = one.p + off()
    const q = one.q === one.p ? p : Math.max(p + 1, one.q + off())
    return { ...one, p, q, mid: (p + q) / 2, found: one.found.map(set) }
  }
  const bodies = train.bodies.map(body)
  return {
    ...train,
    bodies,
    machines: bodies.slice(0, train.machines.length),
    couplings: train.couplings.map(coupling),
  }
}

/** Readings of every set in use, of the true train, with the errors of dials and eyes. */
function readAll(
  random: Random,
  train: Train,
  truth: Train,
  lines: readonly Misalignment[],
  how?: Read,
): NewReadings[] {
  const per = micrometresPer[train.units.fine]
  return train.couplings.flatMap((coupling, c): NewReadings[] => {
    const real = truth.couplings[c]
    const line = lines[c]
    if (!real || !line) throw new Error('couplings out of step')
    const kinds = real.found.length
    return coupling.found.flatMap((told, s): NewReadings[] => {
      // sets read again stand behind the old ones, in the same order: the last of them are read
      const set = real.found[s % kinds]
      if (!told.used || !set || s < coupling.found.length - kinds) return []
      const at = { coupling: coupling.id, set: s }
      if (set.kind === 'line') {
        const arm = set.at - real.mid
        const noise = () => random.about(how?.reading ?? errors.reading)
        return [
          {
            ...at,
            offset: {
              y: (line.y + line.sy * arm + noise()) / per,
              z: (line.z + line.sz * arm + noise()) / per,
            },
            slope: { y: line.sy + noise() / 1000, z: line.sz + noise() / 1000 },
          },
        ]
      }
      const planted = how?.planted
      const off = (hour: number) =>
        planted?.coupling === c && planted.set === s % kinds && planted.hour === hour
          ? planted.by
          : 0
      const shown = set.readings.map(
        ({ hour }) =>
          readingWithoutZero(set, real, line, hour) +
          random.about(how?.reading ?? errors.reading) +
          off(hour),
      )
      const zeroAt = set.kind === 'gap' ? -3000 : (shown[0] ?? 0)
      return [
        {
          ...at,
          readings: set.readings.map(({ hour }, k): [number, number] => [
            hour,
            ((shown[k] ?? 0) - zeroAt) / per,
          ]),
        },
      ]
    })
  })
}

/** What the steps tell the feet. */
function toldBy({ steps }: AnswerJson): Actual[] {
  return (steps?.steps ?? []).flatMap(({ body, kind, feet }) =>
    feet.map(({ foot, shim, side, axial }) => ({
      body,
      foot,
      ...(shim !== undefined && { shim }),
      ...(side !== undefined && { side }),
      ...(kind === 'axial' && axial !== undefined && { axial }),
    })),
  )
}

/** What comes of it on the true feet: shims that differ from their stamp, slides that stop a little off. */
function trueMotions(random: Random, truth: Train, told: readonly Actual[]): Motion[] {
  const per = micrometresPer[truth.units.fine]
  const slides = new Map<string, number>()
  const real = told.map((row): Actual => {
    const body = truth.bodies.find(({ id }) => id === row.body)
    const index = body?.feet.findIndex(({ id }) => id === row.foot) ?? -1
    const line = body?.rows.findIndex(({ feet }) => feet.includes(index)) ?? -1
    const key = `${row.body} ${line}`
    const slide = slides.get(key) ?? random.about(errors.slide)
    slides.set(key, slide)
    const moves = (value: number | undefined): value is number =>
      value !== undefined && Math.abs(value * per) > 0.1
    return {
      ...row,
      ...(moves(row.shim) && { shim: row.shim + random.about(errors.shim) / per }),
      ...(row.side !== undefined && { side: row.side + slide / per }),
      ...(row.axial !== undefined && { axial: row.axial + random.about(errors.slide) / per }),
    }
  })
  return truth.bodies.map((body) =>
    body.feet.length === 0 ? noMotion : actualMotion(truth, body, real),
  )
}

/** Worst share of full tolerance in any state, by the true geometry. */
function trueShare(truth: Train, lines: readonly Misalignment[]): number {
  const known = lines.map((line) => ({ line, covariance: [], residual: 0, zeros: [] }))
  return worstShare(sharesOf(truth, known))
}
