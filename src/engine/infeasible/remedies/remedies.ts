import { tidy } from '../../../language/tidy'
import type { TrainDocument } from '../../../document/schema'
import type { Cut } from '../../lp/program'
import type { Solver } from '../../lp/solver'
import { allLimits } from '../elastic/elasticModel'
import type { Contradiction } from '../conflict/conflict'
import { amountsOf } from './amounts'
import type { HoldsTried, Remedy } from './answer'
import { both, idle, touches, type Candidate, type RemedyContext } from './candidate'
import { catalogue } from './catalogue'
import { changed, type FieldChange } from './change'
import { guardChoice } from './guardChoice'
import { dowelChoices, holdChoices } from './holdChoices'
import { intervalsChoice, shareChoice, tiltChoices } from './marginChoices'
import { packChoices } from './packs'
import { raiseChoices } from './raise'
import { remedyOf } from './remedyWords'
import { restraintChoices } from './restraints'
import { roomChoices } from './rooms'
import { couplingChoices, stateChoices } from './tolerances'
import { trialOf } from './trial'

/** Pairs are looked for while fewer remedies than this work by themselves. */
const enoughSingles = 2
/** Pairs that work after which no more are looked for, and pairs tried at most. */
const pairs = { enough: 3, tried: 40 }
/** Ways of raising that are told. */
const mostRaises = 2

/**
 * What would make an impossible train possible: each remedy a change to its document, with the least
 * amounts in whole steps, solved and proven from the changed document. Other choices of held bodies are tried before
 * anything is machined. What was tried so far can be told at any time.
 */
export class RemedySearch {
  private readonly context: RemedyContext
  private readonly contradiction: Contradiction
  private readonly floor: number | null
  private readonly solver: Solver
  private readonly margins: Remedy[] = []
  private readonly ofHolds: Remedy[] = []
  private readonly others: Remedy[] = []
  private readonly inPairs: Remedy[] = []
  private triedHolds = 0

  /** @param floor the smallest worst share that the train reaches as it is */
  constructor(
    document: TrainDocument,
    contradiction: Contradiction,
    floor: number | null,
    solver: Solver,
  ) {
    const { model } = contradiction.cache
    const conflicts = contradiction.sets.map(({ members }) => members)
    this.context = { document, train: model.train, model, conflicts }
    this.contradiction = contradiction
    this.floor = floor
    this.solver = solver
  }

  /** Tries every candidate, and pairs where few work alone. */
  run(): this {
    const { context, floor, solver } = this
    const { conflicts } = context
    const { cache } = this.contradiction
    const known = cache.reach(allLimits(cache.model))
    const cuts = known.kind === 'stopped' ? [] : known.cuts
    const holds = holdChoices(context)
    const margins = [
      shareChoice(context, floor),
      guardChoice(context, solver),
      intervalsChoice(context),
    ]
    const others = [
      ...stateChoices(context),
      ...roomChoices(context),
      ...packChoices(context),
      ...raiseChoices(context),
      ...dowelChoices(context),
      ...couplingChoices(context),
      ...tiltChoices(context),
      ...restraintChoices(context),
    ]
    const helps = (candidate: Candidate) => conflicts.every((set) => touches(candidate, set))
    const tried = (candidate: Candidate) => attempt(context, candidate, cuts, solver, true)
    const inPair = (candidate: Candidate) => attempt(context, candidate, cuts, solver, false)
    for (const margin of margins) if (margin) this.margins.push(...tried(margin))
    for (const hold of holds) {
      if (helps(hold)) this.ofHolds.push(...tried(hold))
      this.triedHolds++
    }
    for (const other of others.filter(helps)) this.others.push(...tried(other))
    const working = this.singles().filter(({ solves }) => solves)
    const candidates = [...holds.filter(({ stays }) => stays.length === 0), ...others]
    if (working.length < enoughSingles)
      pairsOf(candidates, conflicts, this.singles(), inPair, this.inPairs)
    return this
  }

  /** Those that work come first, by effort; then what does not work by itself. */
  told(): { remedies: Remedy[]; holdsTried: HoldsTried } {
    const holdsTried = {
      tried: this.triedHolds,
      solve: this.ofHolds.filter(({ solves }) => solves).length,
    }
    return {
      remedies: ranked([...this.singles(), ...this.inPairs]).map((remedy) =>
        machines(remedy) ? { ...remedy, sentence: afterHolds(remedy, holdsTried) } : remedy,
      ),
      holdsTried,
    }
  }

  private singles(): Remedy[] {
    return [...this.margins, ...this.ofHolds, ...fewest(this.others)]
  }
}

/** Solves one candidate, from amounts to the proof of the changed document; none where it is idle. */
function attempt(
  context: RemedyContext,
  candidate: Candidate,
  cuts: readonly Cut[],
  solver: Solver,
  told: boolean,
): Remedy[] {
  const direct = spendsMargin(candidate) || changesWork(context, candidate)
  const needed = direct
    ? ({ kind: 'enough', values: [] } as const)
    : amountsOf(context, candidate, cuts, solver, told)
  if (needed.kind !== 'enough') {
    const best =
      needed.kind === 'not enough' && told ? bestOf(context, candidate, needed.floor, solver) : null
    return [remedyOf(context.train, candidate, [], [], { solves: false, floor: best })]
  }
  let { values }: { values: readonly number[] } = needed
  if (idle(candidate, values)) return []
  let change = changesOf(candidate, values)
  let trial = trialOf(changed(context.document, change), solver)
  if (!trial.solves && changesWork(context, candidate))
    return [remedyOf(context.train, candidate, [], [], { solves: false, floor: trial.floor })]
  if (trial.solves && candidate.refine) {
    const better = candidate.refine(values, trial.shims)
    if (better.some((value, i) => value !== values[i])) {
      const other = changesOf(candidate, better)
      const again = trialOf(changed(context.document, other), solver)
      if (again.solves) [values, change, trial] = [better, other, again]
    }
  }
  return [remedyOf(context.train, candidate, values, change, trial)]
}

/**
 * The best share that all a candidate may give reaches. A tolerance that is twice as wide halves the share that is used of
 * it, which the elastic program, where it adds to the share asked for, does not say: that file is planned itself.
 * @param elastic what the elastic program reaches
 */
function bestOf(
  context: RemedyContext,
  candidate: Candidate,
  elastic: number | undefined,
  solver: Solver,
): number | null {
  const widens = candidate.kinds.some((kind) => kind.endsWith('tolerance'))
  if (!widens) return elastic === undefined ? null : tidy(elastic)
  const most = candidate.sized.map(({ give }) => give.most)
  return trialOf(changed(context.document, changesOf(candidate, most)), solver).floor
}

/**
 * Whether a candidate with nothing to size may change which bodies are worked on, and with it what a guard keeps free:
 * the programs of the conflict know the room of the train as it is, so it is planned from its document at once.
 */
const changesWork = ({ train }: RemedyContext, candidate: Candidate): boolean =>
  train.plan.guard > 0 && candidate.sized.length === 0 && !spendsMargin(candidate)

/** More of the share, or less of what is kept free: its size is known, and no limit is widened. */
const spendsMargin = ({ kinds }: Candidate): boolean =>
  kinds.some((kind) => kind === 'share' || kind === 'guard' || kind === 'intervals')

function changesOf({ sized, fixed, changes }: Candidate, values: readonly number[]): FieldChange[] {
  return [
    ...changes,
    ...sized.flatMap((one, g) => {
      const value = values[g] ?? 0
      return value > 0 || fixed.length > 0 ? one.changes(value) : []
    }),
  ].filter(({ from, to }) => JSON.stringify(from) !== JSON.stringify(to))
}

/**
 * Pairs of candidates that touch every conflict together, the least effort first.
 * @param out where each that works is put
 */
function pairsOf(
  candidates: readonly Candidate[],
  conflicts: readonly ReadonlySet<number>[],
  singles: readonly Remedy[],
  tried: (candidate: Candidate) => readonly Remedy[],
  out: Remedy[],
): void {
  const works = new Set(
    singles.filter(({ solves }) => solves).map(({ kind, where }) => kind + where),
  )
  const alone = candidates.filter((one) => !works.has(one.kinds.join(' + ') + one.where))
  const joint = alone
    .flatMap((a, i) =>
      alone.slice(i + 1).flatMap((b) => {
        const pair = both(a, b)
        return pair && conflicts.every((set) => touches(pair, set)) ? [pair] : []
      }),
    )
    .sort((a, b) => a.effort - b.effort)
  for (const pair of joint.slice(0, pairs.tried)) {
    out.push(...tried(pair).filter(({ solves }) => solves))
    if (out.length >= pairs.enough) break
  }
}

/** Of the ways to raise that work, those that lift fewest machines by least. */
function fewest(remedies: readonly Remedy[]): Remedy[] {
  const raises = remedies.filter(({ kind }) => kind === 'raise')
  const amountOf = ({ amount }: Remedy) => tidy(amount[0]?.value ?? 0)
  const lifted = ({ where }: Remedy) => where.split(', ').length
  const best = raises
    .filter(({ solves }) => solves)
    .sort((a, b) => lifted(a) - lifted(b) || amountOf(a) - amountOf(b))
    .slice(0, mostRaises)
  return remedies.filter((remedy) => remedy.kind !== 'raise' || best.includes(remedy))
}

/** The last digits of a cost do not decide the order. */
const orderOf = ({ costWithEffort }: Remedy): number =>
  costWithEffort === null ? Number.MAX_VALUE : tidy(costWithEffort)

const ranked = (remedies: readonly Remedy[]): Remedy[] =>
  remedies
    .map((remedy, i) => ({ remedy, i }))
    .sort(
      (a, b) =>
        Number(b.remedy.solves) - Number(a.remedy.solves) ||
        a.remedy.effort - b.remedy.effort ||
        orderOf(a.remedy) - orderOf(b.remedy) ||
        a.i - b.i,
    )
    .map(({ remedy }) => remedy)

const machines = ({ kind }: Remedy): boolean =>
  Object.entries(catalogue).some(
    ([name, entry]) => entry.machining && kind.split(' + ').includes(name),
  )

function afterHolds({ sentence }: Remedy, { tried, solve }: HoldsTried): string {
  if (tried === 0) return `${sentence} No other choice of fixed machines bears on this conflict.`
  return solve > 0
    ? `${sentence} Other choices of fixed machines were tried first: ${solve} of ${tried} ${solve === 1 ? 'works' : 'work'} without it.`
    : `${sentence} Other choices of fixed machines were tried first: none of ${tried} works.`
}
