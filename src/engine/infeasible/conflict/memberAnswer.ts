import type { Train } from '../../../mechanics/train'
import type { Solver } from '../../lp/solver'
import type { ElasticLimit } from '../elastic/limit'
import type { DualWeight } from '../elastic/dualWeights'
import { aloneOf, sameEntry, type Alone } from './alone'
import { checkOf, limitsOf, type ToleranceCheck, type More } from './more'
import type { ConflictMember, Lacked } from './answer'
import { entered } from './entered'
import { memberSentence } from './limitSentence'
import { memberWords } from './limitWords'
import { missingAt } from './missing'
import { tolerancesText } from './sentence'
import type { FeasibilityCache } from './shrink'
import { toleranceRaise } from './toleranceRaise'

/** A member of a conflict as it is answered; of a coupling with what its tolerance lacks, in words. */
export interface AnsweredLimit {
  readonly answer: ConflictMember
  readonly tolerance?: { readonly text: string; readonly part: number }
}

/**
 * What a member of an irreducible set lacks in it, and what it alone could do for the whole train.
 * @param all everything that the train must respect
 */
export function memberAnswer(
  cache: FeasibilityCache,
  set: ReadonlySet<number>,
  all: ReadonlySet<number>,
  index: number,
  press: DualWeight | undefined,
  solver: Solver,
): AnsweredLimit {
  const { members, train } = cache.model
  const member = members[index]
  if (!member) throw new RangeError(`no member ${index}`)
  const words = memberWords(train, member, press)
  if (member.kind === 'held') {
    const sentence = memberSentence(train, member, words, undefined)
    return { answer: { ...words, lacks: null, alone: null, sentence } }
  }
  const alone = aloneOf(cache, all, member, solver)
  const sentence = memberSentence(train, member, words, alone)
  if (member.kind === 'coupling') {
    // entered once for all states: those of the conflict give together
    const states = [...set].filter((other) => sameEntry(members[other], member))
    const lack = toleranceRaise(cache, set, states, solver)
    const answer = { ...words, ...tolerance(train, member, press, lack, alone), sentence }
    if (lack === undefined) return { answer }
    const text = tolerancesText(train, member.coupling, lack, 'down')
    return { answer, tolerance: { text, part: lack.amount } }
  }
  const room = missingAt(cache, set, [index], solver)
  const quantity = member.kind === 'tilt' ? 'slope' : 'fine'
  return {
    answer: {
      ...words,
      lacks:
        room === undefined ? null : { amount: room + entered(train, member).already, quantity },
      alone: alone.kind === 'enough' ? { amount: alone.more.amount, quantity } : null,
      sentence,
    },
  }
}

/** Amounts of the check that presses, and every check that must give: more than was entered of each. */
function tolerance(
  train: Train,
  member: Extract<ElasticLimit, { kind: 'coupling' }>,
  press: DualWeight | undefined,
  lack: More | undefined,
  alone: Alone,
): Pick<ConflictMember, 'lacks' | 'alone' | 'checks'> {
  const limits = limitsOf(train.couplings[member.coupling])
  const more = alone.kind === 'enough' ? alone.more : undefined
  const said = (check: ToleranceCheck, by: More | undefined): Lacked | null =>
    by === undefined
      ? null
      : { amount: (limits.get(check) ?? 0) * by.amount, quantity: quantities[check] }
  const meaning = press?.most?.meaning
  const pressing = meaning?.fact === 'tolerance' ? checkOf(meaning.what) : undefined
  const must = more?.checks ?? lack?.checks ?? []
  const main = must.find((check) => check === pressing) ?? must[0]
  const checks = [...limits.keys()].filter(
    (check) => more?.checks?.includes(check) === true || lack?.checks?.includes(check) === true,
  )
  if (main === undefined) return { lacks: null, alone: null }
  return {
    lacks: said(main, lack),
    alone: said(main, more),
    checks: checks.map((check) => ({
      what: check,
      lacks: lack?.checks?.includes(check) === true ? said(check, lack) : null,
      alone: more?.checks?.includes(check) === true ? said(check, more) : null,
    })),
  }
}

const quantities = {
  planes: 'slope',
  angle: 'slope',
  offset: 'fine',
  gap: 'length',
  stretch: 'length',
  float: 'length',
} as const satisfies Record<ToleranceCheck, Lacked['quantity']>
