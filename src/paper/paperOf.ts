import { afterWork } from '../engine/fieldwork/loop/afterWork'
import { arithmeticPage } from './arithmeticPage'
import { assumptionsPage } from './assumptionsPage'
import { choicesPage } from './choicesPage'
import { demandsPage } from './demandsPage'
import { footPages } from './footPages'
import { frontPage } from './frontPage'
import { graphPage } from './graphPage'
import { handoverPage } from './handoverPage'
import { drawn, type PaperJob } from './job'
import type { Paper, PaperSize } from './page'
import { orderPages } from './orderPages'
import { paginate } from './paginate'
import { readingPages } from './readingPages'
import { noticeOf, readyPage } from './readyPage'
import { remediesPage } from './remediesPage'
import { revisionOf } from './revision'
import { storesPage } from './storesPage'

export interface PaperSettings {
  readonly size: PaperSize
  /** As it is to be printed; a blank where it is left out: the engine has no clock. */
  readonly date?: string
}

/**
 * A whole work sheet as pages of data, in the order in which it is worked through: what is asked and
 * who signs, what is in the way, each machine's feet, readings, the lines, the arithmetic by hand,
 * other choices, stores, handover, and what it all stands on.
 * @param job a train that was read and its plan; an answer without one gives no foot cards
 */
export function paperOf(job: PaperJob, { size, date }: PaperSettings): Paper {
  const all = drawn(job)
  const chapters = [
    frontPage(all),
    ...remediesPage(all),
    demandsPage(all),
    ...readyPage(all),
    ...orderPages(all),
    ...footPages(all),
    ...readingPages(all),
    graphPage(all),
    ...arithmeticPage(all),
    ...choicesPage(all),
    ...storesPage(all),
    ...handoverPage(all),
    assumptionsPage(all),
  ]
  const pages = paginate(chapters, size)
  return {
    size,
    train: job.train.name,
    revision: revisionOf(pages),
    date: date ?? 'date ____________',
    notice: noticeFor(job),
    pages,
  }
}

/** A plan that is no longer worth its errors is not to be worked by, ready or not. */
function noticeFor({ document, train, answer }: PaperJob): string {
  if (answer.status !== 'planned') return ''
  return afterWork(document, train, answer)?.state === 'not worth it'
    ? 'LESS LEFT THAN ITS ERRORS: see page 1'
    : noticeOf(answer.ready)
}
