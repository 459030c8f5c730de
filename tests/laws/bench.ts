import { planTrain } from '../planned'
import type { BodyAnswer } from '../../src/engine/plan/answer'
import type { AnswerJson } from '../../src/json/answerJson'
import { solvePlan } from '../../src/engine/plan/solvePlan'
import { sharesOf, worstShare } from '../../src/mechanics/misalignment/shares'
import { buildProgram } from '../../src/engine/lp/rows/buildProgram'
import { programUnit } from '../../src/engine/lp/program'
import { prove } from '../../src/engine/proof/prove'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readTrain } from '../../src/document/readTrain'
import type { Train as Read } from '../../src/mechanics/train'
import { micrometresPer } from '../../src/mechanics/units'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted } from '../counts'
import { randomTrain } from '../second/randomTrain'
import type { Train } from '../second/train'

const solver = await glpkSolver()
const long = process.env.HOLDFAST_LONG === '1'

/** Seeds of the random trains that a law is tried on: the same ones on every machine. */
export const seeds = (usual: number, whole = usual): number[] =>
  Array.from({ length: counted(usual, 400, whole) }, (_, i) => 7001 + i)

/** Milliseconds that a law over these seeds may take. */
export const patience = long ? 1_800_000 : 600_000

const originals = new Map<number, { train: Train; answer: AnswerJson }>()

/** A random train and its plan with prices; planned once a test file. */
export function original(seed: number): { train: Train; answer: AnswerJson } {
  const known = originals.get(seed)
  if (known) return known
  const train = randomTrain(seed)
  const made = { train, answer: plan(train, { prices: true }) }
  originals.set(seed, made)
  return made
}

/** The plan of a train; a refusal or a failure of the program is an error here. */
export function plan(
  document: unknown,
  { prices = true }: { readonly prices?: boolean } = {},
): AnswerJson {
  const answer = planTrain(document, solver, { reasons: false, prices })
  if ('refused' in answer) throw new Error(`refused: ${JSON.stringify(answer.refused)}`)
  if (answer.status === 'stopped' || answer.status === 'unproven')
    throw new Error(`${answer.status}: ${answer.why ?? ''}`)
  return answer
}

export function read(document: unknown): Read {
  const result = readTrain(document)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refused)}`)
  return result.train
}

/** Status, least cost (um; Infinity where nothing meets the tolerances) and floor, without prices. */
export function worth(document: unknown): { status: string; cost: number; floor: number } {
  const train = read(document)
  const found = train.couplings.map(asFound)
  const program = buildProgram(train, found)
  const solved = solvePlan(train, program, worstShare(sharesOf(train, found)), solver)
  const { status, floor } = solved
  if (status === 'stopped' || floor === undefined) throw new Error(`stopped: ${status}`)
  const costs = {
    'in-tolerance': 0,
    impossible: Infinity,
    planned: status === 'planned' ? solved.least.answer.objective * programUnit : NaN,
  }
  return { status, cost: costs[status], floor }
}

/** Two right answers agree in cost, floor and worst share within this (output contract). */
export const relative = 2e-5
/** Costs (um) and shares below these are nothing. */
export const small = { cost: 1e-2, share: 1e-7 }

export const near = (a: number, b: number, nothing: number, within = relative): boolean =>
  Math.abs(a - b) <= within * Math.max(Math.abs(a), Math.abs(b)) + nothing

export const fineOf = (train: Train): number => micrometresPer[train.units.fine]

/** Where two answers to the same train differ that should not; costs are compared in um. */
export function differences(
  before: AnswerJson,
  after: AnswerJson,
  fine: { before: number; after: number },
): string[] {
  const out: string[] = []
  const same = (what: string, a: number | undefined, b: number | undefined, nothing: number) => {
    if (a === undefined ? b !== undefined : !near(a, b ?? NaN, nothing))
      out.push(`${what}: ${a ?? 'none'} became ${b ?? 'none'}`)
  }
  const inMicrometres = (cost: number | undefined, by: number) =>
    cost === undefined ? undefined : cost * by
  if (before.status !== after.status) out.push(`status: ${before.status} became ${after.status}`)
  same(
    'cost',
    inMicrometres(before.cost, fine.before),
    inMicrometres(after.cost, fine.after),
    small.cost,
  )
  same('floor', before.floor ?? undefined, after.floor ?? undefined, small.share)
  same('worst share', before.worstShare, after.worstShare, small.share)
  for (const { coupling, share } of before.asFound) {
    const other = after.asFound.find((row) => row.coupling === coupling)
    for (const [state, value] of Object.entries(share))
      if (!near(value, other?.share[state] ?? NaN, 1e-9, 1e-8))
        out.push(`as found ${coupling} ${state}: ${value} became ${other?.share[state] ?? 'none'}`)
  }
  return out
}

export type Move = BodyAnswer['move']

/** The moves of an answer in um and mrad, each changed by `change`, by body. */
export function movesOf(
  answer: AnswerJson,
  fine: number,
  change: (move: Move) => Move = (move) => move,
): Map<string, Move> {
  return new Map(
    (answer.bodies ?? []).map(({ id, move }) => {
      const { tx, ty, tz, ...turns } = move
      return [id, change({ tx: tx * fine, ty: ty * fine, tz: tz * fine, ...turns })]
    }),
  )
}

/** What the proof of a train finds wrong with moves made for another writing of it. */
export function faultsOf(
  train: Train,
  answer: AnswerJson,
  moves: ReadonlyMap<string, Move>,
): readonly string[] {
  if (answer.proof === undefined) return []
  const known = read(train)
  const lines = known.couplings.map((coupling) => asFound(coupling).line)
  const motions = known.bodies.map(({ id }) => {
    const move = moves.get(id)
    if (!move) throw new Error(`no move of ${id}`)
    return move
  })
  const { share } = known.plan
  return prove(known, lines, motions, share, answer.proof.bound * fineOf(train)).faults
}

/** Most that two sets of moves differ by: um, and for turns um at a metre. */
export function apart(a: ReadonlyMap<string, Move>, b: ReadonlyMap<string, Move>): number {
  let most = 0
  for (const [id, move] of a)
    for (const name of ['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const) {
      const size = name.startsWith('t') ? 1 : 1000
      most = Math.max(most, size * Math.abs(move[name] - (b.get(id)?.[name] ?? NaN)))
    }
  return most
}

/** How often each thing came, to show that a law was tried on what it speaks of. */
export class Tally {
  private readonly counts = new Map<string, number>()

  add(what: string): void {
    this.counts.set(what, this.of(what) + 1)
  }

  of(what: string): number {
    return this.counts.get(what) ?? 0
  }

  toString(): string {
    return [...this.counts].map(([what, n]) => `${what} ${n}`).join(', ')
  }
}
