import { midSpan } from '../reading'
import type { Coupling, Survey, SurveyPoint, Train } from '../train'
import { fitted } from './coupled'
import { misreads } from './misreads'

/** An equation of the fit of the whole train: in the lines of the machines and the surveys' own lines. */
interface Equation {
  row: number[]
  value: number
  u: number
  /** The number surveyed that it comes from. */
  survey?: string
}

/** The equations of one fit of a whole train. */
export interface Whole {
  /** The four of each coupling in order, then the numbers surveyed. */
  equations: Equation[]
  /** Offset y, z and slope y, z of a coupling in the unknowns. */
  fourRows: (c: Coupling) => number[][]
  /** What an error of the four numbers read at a coupling adds to its equations. */
  ofRead: (c: Coupling, error: readonly number[]) => number[]
}

const usual = 25 // um: common practice, no source

/**
 * The equations of readings and surveys (a train in mm and um): unknown are the straight lines of all machines but the
 * first, and height and slope of each survey's own line in each direction. The four numbers that the readings of a
 * coupling give are observations with a covariance of their own, made independent by its Cholesky triangle.
 */
export function wholeFit(train: Train, surveys: readonly Survey[]): Whole {
  const { couplings, machines } = train
  const order = (id: string) => machines.findIndex((machine) => machine.id === id)
  // y, slope y, z, slope z of each machine at the middle of the coupling to its left
  const middles = machines.map(({ id }) => {
    const c = couplings.find(({ right }) => right.machine === id)
    return c ? midSpan(c) : 0
  })
  const tracks = surveys.flatMap((survey) =>
    (['y', 'z'] as const)
      .filter((way) => survey.points.some((point) => point[way] !== undefined))
      .map((way) => ({ survey, way })),
  )
  const own = 4 * (machines.length - 1)
  const nothing = () => Array.from({ length: own + 2 * tracks.length }, () => 0)
  const add = (row: number[], at: number, by: number) => {
    row[at] = (row[at] ?? 0) + by
  }
  /** Adds the place of a machine's line at x, or its slope, to a row; the first machine's line is nought. */
  const addPlace = (row: number[], m: number, way: 'y' | 'z', x: number, by: number) => {
    if (m === 0) return
    const first = 4 * (m - 1) + (way === 'y' ? 0 : 2)
    add(row, first, by)
    add(row, first + 1, by * (x - (middles[m] ?? 0)))
  }
  const addSlope = (row: number[], m: number, way: 'y' | 'z', by: number) => {
    if (m > 0) add(row, 4 * (m - 1) + (way === 'y' ? 1 : 3), by)
  }
  /** Offset y, offset z, slope y, slope z of a coupling, as rows. */
  const fourRows = (c: Coupling): number[][] => {
    const [l, r] = [order(c.left.machine), order(c.right.machine)]
    const x = midSpan(c)
    return [
      ...(['y', 'z'] as const).map((way) => {
        const row = nothing()
        addPlace(row, r, way, x, 1)
        addPlace(row, l, way, x, -1)
        return row
      }),
      ...(['y', 'z'] as const).map((way) => {
        const row = nothing()
        addSlope(row, r, way, 1)
        addSlope(row, l, way, -1)
        return row
      }),
    ]
  }
  const triangles = couplings.map((c) => triangle(covarianceOf(c)))
  const white = couplings.map((c, i) => {
    const rows = fourRows(c)
    const lower = triangles[i] ?? []
    return nothing()
      .map((_, k) =>
        forward(
          lower,
          rows.map((row) => row[k] ?? 0),
        ),
      )
      .reduce<number[][]>(
        (all, column) => all.map((row, r) => [...row, column[r] ?? 0]),
        [[], [], [], []],
      )
  })
  const read = couplings.flatMap((c, i): Equation[] => {
    const values = forward(triangles[i] ?? [], fitted(c).line)
    return values.map((value, k) => ({ row: white[i]?.[k] ?? [], value, u: 1 }))
  })
  const surveyed = tracks.flatMap(({ survey, way }, t) => {
    const xs = survey.points.map(({ x }) => x)
    const mean = xs.reduce((a, b) => a + b, 0) / xs.length
    return survey.points.flatMap((point: SurveyPoint): Equation[] => {
      const value = point[way]
      if (value === undefined) return []
      const row = nothing()
      addPlace(row, order(point.machine), way, point.x, 1)
      add(row, own + 2 * t, 1)
      add(row, own + 2 * t + 1, point.x - mean)
      return [{ row, value, u: point.u ?? survey.u ?? usual, survey: survey.id }]
    })
  })
  return {
    equations: [...read, ...surveyed],
    fourRows,
    ofRead: (c, error) => forward(triangles[couplings.indexOf(c)] ?? [], error),
  }
}

/** How unsure the line of a coupling is by everything that is read there. */
function covarianceOf(c: Coupling): number[][] {
  const fit = fitted(c)
  const errors = misreads(c, fit).map(({ changes }) => fit.answering(changes))
  return [0, 1, 2, 3].map((i) =>
    [0, 1, 2, 3].map((j) => errors.reduce((sum, e) => sum + (e[i] ?? 0) * (e[j] ?? 0), 0)),
  )
}

export const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + v * (b[i] ?? 0), 0)

/** Lower triangle whose product with its transpose is the matrix (Cholesky, any text). */
function triangle(matrix: number[][]): number[][] {
  const lower: number[][] = []
  matrix.forEach((row, i) => {
    const next: number[] = []
    for (let j = 0; j <= i; j++) {
      const above = j === i ? next : (lower[j] ?? [])
      const rest = (row[j] ?? 0) - dot(next.slice(0, j), above.slice(0, j))
      next.push(j === i ? Math.sqrt(rest) : rest / (above[j] ?? NaN))
    }
    lower.push(next)
  })
  return lower
}

/** Solves lower x = right. */
function forward(lower: number[][], right: readonly number[]): number[] {
  const x: number[] = []
  lower.forEach((row, i) => x.push(((right[i] ?? 0) - dot(row.slice(0, i), x)) / (row[i] ?? NaN)))
  return x
}
