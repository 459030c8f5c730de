import type { Motion } from '../../mechanics/motion'
import { judgedStates } from '../../mechanics/engaged'
import type { Train } from '../../mechanics/train'
import type { ErrorGroup } from '../../mechanics/uncertainty/errorSource'
import { errorsAt } from '../../mechanics/uncertainty/judged'
import type { BuyAnswer, SureAnswer, SureCoupling } from './answer'
import { assumedOf } from './assumed'
import { boltChance } from './bolts'
import type { ChanceStudy, GoodDraws, JudgedPlan } from './chanceStudy'
import { chanceOf } from './interval'
import { judgedValues } from './judgedValues'
import { shareBands } from './shareBands'
import { chanceHangs } from './withoutGroups'

/**
 * How sure a plan is and what that hangs on.
 * @param motions own motions of the bodies; undefined where there is no plan
 * @param closer the plan of best chance along the trade-off, and what it costs more than this one
 */
export function sureAnswer(
  study: ChanceStudy,
  motions?: readonly Motion[],
  closer?: Pick<BuyAnswer, 'exact' | 'cost'>,
): SureAnswer {
  const { train, draws } = study
  const assumed = assumedOf(train, motions ?? [])
  if (!motions) return { ...sureOfPlan(study), assumed }
  const plan = study.judged(motions)
  const hangs = chanceHangs(study, plan)
  const bands = shareBands(study, plan)
  const sure = sureOfPlan(study, motions)
  const buys = hangs.without.flatMap(({ group, exact, halved }): BuyAnswer[] => {
    const named = buyOf(train, group)
    return named ? [{ ...named, exact: exact / draws, halved: halved / draws }] : []
  })
  if (closer) buys.push({ what: 'a closer plan', where: '', ...closer })
  return {
    ...sure,
    couplings: sure.couplings.map((one) => {
      const c = train.couplings.findIndex(({ id }) => id === one.coupling)
      const band = bands[c]?.[train.states.findIndex(({ id }) => id === one.state)]
      return { ...one, ...(band && { band }) }
    }),
    half: hangs.half / draws,
    double: hangs.double / draws,
    buys: buys.sort((a, b) => b.exact - a.exact),
    assumed,
  }
}

/** The chances of a plan alone: without what they hang on and what was assumed. */
export function sureOfPlan(study: ChanceStudy, motions?: readonly Motion[]): SureAnswer {
  const { train, draws, seed } = study
  const asFound = chanceOf(study.asFound().all, draws)
  if (!motions) return { draws, seed, asFound, couplings: [] }
  const plan = study.judged(motions)
  const good = study.good(plan)
  const bolts = boltChance(train, motions, draws, seed)
  return {
    draws,
    seed,
    all: chanceOf(good.all, draws),
    reread: chanceOf(good.reread, draws),
    asFound,
    couplings: couplingsOf(study, plan, good),
    ...(bolts && { bolts }),
  }
}

/** A coupling alone in a state, and what its checks are worth: worked out, not sampled. */
function couplingsOf(study: ChanceStudy, plan: JudgedPlan, good: GoodDraws): SureCoupling[] {
  const { train, draws } = study
  const sources = [...study.standingSources, ...plan.sources]
  return train.couplings.flatMap((coupling, c) =>
    judgedStates(train, coupling).map(({ state, s }): SureCoupling => {
      const errors = errorsAt(sources, c, s)
      const u = new Map<string, SureCoupling['u'][number]>()
      for (const { what, way, of } of judgedValues(coupling)) {
        const row = u.get(what) ?? { what }
        u.set(what, { ...row, [way]: Math.hypot(...errors.map(of)) })
      }
      return {
        coupling: coupling.id,
        state: state.id,
        chance: (good.each[c]?.[s] ?? 0) / draws,
        u: [...u.values()] as SureCoupling['u'],
      }
    }),
  )
}

/** What a group of errors is called where it could be bought better; the gap as found is not among them. */
function buyOf(train: Train, group: ErrorGroup): Pick<BuyAnswer, 'what' | 'where'> | undefined {
  switch (group.kind) {
    case 'readings':
    case 'brackets':
      return { what: group.kind, where: train.couplings[group.coupling]?.id ?? '' }
    case 'growth':
      return { what: 'growth', where: train.machines[group.machine]?.id ?? '' }
    case 'survey':
      return { what: 'survey', where: train.surveys[group.survey]?.id ?? '' }
    case 'work':
      return { what: 'work', where: '' }
    case 'places':
      return { what: 'places of feet', where: '' }
    case 'gap':
      return undefined
  }
}
