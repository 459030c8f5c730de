import type { CouplingDocument, OutageDocument, TrainDocument } from '../schema'
import { harmlessTexts } from '../harmlessTexts'
import { sealOfOutage } from '../outageSeal'
import { inEngineUnits } from '../unitConverter'
import { workRecordOf, type RecordPage } from '../work'
import { idFrom } from './stateEdits'

/** Who closes an outage, and when: texts, as people write them. */
export interface Closing {
  readonly when: string
  readonly by?: string | undefined
}

/**
 * The document with one outage more, of what its record has: as found and as left as its pages have them, words of the work
 * in between. Without pages the readings of the sheet are how it was found. Sealed, so that a later change shows.
 */
export function withOutageKept(document: TrainDocument, { when, by }: Closing): TrainDocument {
  const pages = workRecordOf(document.record)?.pages ?? []
  const first = pages.find(({ kind }) => kind === 'as found' || kind === 'nothing moved')
  const last = pages.findLast(({ kind }) => kind === 'as left' || kind === 'nothing moved')
  const found = couplingsOf(first, document) ?? document.couplings
  const left = couplingsOf(last, document)
  const work = pages.filter(({ kind }) => kind === 'step').map(({ words }) => words)
  const outages = document.outages ?? []
  const plan = first?.words
  const hotCheck = document.hotChecks?.at(-1)?.id
  const kept: OutageDocument = {
    id: idFrom(
      when,
      outages.map(({ id }) => id),
      'outage',
    ),
    when,
    ...(by !== undefined && by !== '' && { by }),
    couplings: document.couplings.map(({ id, left: start, right: end }) => {
      const [opened, closed] = [setsOf(found, id), left && setsOf(left, id)]
      return {
        coupling: id,
        planes: [start.plane, end.plane],
        ...(opened && { found: opened }),
        ...(closed && { left: closed }),
      }
    }),
    ...(plan !== undefined && { plan }),
    ...(work.length > 0 && { work: work.join('\n') }),
    ...(hotCheck !== undefined && { hotCheck }),
  }
  return withSealed(document, kept)
}

/** Readings of a page, where it was written in the units of today. */
function couplingsOf(
  page: RecordPage | undefined,
  { units }: TrainDocument,
): readonly CouplingDocument[] | undefined {
  const { job } = (page?.content ?? {}) as { job?: Partial<TrainDocument> }
  const same = job?.units?.length === units.length && job.units.fine === units.fine
  return same ? job.couplings : undefined
}

const setsOf = (couplings: readonly CouplingDocument[], id: string) => {
  const sets = couplings.find((one) => one.id === id)?.found ?? []
  return sets.length > 0 ? sets : undefined
}

/** The seal is of engine units, which the document's converter makes. */
function withSealed(document: TrainDocument, outage: OutageDocument): TrainDocument {
  const next = { ...document, outages: [...(document.outages ?? []), outage] }
  // as it will be read
  const inside = harmlessTexts(inEngineUnits(next).document).outages?.at(-1)
  const seal = inside && sealOfOutage(inside)
  return {
    ...next,
    outages: [...(document.outages ?? []), { ...outage, ...(seal !== undefined && { seal }) }],
  }
}

/** What became of the outages of another file of the same train. */
export interface Merged {
  readonly document: TrainDocument
  readonly added: readonly string[]
  /** Both files have them, word for word. */
  readonly same: readonly string[]
  /** Of one date and of other contents: both are kept. */
  readonly apart: readonly string[]
}

/**
 * The document with the outages of another file of the same train, in its own units, put in where their dates stand between
 * its own; by the dates as they are written, which sort where they are written as 2026-11-30.
 * @param other in the units of the document
 */
export function withOutagesOf(document: TrainDocument, other: TrainDocument): Merged {
  const [added, same, apart]: [string[], string[], string[]] = [[], [], []]
  const sealed = (one: TrainDocument) =>
    (inEngineUnits(one).document.outages ?? []).map((outage) => sealOfOutage({ ...outage, id: '' }))
  const known = new Set(sealed(document))
  const theirs = sealed(other)
  const all = [...(document.outages ?? [])]
  other.outages?.forEach((outage, i) => {
    if (known.has(theirs[i] ?? '')) {
      same.push(outage.when)
      return
    }
    const twin = document.outages?.some(({ when }) => when === outage.when) === true
    if (twin) apart.push(outage.when)
    else added.push(outage.when)
    const taken = all.some(({ id }) => id === outage.id)
    const id = taken
      ? idFrom(
          outage.when,
          all.map((one) => one.id),
          'outage',
        )
      : outage.id
    // another id is another content: what it was sealed as holds no more, and its seal is made anew
    const { seal, ...rest } = outage
    if (!taken) all.push(outage)
    else if (seal === undefined) all.push({ ...rest, id })
    else all.push(...(withSealed({ ...document, outages: [] }, { ...rest, id }).outages ?? []))
  })
  const sorted = all
    .map((outage, i) => ({ outage, i }))
    .sort((a, b) => compared(a.outage.when, b.outage.when) || a.i - b.i)
    .map(({ outage }) => outage)
  return {
    document: sorted.length === 0 ? document : { ...document, outages: sorted },
    added,
    same,
    apart,
  }
}

const compared = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
