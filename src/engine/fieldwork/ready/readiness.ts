import type { TrainDocument } from '../../../document/schema'
import type { Coupling, Train } from '../../../mechanics/train'
import { workRecordOf, type Waiver, type WorkRecord } from '../../../document/work'
import type { AsFound } from '../../../mechanics/readings/asFound'
import type { Solver } from '../../lp/solver'
import { inSentence, listed } from '../../../language/names'
import type { ReadyAnswer, ReadyItem, ReadyWhat, SignAnswer, SoftFootAnswer } from './answer'
import { closureChecks, sweepsWithoutClosure } from '../../plan/closures'
import { closureAnswer, closureItem } from '../../plan/closureWords'
import { hotCheckItems } from './hotCheckItem'
import { mayBePiped, strainCheck } from './pipeStrain'
import { readySentence } from './readySentence'
import { signWords } from './signs'
import { softFoot } from './softFoot'
import { softFootItem } from './softFootItem'
import { softFootAnswer } from './softFootWords'
import { strainAnswer, strainItem } from './strainWords'

type Judged = Pick<ReadyItem, 'words'> & { readonly state: 'in' | 'missing' | 'bad' }

/**
 * Whether the train is ready to be moved: soft foot of every body, pipe strain where there may be
 * pipes, what the readings mean, the closure of every full sweep, and whether a hot check agrees with the growth in use;
 * each in, or waived with a name and a reason. The file alone decides: nothing here knows what day it is.
 */
export function readiness(
  document: TrainDocument,
  train: Train,
  found: readonly AsFound[],
  solver: Solver,
): ReadyAnswer {
  const record = workRecordOf(document.record) ?? {}
  const items: ReadyItem[] = []
  const add = (
    what: ReadyWhat,
    where: string,
    judged: Judged,
    more: { by?: string } = {},
  ): ReadyItem => {
    const item = waivedOr(record, { what, where, ...judged, ...more })
    items.push(item)
    return item
  }
  const soft: SoftFootAnswer[] = []
  train.bodies.forEach((body, b) => {
    if (body.feet.length === 0) return
    const judged = softFoot(train, body, solver)
    const { state } = add('soft foot', body.id, softFootItem(train, body, judged))
    if (state === 'bad') soft.push(softFootAnswer(train, b, judged))
  })
  const strain = train.couplings.flatMap((coupling, c) => {
    const given = document.couplings[c]
    if (!given) return []
    const check = strainCheck(train, given)
    if (check.flanges.length === 0 && !mayBePiped(train, coupling)) return []
    add('pipe strain', coupling.id, strainItem(train, coupling, check))
    return [strainAnswer(train, check)]
  })
  const signs = train.couplings.flatMap((coupling, c) => {
    const line = found[c]?.line
    if (!line) throw new RangeError(`coupling ${coupling.id} was not reduced`)
    const answer = signAnswer(train, coupling, line, record)
    add(
      'signs',
      coupling.id,
      signItem(coupling, answer),
      answer.by === undefined ? {} : { by: answer.by },
    )
    return [answer]
  })
  const closure = train.couplings.flatMap((coupling) => {
    const checks = closureChecks(train, coupling)
    const judged = closureItem(train, coupling, checks, sweepsWithoutClosure(coupling))
    if (judged) add('closure', coupling.id, judged)
    return checks.map((check) => closureAnswer(train, coupling, check))
  })
  for (const { check, ...judged } of hotCheckItems(document, train)) add('hot check', check, judged)
  const ready = items.every(({ state }) => state === 'in' || state === 'waived')
  const first = items.filter(({ what, state }) => what === 'soft foot' && state === 'bad')
  return {
    ready,
    provisional: first.length > 0,
    sentence: readySentence(train, items),
    provisionalSentence: provisionalWords(train, first),
    items,
    softFoot: soft,
    strain,
    closure,
    signs,
  }
}

/** A waiver stands only with a name and a reason; what is in needs none. */
function waivedOr(record: WorkRecord, item: ReadyItem): ReadyItem {
  if (item.state === 'in') return item
  const stands = ({ what, where, by, why }: Waiver) =>
    what === item.what &&
    (where === undefined || where === item.where) &&
    by.trim() !== '' &&
    why.trim() !== ''
  const waiver = record.waivers?.find(stands)
  return waiver ? { ...item, state: 'waived', by: waiver.by, why: waiver.why } : item
}

function signAnswer(
  train: Train,
  coupling: Coupling,
  line: AsFound['line'],
  record: WorkRecord,
): SignAnswer {
  const { says, sets, picture } = signWords(train, coupling, line)
  const checks = (record.signs ?? []).filter((check) => check.coupling === coupling.id)
  const same = checks.find((check) => check.says === says)
  const before = same ? undefined : checks.at(-1)?.says
  return {
    coupling: coupling.id,
    says,
    sets: sets.map((set) => ({ ...set })),
    picture,
    confirmed: same !== undefined,
    ...(same?.by !== undefined && { by: same.by }),
    ...(before !== undefined && { before }),
  }
}

function signItem(coupling: Coupling, { confirmed, says, before }: SignAnswer): Judged {
  if (confirmed) return { state: 'in', words: `${coupling.name}: ${says}` }
  const asks = `${coupling.name}: nobody has confirmed what the readings mean. ${says}`
  return {
    state: 'missing',
    words: before === undefined ? asks : `${asks} Confirmed before was: ${before}`,
  }
}

function provisionalWords(train: Train, items: readonly ReadyItem[]): string {
  if (items.length === 0) return ''
  const names = items.map(({ where }) =>
    inSentence(train.bodies.find(({ id }) => id === where)?.name ?? where),
  )
  return `Every figure of this plan is provisional: making the feet of ${listed(names)} plane moves its shaft. Do that first, then read the couplings anew.`
}
