import { until } from '@vueuse/core'
import { defineStore } from 'pinia'
import { computed, ref } from 'vue'
import { withValue } from '../../document/place'
import { actualMotion } from '../../engine/fieldwork/loop/actual'
import {
  compareReadings,
  type Comparison,
  type NewReadings,
} from '../../engine/fieldwork/loop/compare'
import { nextRound, verdictOf } from '../../engine/fieldwork/loop/doubt'
import {
  asFoundPage,
  recordAsLeft,
  nothingMovedPage,
  stepPage,
} from '../../engine/fieldwork/loop/pages'
import { addPage, verifyRecord, type PageDraft } from '../../engine/fieldwork/loop/record'
import { acceptanceMissing, openItems } from '../../engine/fieldwork/loop/acceptance'
import { recordJson, recordText } from '../../text/recordText'
import { recordFactsOf } from '../../document/work'
import {
  blankOf,
  newReadings,
  standingReadings,
} from '../../engine/fieldwork/loop/standingReadings'
import { standingGaps } from '../../engine/fieldwork/loop/typedGaps'
import { standNow } from '../../engine/fieldwork/loop/standNow'
import { foundLines } from '../../mechanics/uncertainty/foundLines'
import { expectedAt } from '../../engine/fieldwork/steps/judge'
import { asFoundJson } from '../../json/planJson'
import { comparisonJson } from '../../json/comparisonJson'
import type { ExpectedAnswer } from '../../engine/plan/answer'
import { useJob } from './job'
import { usePlan } from './plan'
import { useWork } from './work'

/** So long (ms) a page waits for what is worked out of the train as it stands on the sheet. */
const patience = 20_000

/** Closing the loop: reading again, what the difference means, planning from where the machines stand, and the record. */
export const useLoop = defineStore('loop', () => {
  const job = useJob()
  const plan = usePlan()
  const work = useWork()
  /** Why nothing was written down: a sentence, then what is open, a line each. */
  const says = ref<readonly string[]>([])
  /** True until the hand has been put on the first of the readings that were laid out. */
  const justLaid = ref(false)

  const train = computed(() => plan.train)
  const found = computed(() => (train.value ? foundLines(train.value) : []))
  const done = computed(() => (work.record.work ?? []).filter((entry) => entry.done))
  /** What was really done so far, by foot. */
  const actuals = computed(() =>
    done.value.flatMap(({ body, foot, shim, side, axial }) =>
      foot === undefined
        ? []
        : [
            {
              body,
              foot,
              ...(shim !== undefined && { shim }),
              ...(side !== undefined && { side }),
              ...(axial !== undefined && { axial }),
            },
          ],
    ),
  )
  const motions = computed(() => {
    const now = train.value
    return now?.bodies.map((body) => actualMotion(now, body, actuals.value)) ?? []
  })
  /** What every set in use should show with the machines where they now stand. */
  const expected = computed<readonly ExpectedAnswer[]>(() => {
    const now = train.value
    if (!now) return []
    return expectedAt(
      now,
      found.value,
      motions.value,
      now.couplings.map((_, c) => c),
    ).filter(
      ({ coupling, set }) =>
        now.couplings.find(({ id }) => id === coupling)?.found[set]?.used === true,
    )
  })
  const again = computed(() => work.record.again ?? [])
  const gaps = computed(() => work.record.gaps ?? [])
  /** What of it still says how the train stands, and what was read before moves that came later. */
  const standing = computed(() =>
    train.value
      ? standingReadings(
          train.value,
          work.work?.steps?.steps ?? [],
          work.record.work ?? [],
          again.value,
        )
      : { counting: [], passed: [] },
  )
  /** Gaps between shaft ends that still say how the train stands, by coupling. */
  const standsApart = computed(() =>
    train.value
      ? standingGaps(train.value, work.work?.steps?.steps ?? [], work.record.work ?? [], gaps.value)
      : {},
  )
  /** Sets that were read again, whole. */
  const measured = computed<readonly NewReadings[]>(() =>
    standing.value.counting.flatMap(({ entry }) => newReadings(entry)),
  )
  /** Sets that nobody has laid out to be read again. */
  const unlaid = computed(() =>
    expected.value.filter(
      (one) =>
        !standing.value.counting.some(
          ({ entry }) => entry.coupling === one.coupling && entry.set === one.set,
        ),
    ),
  )
  const comparison = computed<Comparison | undefined>(() =>
    train.value && measured.value.length > 0
      ? compareReadings(train.value, found.value, motions.value, measured.value)
      : undefined,
  )
  const pages = computed(() => work.record.pages ?? [])
  const verified = computed(() => verifyRecord(pages.value))
  const verdict = computed(() => (train.value ? verdictOf(train.value, found.value) : undefined))
  /** How to go on after a round: at what share the next one is worth planning. */
  const next = computed(() => {
    const { drawing } = plan
    const rounds = pages.value.filter(({ kind }) => kind === 'step').length
    return drawing && rounds > 0
      ? nextRound(drawing.train, found.value, drawing.answer.floor)
      : undefined
  })

  /** Lays out the readings to be taken again, a line for every hour that was read before. */
  async function readAgain(): Promise<void> {
    const blank = [...again.value, ...unlaid.value.map((entry) => blankOf(entry))]
    justLaid.value = true
    await job.change('began to read again', (now) => withValue(now, ['record', 'again'], blank))
  }

  async function putAway(): Promise<void> {
    await job.change('put the new readings away', (now) =>
      withValue(now, ['record', 'again'], undefined),
    )
  }

  async function write(name: string, page: PageDraft): Promise<void> {
    await job.writePages(name, addPage(pages.value, page))
  }

  const sign = (by: string) => ({ when: new Date().toISOString(), ...(by !== '' && { by }) })

  /** What was entered just before is part of a page: the plan, and for a page somebody stands for, whether work may begin. */
  async function settled(kind: 'as found' | 'as left' | 'nothing moved'): Promise<void> {
    const waits = () => !job.stale && (kind === 'as found' ? plan.working : work.old)
    await until(waits).toBe(false, { timeout: patience })
  }

  async function record(kind: 'as found' | 'as left' | 'nothing moved', by: string): Promise<void> {
    await settled(kind)
    const { document } = job
    const answer = plan.drawing?.answer
    if (!document || !answer) return
    const standing = { ...answer, asFound: asFoundJson(answer.asFound, job.units) }
    const page = {
      'as found': asFoundPage,
      'as left': recordAsLeft,
      'nothing moved': nothingMovedPage,
    }
    const facts = recordFactsOf(work.record.facts)
    const ready = work.old ? undefined : work.work?.ready
    // how a train was found is written down as it is; how it is left somebody stands for
    const open = kind === 'as found' ? [] : openItems({ ...answer, ...(ready && { ready }) })
    const missing = acceptanceMissing(open, facts)
    says.value = missing
    if (missing.length > 0) return
    const more = { open, ...(facts && { facts }) }
    await write(`wrote down: ${kind}`, page[kind](document, standing, sign(by), more))
  }

  /**
   * Writes down what was done and read, and puts the train on the sheet as it now stands: packs, bolts
   * and readings; the plan that follows starts there.
   */
  async function planFromHere(by: string): Promise<void> {
    const { document } = job
    const now = train.value
    if (!document || !now) return
    const page = stepPage(
      {
        work: work.record.work ?? [],
        read: again.value,
        gaps: gaps.value,
        steps: work.done,
        units: job.units,
      },
      comparison.value && comparisonJson(comparison.value, job.units),
      sign(by),
    )
    const softDone = (work.work?.steps?.steps ?? [])
      .filter(({ kind, id }) => kind === 'soft foot' && done.value.some(({ step }) => step === id))
      .map(({ body }) => body)
    const round = pages.value.filter(({ kind }) => kind === 'step').length + 1
    const stood = standNow(
      withValue(document, ['record', 'pages'], addPage(pages.value, page)),
      now,
      {
        actuals: actuals.value,
        readings: measured.value,
        gaps: standsApart.value,
        softDone,
        sign: sign(by),
        after: `round ${round}`,
      },
    )
    if (!stood.ok) {
      says.value = [stood.why]
      return
    }
    says.value = []
    await job.change('planned from where the machines now stand', () =>
      withValue(
        withValue(stood.document, ['record', 'again'], undefined),
        ['record', 'gaps'],
        undefined,
      ),
    )
  }

  const text = (): string => recordText(job.document?.name ?? '', pages.value)
  const json = (): string => recordJson(job.document?.name ?? '', pages.value)

  return {
    ...{
      train,
      expected,
      again,
      standing,
      standsApart,
      measured,
      unlaid,
      comparison,
      pages,
      verified,
      verdict,
      next,
      says,
    },
    ...{ justLaid, readAgain, putAway, record, planFromHere, text, json },
  }
})
