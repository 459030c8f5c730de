import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { displaced, noMotion, displacementOf, type Motion } from '../../mechanics/motion'
import { motionsOf } from '../plan/solvePlan'
import { buildProgram } from '../lp/rows/buildProgram'
import { Partition, type Part } from '../lp/parts'
import { programUnit } from '../lp/program'
import { standingOf } from '../lp/standing'
import type { Solver } from '../lp/solver'
import type { Within } from './bothWays'
import { choosing, type DisplayedMove } from './choices'
import { nearest } from './allowed'
import { fitted } from './fitted'
import { metered } from './meter'
import { quantumOf } from './quantum'
import type { ChoicePart } from './chosen'
import { roundPart, type PartRounding } from './partRounding'

/** Shim changes of every foot (um), by body and foot. */
export type Changes = readonly (readonly Micrometres[])[]

export interface Rounded {
  readonly changes: Changes
  readonly motions: readonly Motion[]
}

export type Rounding =
  | (Rounded & {
      readonly kind: 'rounded'
      /** No rounding costs less by what goes in or out and what is slid, small moves told or not (um). */
      readonly bound: Micrometres
      /** The cheapest that was found with small moves told, and with all of them left alone (um). */
      readonly told: Micrometres
      readonly alone: Micrometres | undefined
      /** Largest share that a part was rounded under, and whether it is above the one asked for. */
      readonly share: number
      readonly over: boolean
      /** Of one that is over: whether none keeps the share asked for; else the search was ended before. */
      readonly proven: boolean
    })
  /** Every foot rounded by itself, which passes a tolerance or a limit; `parts` name who is concerned. */
  | (Rounded & {
      readonly kind: 'none'
      readonly proven: boolean
      /** Programs that were solved before it was given up. */
      readonly programs: number
      readonly bodies: readonly number[]
    })

/**
 * Rounds the shims of all feet together to what the store has. Slides and moves along the train stay
 * free and are planned anew; bodies that are held do not move. Parts that stand within the share are
 * left as they stand.
 * @param wanted motions of the plan before rounding
 * @param share the share that the plan was made within
 */
export function roundPlan(
  train: Train,
  found: readonly AsFound[],
  wanted: readonly Motion[],
  share: number,
  solver: Solver,
): Rounding {
  const { program, choices } = choosing(train, found, buildProgram(train, found))
  const partition = new Partition(program)
  const meter = metered(solver)
  const done: { given: ChoicePart; rounding: PartRounding }[] = []
  for (const group of partition.split()) {
    const part = partition.partOf(group)
    if (standingOf(part.program) <= share + tol.share) continue
    const own = choices.filter(({ row }) => part.limits.includes(row))
    const given = {
      part,
      choices: own,
      wanted: own.map((choice) => wantedOf(train, wanted, choice)),
      quantum: quantumOf(train, part, own),
    }
    done.push({ given, rounding: roundPart(given, share, meter) })
  }
  const failed = done.filter(({ rounding }) => rounding.kind === 'none')
  if (failed.length > 0)
    return {
      kind: 'none',
      proven: failed.some(({ rounding }) => rounding.kind === 'none' && rounding.proven),
      programs: meter.programs(),
      bodies: bodiesOf(failed.map(({ given }) => given.part)),
      ...byThemselves(train, wanted, choices),
    }
  const rounded = done.flatMap(({ given, rounding }) =>
    rounding.kind === 'rounded' ? [{ given, rounding }] : [],
  )
  const sumOf = (cost: (rounding: Within) => number): Micrometres =>
    rounded.reduce((sum, { rounding }) => sum + cost(rounding) * programUnit, 0)
  const changes = train.bodies.map(({ feet }) => feet.map(() => 0))
  for (const { given, rounding } of rounded)
    given.choices.forEach(({ kind, body, feet }, i) => {
      if (kind !== 'shim') return
      for (const f of feet) {
        const of = changes[body]
        if (of) of[f] = rounding.moves[i] ?? 0
      }
    })
  const motions = motionsOf(
    train,
    rounded.map(({ given, rounding }) => ({
      part: given.part,
      plan: { kind: 'planned', values: rounding.columns, least: undefined },
    })),
  )
  return {
    kind: 'rounded',
    changes,
    motions: motions.map((motion, b) => fitted(train.bodies[b], motion, changes[b] ?? [])),
    bound: sumOf(({ bound }) => bound),
    told: sumOf(({ told }) => told),
    alone: rounded.every(({ rounding }) => rounding.alone !== undefined)
      ? sumOf(({ alone = 0 }) => alone)
      : undefined,
    share: Math.max(share, ...rounded.map(({ rounding }) => rounding.share)),
    over: rounded.some(({ rounding }) => rounding.over),
    proven: rounded.some(({ rounding }) => rounding.over && rounding.proven),
  }
}

/** What a plan wants of a choice (um). */
function wantedOf(train: Train, motions: readonly Motion[], choice: DisplayedMove): Micrometres {
  const body = train.bodies[choice.body]
  const motion = motions[choice.body] ?? noMotion
  if (!body) return 0
  if (choice.kind === 'axial') return motion.tx
  const foot = body.feet[choice.feet[0] ?? 0]
  const { dy, dz } = displacementOf(body, { x: foot?.x ?? 0, y: foot?.y ?? 0, z: 0 })
  return displaced(choice.kind === 'shim' ? dz : dy, motion)
}

const bodiesOf = (parts: readonly Part[]): number[] => {
  const all = parts.flatMap(({ program }) =>
    program.columns.flatMap(({ meaning }) => (meaning.part === 'motion' ? [meaning.body] : [])),
  )
  return [...new Set(all)].sort((a, b) => a - b)
}

/** Every foot at the change nearest to what the plan wants, the slides as planned. */
function byThemselves(
  train: Train,
  wanted: readonly Motion[],
  choices: readonly DisplayedMove[],
): Rounded {
  const changes = train.bodies.map(({ feet }) => feet.map(() => 0))
  for (const choice of choices) {
    if (choice.kind !== 'shim') continue
    for (const f of choice.feet) {
      const of = changes[choice.body]
      if (of) of[f] = nearest(choice.any, wantedOf(train, wanted, choice))
    }
  }
  return {
    changes,
    motions: wanted.map((motion, b) => fitted(train.bodies[b], motion, changes[b] ?? [])),
  }
}
