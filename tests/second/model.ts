import { fixed, sum } from './affine'
import { addBody } from './limits'
import { metric } from './metric'
import { movers, type Mover } from './motion'
import { emptyProgram, type Program } from './program'
import { misalignment } from './reading'
import { foundLines, isJoined } from './sure/found'
import type { FourNumbers } from './sure/coupled'
import { reservesOf } from './sure/reserve'
import type { LeftOut } from './terms'
import { addChecks, couplingChecks, type Check } from './tolerance'
import { statesOf, type Train } from './train'

/** The linear program of a train, with what is needed to read its answer. */
export interface Built {
  /** The train in mm and um. */
  train: Train
  program: Program
  movers: Map<string, Mover>
  checks: Check[]
  /** The largest share that the plan may use. */
  share: number
  /** Whether any circle takes part: two right answers then agree less closely. */
  hasCircles: boolean
}

/** The readings of a coupling leave its offset or slope open. */
export class Undetermined extends Error {
  constructor(coupling: string) {
    super(`the readings leave coupling ${coupling} undetermined`)
  }
}

const joined = ([y, z, sy, sz]: FourNumbers) => ({ offset: { y, z }, slope: { y: sy, z: sz } })

/** Builds the program of a train file, leaving out one term of the contract if asked. */
export function build(document: Train, leaveOut?: LeftOut): Built {
  const train = metric(document, leaveOut)
  const program = emptyProgram()
  const all = movers(program, train, leaveOut)
  for (const mover of all.values()) addBody(program, mover, train.plan, leaveOut)
  const listed = statesOf(train)
  const states = leaveOut === 'all states' ? listed.slice(0, 1) : listed
  const joins = train.surveys?.some(isJoined) === true ? foundLines(train) : undefined
  const lines = train.couplings.map((c) => {
    const found = misalignment(c, leaveOut)
    if (!(found.hold > 1e-9)) throw new Undetermined(c.id)
    return { c, found: joins ? { ...found, ...joined(joins.line(c)) } : found }
  })
  const reserveOf = reservesOf(train)
  const checks = lines
    .flatMap(({ c, found }) => couplingChecks(train, c, found, states, all, leaveOut))
    .map((check) => {
      const reserve = reserveOf(check.coupling, check.state, check.what)
      return reserve ? { ...check, reserve } : check
    })
  addChecks(program, checks)
  return {
    train,
    program,
    movers: all,
    checks,
    share: leaveOut === 'share' ? 1 : (train.plan?.share ?? 1),
    hasCircles: program.circles.length > 0,
  }
}

/**
 * Widens every circle by what a plan may pass one: 1e-3 um at a bolt, 1e-6 of a tolerance. Where a
 * bolt already touches its hole and can only move along the edge, that little decides a lot: a step
 * of s along a circle of radius r leaves it by s^2 / 2r, so 1e-3 um lets a bolt go 0.4 um.
 */
export function loosen(program: Program): void {
  for (const circle of program.circles) {
    const atBolt = circle.family.endsWith('hole') || circle.family === 'reserve'
    circle.radius = atBolt
      ? sum([1, circle.radius], [1, fixed(1e-3)])
      : sum([1 + 1e-6, circle.radius])
  }
}
