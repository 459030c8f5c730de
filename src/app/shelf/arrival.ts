import type { TrainDocument } from '../../document/schema'
import { damageOf } from './damaged'
import { differences } from './difference'
import { labelOf } from './label'
import type { Note } from './note'
import { contentOf } from '../../document/contentPrint'
import { called } from './records'
import type { Session } from './session'
import type { Known } from './shelf'
import { dayOf } from './times'

/** A file that was read and is sound. */
export interface Arriving {
  readonly file: string
  /** When the file was last written (ms since 1970). */
  readonly written: number
  readonly document: TrainDocument
}

/**
 * Puts a file on the sheet and on the shelf. One whose contents are there already opens that job; one
 * whose job is there with other contents becomes a job beside it, and the note says what differs.
 */
export async function takeFile(session: Session, arriving: Arriving): Promise<Note | undefined> {
  const { file, document, written } = arriving
  const text = JSON.stringify(document)
  const what = `opened ${file}`
  const sheet = { document, entries: {} }
  await session.keeper.flush()
  // without a shelf a file can still be looked at and worked on
  const known = await session.shelf.known(labelOf(document).match, text).catch(() => [])
  const best = known.find(({ head }) => damageOf(head.text) === undefined)
  if (!best) {
    await session.openNew(sheet, file, what)
    return undefined
  }
  if (contentOf(best.head.text) === contentOf(text)) {
    await session.open(best.job.id)
    const title = `${called(best.job)} is on the shelf with the same contents: that job was opened`
    return { key: 'file', title }
  }
  await session.openNew(sheet, file, what, `file of ${dayOf(written)}`)
  return meeting(session, arriving, best)
}

function meeting(session: Session, arriving: Arriving, { job, head, version }: Known): Note {
  const { file, document, written } = arriving
  const name = called(job)
  const apart = session.job
  const now = Date.now()
  return {
    key: 'file',
    title: `${name} is on the shelf with other contents; both are kept`,
    says: [
      `On the shelf: changed ${dayOf(head.when, now)} (${head.what}).`,
      `${file}: written ${dayOf(written, now)}; it is on the sheet now, as a job of its own.`,
      ...(version
        ? [`The file is what that job was ${dayOf(version.when, now)}, after "${version.what}".`]
        : []),
    ],
    differs: {
      before: 'on the shelf',
      after: 'in the file',
      places: differences(JSON.parse(head.text), document),
    },
    acts: [
      { label: 'Open the one on the shelf', run: () => session.open(job.id) },
      {
        label: 'Make the file its newest version',
        run: async () => {
          if (!(await session.open(job.id))) return
          session.takeOver({ document, entries: {} }, `taken from ${file}`)
          if ((await session.keeper.flush()) && apart !== undefined && apart !== job.id)
            await session.shelf.remove(apart, Date.now())
        },
      },
    ],
  }
}
