import type { Train } from '../train'
import { boltsFit } from './bolts'
import { checksOf, met, seen, type Check } from './checks'
import { errorsOf, type Motions } from './errors'
import type { Joint } from './joints'
import { Normals } from './normals'
import { addDraws, type Source } from './source'
import { spreadOf, type Spread } from './spreads'

/** Chances of a plan by the contract, as fractions of the draws; spreads in the document's units. */
export interface Sampled {
  all: number
  reread: number
  asFound: number
  couplings: { coupling: string; state: string; chance: number; u: Spread[] }[]
  bolts?: number
}

interface Asked {
  draws: number
  seed: number
  /** What a source is worth of what the file says: 1 where nothing is asked. */
  factor?: (source: Source) => number
}

/** One joint while draws are counted. */
interface Counted {
  joint: Joint
  checks: Check[]
  good: number
  /** Sums of squares of what each check sees beside the plan, y and z; errors have no mean. */
  squares: [number, number][]
}

/** Samples the chances of a plan, drawing every error of every draw by itself. */
export function sampled(
  document: Train,
  motions: Motions,
  { draws, seed, factor = () => 1 }: Asked,
): Sampled {
  const { joints, found, done, bolts, ...sources } = errorsOf(document, motions)
  const known = weighed(sources.known, factor)
  const work = weighed(sources.work, factor)
  const counted = joints.map((joint): Counted => {
    const checks = checksOf(joint)
    return { joint, checks, good: 0, squares: checks.map(() => [0, 0]) }
  })
  const good = { all: 0, reread: 0, asFound: 0, bolts: 0 }
  const normals = new Normals(seed)
  const errors = new Float64Array(found.length + 2 * bolts.length)
  const sum = new Float64Array(found.length)
  const inAll = (base: Float64Array) => {
    for (let i = 0; i < sum.length; i++) sum[i] = (base[i] ?? 0) + (errors[i] ?? 0)
    return counted.every(({ joint, checks }) => allMet(checks, sum, joint.first))
  }
  for (let draw = 0; draw < draws; draw++) {
    errors.fill(0)
    addDraws(known, normals, errors)
    if (inAll(found)) good.asFound += 1
    if (inAll(done)) good.reread += 1
    addDraws(work, normals, errors)
    if (inAll(done)) good.all += 1
    if (boltsFit(bolts, errors)) good.bolts += 1
    for (const one of counted) {
      if (allMet(one.checks, sum, one.joint.first)) one.good += 1
      addSquares(one, errors)
    }
  }
  return {
    all: good.all / draws,
    reread: good.reread / draws,
    asFound: good.asFound / draws,
    // an open clutch has no chance of its own: nothing of it is judged
    couplings: counted
      .filter(({ joint: { c, state } }) => c.disengaged?.includes(state.id) !== true)
      .map(({ joint, checks, good: within, squares }) => ({
        coupling: joint.c.id,
        state: joint.state.id,
        chance: within / draws,
        u: checks.map((check, i) => {
          const [yy, zz] = squares[i] ?? [NaN, NaN]
          return spreadOf(check, yy / draws, zz / draws, document)
        }),
      })),
    ...(bolts.length > 0 && { bolts: good.bolts / draws }),
  }
}

const weighed = (sources: readonly Source[], factor: (source: Source) => number): Source[] =>
  sources.map((one) => {
    const times = factor(one)
    return { ...one, effects: one.effects.map(({ to, by }) => ({ to, by: times * by })) }
  })

const allMet = (checks: readonly Check[], numbers: Float64Array, first: number): boolean =>
  checks.every((check) => {
    const [y, z] = seen(check, numbers, first)
    return met(check, y, z)
  })

function addSquares({ joint, checks, squares }: Counted, errors: Float64Array): void {
  checks.forEach((check, i) => {
    const [y, z] = seen(check, errors, joint.first)
    const sums = squares[i]
    if (!sums) return
    sums[0] += y * y
    sums[1] += z * z
  })
}
