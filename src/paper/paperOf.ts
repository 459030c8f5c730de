import { paperCode } from '../document/paperCode'
import { afterWork } from '../engine/fieldwork/loop/afterWork'
import { arithmeticPage } from './arithmeticPage'
import { axialPage } from './axialBlocks'
import { asLeftPage } from './asLeftPage'
import { assumptionsPage } from './assumptionsPage'
import { choicesPage } from './choicesPage'
import { nextStepNumber } from './codeBlock'
import { demandsPage } from './demandsPage'
import { frontPage } from './frontPage'
import { graphPage, isShort } from './graphPage'
import { drawn, type Drawn, type PaperJob } from './job'
import { machinePages } from './machinePages'
import { hasPlates, materialsPage } from './materialsPage'
import type { Chapter, Paper, PaperSize, PrintFor } from './page'
import { paginate } from './paginate'
import { readingPages } from './readingPages'
import { checksPage, noticeOf, readyPage } from './readyPage'
import { remediesPage } from './remediesPage'
import { revisionOf } from './revision'
import { shiftPage } from './shiftPage'

export interface PaperSettings {
  readonly size: PaperSize
  readonly print: PrintFor
  /** As it is to be printed; a blank where it is left out: the engine has no clock. */
  readonly date?: string
}

/**
 * One of the prints of a work sheet as pages of data. All are made from the same job, and their revision is that of what
 * the crew's and the office's say: it names the plan, whatever is done of it.
 * @param job a train that was read and its plan; an answer without one gives no foot cards
 */
export function paperOf(job: PaperJob, { size, print, date }: PaperSettings): Paper {
  const all = drawn(job)
  const chapters = { crew: crewChapters(all), office: officeChapters(all) }
  const notice = noticeFor(job)
  return {
    size,
    print,
    train: job.train.name,
    revision: revisionOf([...chapters.crew, ...chapters.office]),
    code: paperCode(job.document, nextStepNumber(all)),
    date: date ?? 'date ____________',
    notice,
    pages: paginate(
      print === 'shift' ? [shiftPage(all)] : chapters[print],
      size,
      `${notice} ${job.train.name}`,
    ),
  }
}

/** What the job is done by, in its order: every foot, checks, plates to have at hand, each machine with its steps, readings, the lines, what is left. */
const crewChapters = (job: Drawn): Chapter[] => [
  frontPage(job, 'crew'),
  ...checksPage(job),
  ...axialPage(job),
  ...(isShort(job.train) ? [graphPage(job)] : []),
  ...(hasPlates(job) ? materialsPage(job) : []),
  ...machinePages(job),
  ...readingPages(job),
  ...(isShort(job.train) ? [] : [graphPage(job)]),
  ...(hasPlates(job) ? [] : materialsPage(job)),
  ...asLeftPage(job),
]

/** What the plan rests on: what is asked, what else could be chosen, the sums by hand, everything assumed or entered. */
const officeChapters = (job: Drawn): Chapter[] => [
  frontPage(job, 'office'),
  ...remediesPage(job),
  demandsPage(job),
  ...readyPage(job),
  ...choicesPage(job),
  ...arithmeticPage(job),
  assumptionsPage(job),
]

/** No plan is none to work by, and one no longer worth its errors is not to be worked by, ready or not. */
function noticeFor({ document, train, answer }: PaperJob): string {
  if (answer.status === 'impossible') return 'NO PLAN: see page 1'
  if (answer.status !== 'planned') return ''
  return afterWork(document, train, answer)?.state === 'not worth it'
    ? 'LESS LEFT THAN ITS ERRORS: see page 1'
    : noticeOf(answer.ready)
}
