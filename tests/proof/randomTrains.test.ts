import { describe, expect, it } from 'vitest'
import { couplingMotions } from '../../src/mechanics/misalignment/couplingMotion'
import { sharesOf } from '../../src/mechanics/misalignment/shares'
import type { Motion } from '../../src/mechanics/motion'
import { affineValue } from '../../src/engine/lp/affine'
import { buildProgram } from '../../src/engine/lp/rows/buildProgram'
import { circleExcess } from '../../src/engine/lp/cuts'
import { programUnit, type Program } from '../../src/engine/lp/program'
import { sharesAfter } from '../../src/engine/proof/couplingsMet'
import { limitExcesses } from '../../src/engine/proof/limitsKept'
import { prove } from '../../src/engine/proof/prove'
import { tol } from '../../src/mechanics/tolerances'
import { asFound } from '../../src/mechanics/readings/asFound'
import type { Train } from '../../src/mechanics/train'
import { movesOf, original, patience, read, fineOf, seeds } from '../laws/bench'
import { Random } from '../second/random'
import { isWhole } from '../counts'

/** Motions that every body is free to make, of about `size` um at its feet. */
function randomMotions(random: Random, train: Train, size: number): Motion[] {
  return train.bodies.map(({ may, held, feet, x0 }) => {
    const arm = Math.max(1, ...feet.map((foot) => Math.hypot(foot.x - x0, foot.y)))
    const by = (free: boolean, scale: number) => (free && !held ? random.about(size) / scale : 0)
    return {
      tx: by(may.axial, 1),
      ty: by(may.slide, 1),
      tz: by(may.rise, 1),
      sy: by(may.yaw, arm),
      sz: by(may.pitch, arm),
      roll: by(may.roll, arm),
    }
  })
}

/** How far the program's own rows and circles are passed (um), tolerances left out. */
function passedByProgram(program: Program, motions: readonly Motion[]): number {
  const columns = program.columns.map(({ meaning }) => {
    if (meaning.part !== 'motion') return 0
    return (motions[meaning.body]?.[meaning.motion] ?? NaN) / meaning.scale
  })
  const rows = program.limits
    .filter(({ meaning }) => meaning.fact !== 'tolerance')
    .map((row) => {
      const value = affineValue({ constant: 0, terms: new Map(row.terms) }, columns)
      return Math.max(row.lower - value, value - row.upper)
    })
  const circles = program.circles
    .filter(({ meaning }) => meaning.fact !== 'tolerance')
    .map((circle) => circleExcess(circle, columns))
  return Math.max(0, ...rows, ...circles) * programUnit
}

const prepared = (seed: number) => {
  const train = read(original(seed).train)
  const found = train.couplings.map(asFound)
  return { train, found, lines: found.map(({ line }) => line) }
}

describe('the proof and the planner', () => {
  it(
    'work out the same shares for any motions, each in its own way',
    () => {
      let compared = 0
      for (const seed of seeds(40, 60)) {
        const { train, found, lines } = prepared(seed)
        const random = new Random(seed)
        for (const size of [0, 10, 300]) {
          const motions = randomMotions(random, train, size)
          const reported = sharesOf(train, found, couplingMotions(train, motions))
          const proven = sharesAfter(train, lines, motions)
          expect(proven).toHaveLength(reported.length)
          reported.forEach(({ share }, i) => {
            const other = proven[i]?.share ?? NaN
            expect(Math.abs(other - share), `seed ${seed}`).toBeLessThan(1e-9 * (1 + share))
            compared++
          })
        }
      }
      expect(compared).toBeGreaterThan(500)
    },
    patience,
  )

  it(
    'measure the same worst violation for any motions, each in its own way',
    () => {
      let [passed, kept] = [0, 0]
      for (const seed of seeds(40, 60)) {
        const { train, found } = prepared(seed)
        const program = buildProgram(train, found)
        const random = new Random(seed)
        for (const size of [3, 30, 300]) {
          const motions = randomMotions(random, train, size)
          const rows = passedByProgram(program, motions)
          const proven = Math.max(0, ...limitExcesses(train, motions).map(({ by }) => by))
          expect(Math.abs(proven - rows), `seed ${seed}`).toBeLessThan(1e-7 * (1 + rows))
          if (rows > 0) passed++
          else kept++
        }
      }
      expect(passed).toBeGreaterThan(50)
      expect(kept).toBeGreaterThan(20)
    },
    patience,
  )

  it(
    'tell the same shares in the answer: of every coupling in every state to 1e-9',
    () => {
      for (const seed of seeds(40, 60)) {
        const { train, lines } = prepared(seed)
        const { answer, train: document } = original(seed)
        if (!answer.couplings) continue
        const moves = movesOf(answer, fineOf(document))
        const motions = train.bodies.map(({ id }) => moves.get(id)).filter((m) => m !== undefined)
        const proven = sharesAfter(train, lines, motions)
        // the answer carries 12 digits, and so do its moves
        answer.couplings.forEach(({ share, checks }, i) => {
          const other = proven[i]?.share ?? NaN
          expect(Math.abs(other - share), `seed ${seed}`).toBeLessThan(1e-9 * (1 + share))
          expect(share).toBe(Math.max(...checks.map((check) => check.share)))
        })
        const worst = Math.max(...answer.couplings.map(({ share }) => share))
        expect(Math.abs(worst - (answer.worstShare ?? NaN))).toBeLessThan(1e-9 * (1 + worst))
        expect(worst, `seed ${seed}`).toBeLessThanOrEqual(answer.share + 1e-6)
        const { floor } = answer
        expect(floor, `seed ${seed}`).not.toBeNull()
        expect(floor ?? NaN, `seed ${seed}`).toBeLessThanOrEqual(worst * (1 + 2e-5) + 1e-7)
      }
    },
    patience,
  )

  it.runIf(isWhole)(
    'know of no cheaper plan nearby: whatever is changed passes a limit or costs more',
    () => {
      let [cheaper, allowed] = [0, 0]
      for (const seed of seeds(40, 60)) {
        const { train, lines } = prepared(seed)
        const { answer, train: document } = original(seed)
        if (answer.status !== 'planned' || !answer.proof) continue
        const bound = answer.proof.bound * fineOf(document)
        const moves = movesOf(answer, fineOf(document))
        const random = new Random(seed)
        for (let turn = 0; turn < 150; turn++) {
          const size = random.scale(1, 300)
          const changes = randomMotions(random, train, size)
          // one motion of one body, or all of all
          const body = random.whole(-1, train.bodies.length - 1)
          const name = random.pick(['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const)
          // the first few are the plan itself, not carried through to its end
          const short = [0.5, 0.9, 0.99, 0.999][turn]
          const motions = train.bodies.map(({ id }, b) => {
            const was = moves.get(id)
            const change = changes[b]
            if (!was || !change) throw new Error(id)
            if (short !== undefined)
              return Object.fromEntries(
                Object.entries(was).map(([k, v]) => [k, v * short]),
              ) as unknown as Motion
            if (body >= 0) return b === body ? { ...was, [name]: was[name] + change[name] } : was
            return Object.fromEntries(
              Object.entries(was).map(([k, v]) => [k, Number(v) + change[k as keyof Motion]]),
            ) as unknown as Motion
          })
          const proof = prove(train, lines, motions, train.plan.share, bound)
          const slack = Math.max(tol.allowedGap * bound, tol.allowedGapLeast)
          const limits = proof.faults.filter((fault) => !fault.includes('the gap is too wide'))
          if (proof.cost < bound - slack) {
            cheaper++
            expect(limits, `seed ${seed}`).not.toEqual([])
          }
          if (short !== undefined && bound > 1) expect(limits, `seed ${seed}`).not.toEqual([])
          if (limits.length === 0) {
            allowed++
            expect(proof.cost, `seed ${seed}`).toBeGreaterThanOrEqual(bound - slack)
          }
        }
      }
      // the changes did go both ways
      expect(cheaper).toBeGreaterThan(100)
      expect(allowed).toBeGreaterThan(100)
    },
    patience,
  )
})
