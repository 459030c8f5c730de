import type { Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { carriers, motionNames, type MotionName, type Point } from '../../mechanics/motion'
import { combine, type Affine } from './affine'
import { programUnit, type Column, type Row, type Meaning } from './program'

/** A train with a column for every motion that may happen: what the rows are written in. */
export interface Frame {
  readonly train: Train
  readonly found: readonly AsFound[]
  readonly columns: readonly Column[]
  /** Displacement (program units) of a point of a body, by its own motion alone or with its skid's. */
  displacement(body: number, point: Point, way: 'dx' | 'dy' | 'dz', chain: 'own' | 'all'): Affine
  /** Slope (program units per mm) of a body, own plus skid's. */
  slope(body: number, way: 'sy' | 'sz'): Affine
}

/** Columns: the share, then each free motion of each body that is not held. */
export function frameOf(train: Train, found: readonly AsFound[]): Frame {
  const columns: Column[] = [
    { name: 'share', lower: 0, upper: Infinity, cost: 0, meaning: { part: 'share' } },
  ]
  const index = train.bodies.map((body, b) => {
    const own = new Map<MotionName, { column: number; perUnit: number }>()
    for (const motion of motionNames) {
      if (body.held || !allowed(train, b, motion)) continue
      const arm = armOf(train, b, motion)
      own.set(motion, { column: columns.length, perUnit: 1 / arm })
      columns.push({
        name: `${columnWords[motion]} ${body.id}`,
        lower: -Infinity,
        upper: Infinity,
        cost: 0,
        meaning: { part: 'motion', body: b, motion, scale: programUnit / arm },
      })
    }
    return own
  })
  const single = (body: number, motion: MotionName): Affine => {
    const entry = index[body]?.get(motion)
    return {
      constant: 0,
      terms: entry ? new Map([[entry.column, entry.perUnit]]) : new Map<number, number>(),
    }
  }
  return {
    train,
    found,
    columns,
    displacement: (body, point, way, chain) =>
      combine(
        ...carriers(train, body, point)
          .slice(0, chain === 'own' ? 1 : 2)
          .flatMap((carrier) =>
            motionNames.map(
              (motion) => [carrier.carry[way][motion] ?? 0, single(carrier.body, motion)] as const,
            ),
          ),
      ),
    slope: (body, way) => {
      const skid = train.bodies[body]?.skid
      return skid === undefined
        ? single(body, way)
        : combine([1, single(body, way)], [1, single(skid, way)])
    },
  }
}

const columnWords = {
  tx: 'axial',
  ty: 'slide',
  tz: 'rise',
  sy: 'yaw',
  sz: 'pitch',
  roll: 'roll',
} as const satisfies Record<MotionName, string>

function allowed(train: Train, body: number, motion: MotionName): boolean {
  const may = train.bodies[body]?.may
  return may?.[columnWords[motion]] ?? false
}

/** Rotations are measured by what they do at the body's outermost foot, so that all columns are lengths. */
function armOf(train: Train, index: number, motion: MotionName): number {
  const body = train.bodies[index]
  if (!body || !['sy', 'sz', 'roll'].includes(motion)) return 1
  const reach = body.feet.map((foot) => Math.abs(motion === 'roll' ? foot.y : foot.x - body.x0))
  return Math.max(...reach)
}

/**
 * A row from an affine expression; undefined where no motion appears in it (standing still fulfils it).
 * @param lower and `upper`: bounds of the expression (program units)
 */
export function rowOf(
  name: string,
  expression: Affine,
  lower: number,
  upper: number,
  meaning: Meaning,
): Row | undefined {
  if (expression.terms.size === 0) return undefined
  return {
    name,
    terms: [...expression.terms],
    lower: lower - expression.constant,
    upper: upper - expression.constant,
    meaning,
  }
}
