import { oneSided } from '../../lp/relax'
import { withoutSides } from '../../../mechanics/misalignment/gearTeeth'
import type { Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { keptRooms } from '../../../mechanics/uncertainty/kept'
import { buildProgram } from '../../lp/rows/buildProgram'
import type { Program } from '../../lp/program'
import { keyOf, elasticLimitOf, type ElasticLimit } from './limit'

/**
 * The program of a train with every body let go, and the members that make it the train it is: its
 * limits, its tolerances, and what is held. Any part of them can be asked about by itself.
 */
export interface ElasticModel {
  readonly train: Train
  /** Lines of its couplings as found. */
  readonly found: readonly AsFound[]
  readonly program: Program
  readonly members: readonly ElasticLimit[]
  /** Index in `members` of every row and circle of the program. */
  readonly ofRow: readonly number[]
  readonly ofCircle: readonly number[]
  /** Columns that stand still while a held member counts. */
  readonly columnsOf: ReadonlyMap<number, readonly number[]>
}

/**
 * Lets every body go. An anchored body without feet has nothing to move on: it stays, and is no
 * member. Each row bounds one side only, so that one foot in one direction is one member. What is kept
 * free of the tolerances stays that of the train as it is: a body let go would have to be kept against more, so
 * that what cannot be had here cannot be had there either, and what can is planned again before it is told.
 */
export function elasticModelOf(train: Train, found: readonly AsFound[]): ElasticModel {
  const program = oneSided(buildProgram(letGo(train), found, keptRooms(train)))
  const members: ElasticLimit[] = []
  const known = new Map<string, number>()
  const indexOf = (member: ElasticLimit): number => {
    const key = keyOf(member)
    const index = known.get(key) ?? members.push(member) - 1
    known.set(key, index)
    return index
  }
  const columnsOf = new Map<number, number[]>()
  train.bodies.forEach((body, b) => {
    if (!body.held || body.feet.length === 0) return
    const columns = program.columns.flatMap(({ meaning }, c) =>
      meaning.part === 'motion' && meaning.body === b ? [c] : [],
    )
    if (columns.length > 0) columnsOf.set(indexOf({ kind: 'held', body: b }), columns)
  })
  return {
    train,
    found,
    program,
    ofRow: program.limits.map((row) =>
      indexOf(elasticLimitOf(row.meaning, Number.isFinite(row.upper) ? 'upper' : 'lower')),
    ),
    ofCircle: program.circles.map(({ meaning }) => indexOf(elasticLimitOf(meaning, 'upper'))),
    members,
    columnsOf,
  }
}

/** The train with nothing held that could move. */
function letGo(train: Train): Train {
  const bodies = train.bodies.map((body) =>
    body.held && body.feet.length > 0 ? { ...body, held: false } : body,
  )
  return { ...withoutSides(train), bodies, machines: bodies.slice(0, train.machines.length) }
}

/** Everything that the train must respect. */
export const allLimits = (model: ElasticModel): ReadonlySet<number> => new Set(model.members.keys())
