import { metric } from '../second/metric'
import { Random } from '../second/random'
import { randomSureTrain } from '../second/randomSure'
import { chainAt, linesOf, withSurveys } from '../second/randomSurvey'
import { fitted, type FourNumbers } from '../second/sure/coupled'
import { gains } from '../second/sure/fit'
import { misreads } from '../second/sure/misreads'
import { Normals } from '../second/sure/normals'
import { wholeFit } from '../second/sure/wholeFit'
import type { Coupling, Survey, Train } from '../second/train'

/** An error that is planted: in a number of the survey, or in one of the four numbers read at a coupling. */
export type Planted =
  | { kind: 'point'; index: number; way: 'y' | 'z'; error: number }
  | { kind: 'coupling'; coupling: number; number: 'y' | 'z' | 'sy' | 'sz'; error: number }

const usual = 25 // um

const bases = new Map<number, Train>()
/** A random train in mm and um, made once. */
function baseOf(seed: number): Train {
  const base = bases.get(seed) ?? metric(randomSureTrain(seed))
  bases.set(seed, base)
  return base
}

/**
 * A train in mm and um with surveys whose true errors are drawn as the readings and the surveys say that they are: the
 * readings stay, and what a survey saw is the train without their errors, with errors of its own.
 */
export function soundJob(seed: number, count = 1): Train {
  const document = baseOf(1 + (seed % 40))
  const normals = new Normals(seed)
  const errors = new Map(
    document.couplings.map((c): [Coupling, FourNumbers] => {
      const fit = fitted(c)
      const sum: FourNumbers = [0, 0, 0, 0]
      for (const { changes } of misreads(c, fit)) {
        const draw = normals.next()
        fit.answering(changes).forEach((by, k) => (sum[k] = (sum[k] ?? 0) + draw * by))
      }
      return [c, sum]
    }),
  )
  const read = linesOf(document)
  const truth = (c: Coupling): FourNumbers => {
    const off: FourNumbers = errors.get(c) ?? [0, 0, 0, 0]
    const line = read(c)
    return [line[0] - off[0], line[1] - off[1], line[2] - off[2], line[3] - off[3]]
  }
  const surveys = Array.from({ length: count }, (_, s): Survey => {
    const [survey] = withSurveys(document, seed + 100_000 * s, false).surveys ?? []
    if (!survey) throw new Error('no survey')
    const points = survey.points.map((point) => {
      const u = point.u ?? survey.u ?? usual
      const seen = (way: 'y' | 'z') =>
        chainAt(document, point.machine, point.x, way, truth) +
        700 -
        0.2 * point.x +
        u * normals.next()
      return {
        ...point,
        ...(point.z !== undefined && { z: seen('z') }),
        ...(point.y !== undefined && { y: seen('y') }),
      }
    })
    return { ...survey, id: `survey ${s + 1}`, points }
  })
  return { ...document, surveys }
}

/** What one unit of an error adds to the value of each equation of the whole fit. */
function signature(train: Train, survey: Survey, planted: Planted): number[] {
  const whole = wholeFit(train, [survey])
  const reads = 4 * train.couplings.length
  if (planted.kind === 'coupling') {
    const c = train.couplings[planted.coupling]
    const one = ['y', 'z', 'sy', 'sz'].map((number) => (number === planted.number ? 1 : 0))
    const by = c ? whole.ofRead(c, one) : []
    return whole.equations.map((_, k) => (k < reads ? (by[k - 4 * planted.coupling] ?? 0) : 0))
  }
  const ways = (['y', 'z'] as const).filter((way) =>
    survey.points.some((p) => p[way] !== undefined),
  )
  const rows = ways.flatMap((way) => survey.points.map((_, index) => ({ way, index })))
  const at = rows.findIndex(({ way, index }) => way === planted.way && index === planted.index)
  return whole.equations.map((_, k) => (k === reads + at ? 1 : 0))
}

/**
 * How surely everything else tells an error: its standard uncertainty as one more unknown of the whole fit; undefined
 * where nothing else tells it.
 */
function uOfError(train: Train, planted: Planted): number | undefined {
  const [survey] = train.surveys ?? []
  if (!survey) throw new Error('no survey')
  const by = signature(train, survey, planted)
  const equations = wholeFit(train, [survey]).equations.map((equation, k) => ({
    ...equation,
    row: [...equation.row, by[k] ?? 0],
  }))
  try {
    const last = gains(equations).at(-1) ?? []
    const u = Math.hypot(...last.map((gain, k) => gain * (equations[k]?.u ?? 0)))
    // where the elimination has lost its digits nothing is told
    return u < 1e5 ? u : undefined
  } catch {
    return undefined
  }
}

/** A sound job with one error planted that everything else tells with so many of its standard uncertainties. */
export function spoiledJob(seed: number, sigmas: number): { train: Train; planted: Planted } {
  const train = soundJob(seed)
  const random = new Random(seed + 77)
  const [survey] = train.surveys ?? []
  if (!survey) throw new Error('no survey')
  for (let i = 0; i < 100; i++) {
    const planted = anEntry(random, train, survey)
    const u = uOfError(train, planted)
    if (u === undefined) continue
    planted.error = random.pick([1, -1]) * sigmas * u
    return { planted, train: spoiled(train, survey, planted) }
  }
  throw new Error('nothing that an error of would show')
}

function anEntry(random: Random, train: Train, survey: Survey): Planted {
  if (random.chance(0.5)) {
    const index = random.whole(0, survey.points.length - 1)
    const way = random.pick(['y', 'z'] as const)
    if (survey.points[index]?.[way] !== undefined) return { kind: 'point', index, way, error: 0 }
  }
  const coupling = random.whole(0, train.couplings.length - 1)
  return {
    kind: 'coupling',
    coupling,
    number: random.pick(['y', 'z', 'sy', 'sz'] as const),
    error: 0,
  }
}

/** An error of a coupling is one of its readings, so that the survey differs by its contrary along all machines beyond. */
function spoiled(train: Train, survey: Survey, planted: Planted): Train {
  const { error } = planted
  const points = survey.points.map((point, index) => {
    if (planted.kind === 'point')
      return index === planted.index
        ? { ...point, [planted.way]: (point[planted.way] ?? 0) + error }
        : point
    const way = planted.number.endsWith('y') ? 'y' : 'z'
    const value = point[way]
    const wrong = (c: Coupling): FourNumbers => {
      const own = train.couplings[planted.coupling] === c ? error : 0
      const is = (number: string) => (planted.number === number ? own : 0)
      return [is('y'), is('z'), is('sy'), is('sz')]
    }
    return value === undefined
      ? point
      : { ...point, [way]: value - chainAt(train, point.machine, point.x, way, wrong) }
  })
  return { ...train, surveys: [{ ...survey, points }] }
}
