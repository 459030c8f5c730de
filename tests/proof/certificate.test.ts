import { expect, test } from 'vitest'
import { PlanRun } from '../../src/engine/plan/planRun'
import { certified, certifiedCost, type Weighted } from '../../src/engine/proof/certificate'
import { costProof, shareProof } from '../../src/engine/proof/claims'
import { Exact } from '../../src/engine/proof/exact'
import { costClaims } from '../../src/engine/plan/limitClaims'
import { tol } from '../../src/mechanics/tolerances'
import { glpkSolver } from '../../src/solvers/glpk'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { PlanningRun } from '../../src/engine/planningRun'
import { answerJson } from '../../src/json/answerJson'
import { certificateSentences } from '../../src/text/certificateText'
import { planText } from '../../src/text/planText'
import { exampleFile, read } from '../holds/choice'
import { counted } from '../counts'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import { solveSecond } from '../second/solve'
import { fineFactor, type Train } from '../second/train'

const wanted = counted(30, 500, 60)
const solver = await glpkSolver()

/** Random trains, every fourth with a guard, and every seventh with all its tolerances round. */
function drawn(seed: number): Train {
  const train = randomTrain(seed)
  const plan = seed % 4 === 0 ? { ...train.plan, guard: 1 } : train.plan
  const round = (one: Train['couplings'][number]) => ({
    ...one,
    tolerance: { ...one.tolerance, shape: 'round' as const },
  })
  const couplings = seed % 7 === 0 ? train.couplings.map(round) : train.couplings
  return { ...train, ...(plan && { plan }), couplings }
}

test('exact numbers: sums and products lose nothing, and a quotient is rounded down', () => {
  const third = 1 / 3
  expect(Exact.of(0.1).plus(Exact.of(0.2)).minus(Exact.of(0.3)).sign).toBe(1)
  expect(Exact.of(1e300).plus(Exact.of(1e-300)).minus(Exact.of(1e300)).near()).toBe(1e-300)
  expect(Exact.of(third).times(Exact.of(3)).minus(Exact.of(1)).near()).toBe(-(2 ** -54))
  expect(Exact.of(5e-324).near()).toBe(5e-324)
  expect(() => Exact.of(NaN)).toThrow('no number')
  const random = new Random(1)
  for (let k = 0; k < 500; k++) {
    const [a, b] = [random.about(10 ** random.between(-9, 9)), Math.abs(random.about(1)) + 1e-9]
    const down = Exact.of(a).overDown(Exact.of(b))
    expect(Math.abs(down - a / b)).toBeLessThanOrEqual(Math.abs(a / b) * 2 ** -50)
    // down * b <= a in whole numbers: what is left is not below 0
    expect(Exact.of(a).minus(Exact.of(down).times(Exact.of(b))).sign).toBeGreaterThanOrEqual(0)
  }
})

const leastOf = (judged: ReturnType<typeof certified>): number =>
  judged.accepted ? judged.least : -Infinity

test(`${wanted} impossible trains: certificates are accepted, what they say is never contradicted, wrong ones are refused`, async () => {
  const random = new Random(7)
  const counts = { impossible: 0, altered: 0, refused: 0 }
  for (let seed = 30_001; counts.impossible < wanted; seed++) {
    const document = drawn(seed)
    const run = new PlanRun(read(document), solver)
    const solved = run.solved()
    if (solved.status !== 'impossible') continue
    counts.impossible++
    const at = `seed ${seed}`
    const { train } = run
    const { share } = train.plan
    const certificate = run.certificate()
    expect(certificate?.accepted, at).toBe(true)
    const least = certificate?.least ?? NaN
    expect(least, at).toBeGreaterThan(share)
    expect(Math.abs(least / solved.floor - 1), at).toBeLessThan(1e-7)
    // the second builder and HiGHS, which knows no tolerance nearer than 1e-7
    const { floor, status } = await solveSecond(document)
    expect(status, at).toBe('impossible')
    expect(least, at).toBeLessThanOrEqual(floor * (1 + 1e-6) + 1e-6)

    const lines = run.found().map(({ line }) => line)
    const { limits } = shareProof(train, lines, solved.claims)
    const judge = (changed: readonly Weighted[]) => leastOf(certified(train, lines, changed))
    expect(judge(limits)).toBe(least)
    const which = Math.floor(random.next() * limits.length)
    const change = (make: (one: Weighted) => Weighted[]) =>
      limits.flatMap((one, i) => (i === which ? make(one) : [one]))
    // a weight with its sign turned is refused out of hand
    expect(judge(change(({ fact, weight }) => [{ fact, weight: -weight }]))).toBe(-Infinity)
    for (const wrong of [
      change(({ fact, weight }) => [{ fact, weight: weight * 1.01 }]),
      change(({ fact, weight }) => [{ fact, weight: weight * random.about(3) ** 2 }]),
      change(() => []),
      change(({ fact, weight }) => [
        'toward' in fact
          ? { fact: { ...fact, toward: [-fact.toward[0], -fact.toward[1]] }, weight }
          : 'side' in fact
            ? { fact: { ...fact, side: fact.side === 1 ? -1 : 1 }, weight }
            : { fact, weight: weight * 2 },
      ]),
    ]) {
      counts.altered++
      const proves = judge(wrong)
      // whatever was done to it, it proves nothing that is not so
      expect(proves, at).toBeLessThanOrEqual(floor * (1 + 1e-6) + 1e-6)
      if (!(proves > share + tol.overFloor)) counts.refused++
    }
  }
  console.log(`certificates ${JSON.stringify(counts)}`)
  // the others prove it as well: of a coupling that nothing moves any weight does
  expect(counts.refused / counts.altered).toBeGreaterThan(0.75)
}, 600_000)

test(`bounds of plans by rows of the proof's own are not over what any plan costs`, async () => {
  const counts = { planned: 0, byOwnRows: 0, farthest: 0 }
  for (let seed = 40_001; counts.planned < wanted / 2; seed++) {
    const document = drawn(seed)
    const run = new PlanRun(read(document), solver)
    const solved = run.solved()
    if (solved.status !== 'planned') continue
    counts.planned++
    const at = `seed ${seed}`
    const { bound, byOwnRows } = run.bound()
    if (byOwnRows) counts.byOwnRows++
    const plan = run.plan()
    if (plan.status !== 'planned') throw new Error(`${at} is ${plan.status}`)
    expect(bound, at).toBeLessThanOrEqual(plan.cost * (1 + 1e-9) + 1e-6)
    expect(plan.cost - bound, at).toBeLessThanOrEqual(2e-5 * plan.cost + 1e-2)
    const second = await solveSecond(document)
    const cost = second.cost * fineFactor(document)
    expect(bound, at).toBeLessThanOrEqual(cost * (1 + 2e-6) + 1e-3)
    counts.farthest = Math.max(counts.farthest, (plan.cost - bound) / Math.max(1, plan.cost))

    // a move at more than it costs would prove too much
    const lines = run.found().map(({ line }) => line)
    const { claims, moves } = costClaims(solved.parts)
    const { limits } = costProof(run.train, lines, solved.least.share, claims, moves)
    const dear = moves.map(({ move, weight }) => ({ move, weight: weight * 1.5 }))
    const judged = certifiedCost(run.train, lines, solved.least.share, limits, dear)
    if (moves.some(({ weight }) => Math.abs(weight) > 0.9)) expect(judged.accepted, at).toBe(false)
    expect(leastOf(judged), at).toBeLessThanOrEqual(plan.cost * (1 + 1e-9) + 1e-6)
  }
  console.log(`bounds by own rows ${JSON.stringify(counts)}`)
  expect(counts.byOwnRows).toBe(counts.planned)
}, 600_000)

function readOf(document: TrainDocument) {
  const file = readTrain(document)
  if (!file.ok) throw new Error(JSON.stringify(file.refused))
  return file
}

test('the certificate is told: beside the share asked for, and how many limits it takes', () => {
  const file = exampleFile('pump-and-motor') as TrainDocument
  const run = new PlanningRun(readOf({ ...file, plan: { ...file.plan, share: 0.2 } }), solver)
  const answer = run.answer({})
  if (answer.status !== 'impossible' || !answer.certificate) throw new Error(answer.status)
  const text = planText(run.train, answer).replace(/\s+/g, ' ')
  expect(text).toContain(
    '20 % was asked for, and every allowed move, with the same machines fixed, uses more of some tolerance.',
  )
  expect(text).toContain('It follows from 2 limits alone, with these machines fixed.')
  expect(answerJson(answer, run.train)).toMatchObject({
    certificate: { accepted: true, least: answer.certificate.least },
  })
  const [unproven] = certificateSentences(run.train, {
    ...answer.certificate,
    accepted: false,
    why: 'no tolerance in it',
  })
  expect(unproven).toContain('was not accepted, no tolerance in it')
})
