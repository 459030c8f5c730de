import { metric } from '../metric'
import { fineFactor, lengthFactor, type Train } from '../train'
import { moves, still, type Motion } from './bodies'
import { boltErrors, boltsFit, boltsOf } from './bolts'
import { checksOf, met, seen, type Check } from './checks'
import { growthErrors } from './growthErrors'
import { jointsOf, type Joint } from './joints'
import { asFoundNumbers, motionsOf, plannedNumbers } from './nominal'
import { Normals } from './normals'
import { readingErrors } from './readingErrors'
import { addDraws, type Source } from './source'
import { workErrors } from './workErrors'

interface Spread {
  what: Check['what']
  y?: number
  z?: number
  x?: number
}

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
  /** Sums of squares of what each check sees beside the plan, y and z. */
  squares: [number, number][]
}

/** Samples the chances of a plan that is given as the own motion of each body (document units). */
export function sampled(
  document: Train,
  motions: Readonly<Record<string, Motion>>,
  { draws, seed, factor = () => 1 }: Asked,
): Sampled {
  const train = metric(document)
  const joints = jointsOf(train)
  const planned = motionsOf(train, motions, fineFactor(document))
  const found = asFoundNumbers(joints)
  const done = plannedNumbers(joints, found, planned)
  const motionOf = (standing: Parameters<typeof moves>[0]) => planned.get(standing) ?? still
  const standings = [...planned.keys()]
  const bolts = boltsOf(standings, motionOf, found.length)
  const weighed = (list: Source[]): Source[] =>
    list.map((one) => {
      const times = factor(one)
      return { ...one, effects: one.effects.map(({ to, by }) => ({ to, by: times * by })) }
    })
  const known = weighed([...readingErrors(joints), ...growthErrors(train, joints)])
  const work = weighed([
    ...standings
      .filter((standing) => moves(standing, motionOf(standing)))
      .flatMap((standing) => workErrors(train, joints, standing, motionOf(standing), bolts)),
    ...boltErrors(bolts),
  ])
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
    couplings: counted.map((one) => ({
      coupling: one.joint.c.id,
      state: one.joint.state.id,
      chance: one.good / draws,
      u: spreads(one, draws, document),
    })),
    ...(bolts.length > 0 && { bolts: good.bolts / draws }),
  }
}

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

/** Standard deviations of what was drawn; errors have no mean. */
function spreads({ checks, squares }: Counted, draws: number, document: Train): Spread[] {
  return checks.map(({ what }, i) => {
    const [y, z] = (squares[i] ?? [NaN, NaN]).map((square) => Math.sqrt(square / draws)) as [
      number,
      number,
    ]
    if (what === 'gap') return { what, x: y / 1000 / lengthFactor(document) }
    const unit = what === 'offset' ? fineFactor(document) : 1
    return { what, y: y / unit, z: z / unit }
  })
}
