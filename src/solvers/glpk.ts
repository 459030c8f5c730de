import { tol } from '../mechanics/tolerances'
import type { GLPK as Glpk, LP, Result } from 'glpk.js/node'
import { quietGlpk } from './quietGlpk'
import { rowFactsOf, isCrossed } from './rowFacts'
import { scaledRows } from './rowScaling'
import { WarmProblems } from './warmProblems'
import type {
  LinearProgram,
  LpColumn,
  LpRow,
  MixedOutcome,
  MixedProgram,
  Optimal,
  Outcome,
  Solver,
  WarmStart,
} from '../engine/lp/solver'
import { isSound, soundnessOf } from '../engine/lp/soundness'

/**
 * GLPK 5.0 compiled to WebAssembly, behind the solver port. Synchronous: run it in a worker or under
 * Node, never on a page's main thread.
 * @param compiled its program, if it is compiled already
 * @param told is given its program where it was compiled here
 */
export async function glpkSolver(
  compiled?: WebAssembly.Module,
  told?: (module: WebAssembly.Module) => void,
): Promise<Solver> {
  let instance = await made(compiled)
  const { module } = instance
  if (module && !compiled) told?.(module)
  let spare = await made(module)
  const guarded = <Answer>(
    program: LinearProgram,
    ask: (instance: Instance) => Answer,
  ): Answer | { kind: 'stopped'; why: string } => {
    const fault = malformed(program)
    if (fault !== undefined) return { kind: 'stopped', why: fault }
    try {
      return ask(instance)
    } catch (error) {
      // After an abort an instance cannot be trusted; its spare takes over at once.
      instance = spare
      void made(module).then((fresh) => {
        spare = fresh
      })
      return { kind: 'stopped', why: `the solver aborted: ${String(error)}` }
    }
  }
  return {
    name: 'GLPK 5.0',
    solve: (program, seconds, warm) => guarded(program, (now) => run(now, program, seconds, warm)),
    solveMixed: (program, seconds) =>
      guarded(program, ({ glpk }) => runMixed(glpk, program, seconds)),
  }
}

/** An instance with the problems that stand in its memory; none where its calls are not known. */
interface Instance {
  readonly glpk: Glpk
  readonly problems: WarmProblems | undefined
  readonly module: WebAssembly.Module | undefined
}

async function made(compiled?: WebAssembly.Module): Promise<Instance> {
  const { glpk, calls, module } = await quietGlpk(compiled)
  return { glpk, module, problems: calls && new WarmProblems(calls) }
}

/**
 * Programs are asked in their dual form first, which is much faster, and goes on from the program before; then anew, then
 * as they stand. Every answer is judged on the program itself; the first sound one is taken. Where there is none the run counts as stopped.
 */
function run(
  instance: Instance,
  program: LinearProgram,
  seconds: number,
  warm: WarmStart | undefined,
): Outcome {
  const started = performance.now()
  const left = () => seconds - (performance.now() - started) / 1000
  let why = 'the solver found no answer and no reason'
  const scaled = scaledRows(program)
  for (const ask of ways(instance, scaled?.program ?? program, warm)) {
    if (left() <= 0) break
    const found = ask(Math.min(left(), Math.max(shortest, seconds / 3)))
    const outcome = found?.kind === 'optimal' && scaled ? scaled.back(found) : found
    if (outcome === undefined) continue
    if (outcome.kind !== 'optimal') return outcome
    if (isSound(soundnessOf(program, outcome))) return outcome
    why = 'no answer of the solver stood up to checking'
  }
  return { kind: 'stopped', why: left() <= 0 ? `no answer within ${seconds} s` : why }
}

/**
 * A try is given a third of the time, and at least this (s): the simplex may stall where another way
 * does not. Sound tries take milliseconds, so that a busy machine does not choose another way, and
 * with it another of several equal answers.
 */
const shortest = 2

type Ask = (seconds: number) => Exclude<Outcome, { kind: 'stopped' }> | undefined

function* ways(
  { glpk, problems }: Instance,
  program: LinearProgram,
  warm: WarmStart | undefined,
): Generator<Ask> {
  if (problems) {
    const known = warm && problems.following(warm, program)
    if (known) yield (seconds) => known.solve(seconds)
    yield (seconds) => problems.fresh(warm, program).solve(seconds)
  }
  for (const presol of [true, false]) yield (seconds) => ask(glpk, program, seconds, presol)
}

/**
 * One call. With presolve GLPK scales and is the more accurate, but cannot tell infeasible from
 * unbounded or from out of time; only without it are those two believed.
 */
function ask(
  glpk: Glpk,
  program: LinearProgram,
  seconds: number,
  presol: boolean,
): ReturnType<Ask> {
  const answer = presol
    ? glpk.solve(written(glpk, program), { msglev: glpk.GLP_MSG_OFF, presol, tmlim: seconds })
    : unlessStalled(glpk, program, seconds)
  if (!answer) return undefined
  switch (answer.result.status) {
    case glpk.GLP_OPT:
      return optimal(answer, program)
    case glpk.GLP_NOFEAS:
      return presol ? undefined : { kind: 'infeasible' }
    case glpk.GLP_UNBND:
      return presol ? undefined : { kind: 'unbounded' }
  }
  return undefined
}

/** Steps of the simplex allowed for each row of a program, as large as its basis is: usual ones take one at most ... */
const stepsEach = 3
/** ... and the smallest ones some ten in all. */
const leastSteps = 200

/** Thrown out of the solver when it has taken more steps than any program that it does not stall on. */
class Stalled extends Error {}

/**
 * One call without presolve, ended after so many steps of the simplex: where it goes round in circles another way does
 * not, and counting steps ends it at the same place on every machine.
 * @returns undefined where it was ended
 */
function unlessStalled(glpk: Glpk, program: LinearProgram, seconds: number): Result | undefined {
  const { rows } = program
  const final = new Set<number>([
    ...[glpk.GLP_OPT, glpk.GLP_NOFEAS, glpk.GLP_UNBND, glpk.GLP_UNDEF],
  ])
  const cb = {
    each: leastSteps + stepsEach * rows.length,
    // the package tells the inner part of a result, though its types say the whole
    call: (told: unknown) => {
      if (!final.has((told as Result['result']).status)) throw new Stalled()
    },
  }
  try {
    return glpk.solve(written(glpk, program), {
      msglev: glpk.GLP_MSG_OFF,
      presol: false,
      tmlim: seconds,
      cb,
    })
  } catch (error) {
    if (error instanceof Stalled) return undefined
    throw error
  }
}

function optimal(answer: Result, program: LinearProgram): Optimal {
  const { vars, dual, z } = answer.result
  return {
    kind: 'optimal',
    objective: z,
    columns: program.columns.map((_, j) => vars[columnName(j)] ?? 0),
    duals: program.rows.map((_, i) => dual?.[rowName(i)] ?? 0),
  }
}

/** How far a binary may lie from 0 or 1, and a row be passed; looser than a linear program's. */
const mixedSlack = { binary: tol.mixedBinary, violation: tol.mixedPassed }

/** Binaries are only taken with presolve: without it the search has no first basis to start from. */
function runMixed(glpk: Glpk, program: MixedProgram, seconds: number): MixedOutcome {
  const binary = new Set(program.binaries)
  const bounded: LinearProgram = {
    ...program,
    columns: program.columns.map((column, j) => (binary.has(j) ? { lower: 0, upper: 1 } : column)),
  }
  const answer: Result = glpk.solve(
    { ...written(glpk, bounded), binaries: program.binaries.map(columnName) },
    { msglev: glpk.GLP_MSG_OFF, presol: true, tmlim: seconds },
  )
  const { status, vars, z } = answer.result
  if (status !== glpk.GLP_OPT && status !== glpk.GLP_FEAS)
    return { kind: 'stopped', why: 'the solver found no choice' }
  const columns = program.columns.map((_, j) => vars[columnName(j)] ?? NaN)
  const whole = program.binaries.every((j) => {
    const value = columns[j] ?? NaN
    return Math.abs(value - Math.round(value)) <= mixedSlack.binary
  })
  const { violation } = soundnessOf(bounded, { kind: 'optimal', objective: z, columns, duals: [] })
  if (!whole || !(violation <= mixedSlack.violation))
    return { kind: 'stopped', why: 'no answer of the solver stood up to checking' }
  return { kind: status === glpk.GLP_OPT ? 'best' : 'found', objective: z, columns }
}

function written(glpk: Glpk, program: LinearProgram): LP {
  const bound = ({ lower, upper }: LpColumn | LpRow) => {
    const [low, high] = [Number.isFinite(lower), Number.isFinite(upper)]
    const type =
      low && high
        ? lower === upper
          ? glpk.GLP_FX
          : glpk.GLP_DB
        : low
          ? glpk.GLP_LO
          : high
            ? glpk.GLP_UP
            : glpk.GLP_FR
    return { type, lb: low ? lower : 0, ub: high ? upper : 0 }
  }
  return {
    name: 'train',
    objective: {
      direction: glpk.GLP_MIN,
      name: 'cost',
      vars: program.objective.map((coef, j) => ({ name: columnName(j), coef })),
    },
    subjectTo: program.rows.map((row, i) => {
      const vars = row.terms.map(([j, coef]) => ({ name: columnName(j), coef }))
      return { name: rowName(i), bnds: bound(row), vars }
    }),
    bounds: program.columns.map((column, j) => ({ name: columnName(j), ...bound(column) })),
  }
}

/** Names by number, each made once: a program is asked in hundreds of forms a second. */
const numbered = (letter: string) => {
  const names: string[] = []
  return (n: number): string => (names[n] ??= `${letter}${n}`)
}
const columnName = numbered('x')
const rowName = numbered('r')

/** What would make the solver abort or answer nonsense; undefined when all is well. */
function malformed(program: LinearProgram): string | undefined {
  const column = program.columns.findIndex(isCrossed)
  if (column >= 0) return `column ${column} has bounds that no number fulfils`
  const objective = program.objective.findIndex((c) => !Number.isFinite(c))
  if (objective >= 0) return `column ${objective} has no finite cost`
  const row = program.rows.findIndex((r) => {
    const { sound, last } = rowFactsOf(r)
    return !sound || last >= program.columns.length
  })
  return row >= 0 ? `row ${row} has bounds or coefficients that are no numbers` : undefined
}
