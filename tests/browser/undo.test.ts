import { createPinia, setActivePinia } from 'pinia'
import { beforeAll, expect, test, vi } from 'vitest'
import type { Drawing, Reply } from '../../src/worker/messages'
import { withValue } from '../../src/document/place'
import { addPage } from '../../src/engine/fieldwork/loop/record'
import { sentenceOf } from '../../src/engine/plan/sentence'
import { readTrain } from '../../src/document/readTrain'
import { workRecordOf } from '../../src/document/work'
import { useHand } from '../../src/app/stores/hand'
import { useJob } from '../../src/app/stores/job'
import { example, draw, exampleFiles } from '../scene/trains'
import { Random } from '../second/random'
import { editor } from './edits'
import { firstOf } from '../counts'

interface Question {
  readonly document?: unknown
  readonly text?: string
}

interface Standing {
  drawing?: Omit<Drawing, 'train'>
}
const stand = vi.hoisted((): Standing => ({}))

// The page's planner lives in a worker. Here the reading is the real one and so are the refusals, and
// every train that can be planned gets one plan made beforehand: what is asked is what undoing brings back.
vi.mock('../../src/app/services/planner', () => ({
  Planner: class {
    wake(): void {
      // it answers at once
    }
    ask({ document, text }: Question): Promise<Reply> {
      const read = readTrain(document ?? JSON.parse(text ?? ''))
      return Promise.resolve(
        read.ok
          ? {
              id: 1,
              kind: 'drawn' as const,
              document: read.document,
              drawing: { ...stand.drawing, train: read.train } as Drawing,
            }
          : { id: 1, kind: 'refused' as const, refused: read.refused },
      )
    }
  },
}))

const count = 200
const seed = Number(process.env['HOLDFAST_SEED'] ?? 1)

beforeAll(() => {
  setActivePinia(createPinia())
})

test.each(firstOf(exampleFiles, 3).map((file, i) => ({ file, random: new Random(seed + i) })))(
  `${count} random edits of $file undone back to the start, byte for byte, and made again`,
  async ({ file, random }) => {
    setActivePinia(createPinia())
    const { train, answer, figures } = await draw(example(file))
    stand.drawing = { answer, figures, sentence: sentenceOf(train, answer) }
    const job = useJob()
    const hand = useHand()
    await job.adopt({ document: example(file), entries: {}, name: file })
    const state = () => JSON.stringify([job.document, job.entries, job.hand ?? null])
    const start = state()
    /** What stood on the sheet after each edit that can be undone; edits that widen the last one replace it. */
    const stood = [start]
    const stands = (ahead = 0) => {
      stood[job.count + ahead] = state()
    }
    const { make, made } = editor(job, hand, random, stands)
    for (let tries = 0; job.count < count; tries++) {
      expect(tries, 'edits that change something').toBeLessThan(20 * count)
      await make()
    }
    const all = job.count
    const end = state()
    expect(end).not.toBe(start)
    for (let left = all; left > 0; left--) {
      expect(job.undoes, 'name of an edit').toMatch(/\w/)
      await job.undo()
      expect(job.count).toBe(left - 1)
      if (state() !== stood[left - 1])
        expect(state(), `after undoing edit ${left}`).toBe(stood[left - 1])
    }
    expect(state()).toBe(start)
    // untouched in memory as well: what was planned at the start is planned again
    expect(job.stale).toBe(false)
    for (let done = 1; done <= all; done++) {
      expect(job.redoes, 'name of an edit').toMatch(/\w/)
      await job.redo()
      if (state() !== stood[done])
        expect(state(), `after making edit ${done} again`).toBe(stood[done])
    }
    expect(state()).toBe(end)
    expect(job.redoes).toBe('')
    counts.push(...made)
  },
)

const counts: [string, number][] = []

test('every kind of edit was made', () => {
  const total = new Map<string, number>()
  for (const [kind, times] of counts) total.set(kind, (total.get(kind) ?? 0) + times)
  expect([...total].filter(([, times]) => times === 0)).toEqual([])
})

test('pages of the record stay, whatever is taken back or brought back', async () => {
  setActivePinia(createPinia())
  const file = exampleFiles[0] ?? ''
  const { train, answer, figures } = await draw(example(file))
  stand.drawing = { answer, figures, sentence: sentenceOf(train, answer) }
  const job = useJob()
  await job.adopt({ document: example(file), entries: {}, name: file })
  const start = { document: example(file), entries: {} }
  const name = job.document?.name
  const written = () => workRecordOf(job.document?.record)?.pages
  await job.set(['name'], 'renamed', 'renamed the job')
  const pages = addPage([], {
    kind: 'note',
    when: '2026-11-28T12:00:00Z',
    words: 'as found',
    content: {},
  })
  await job.writePages('wrote down: as found', pages)
  expect(job.lastEdit).toBe('wrote down: as found')
  expect(job.undoes).toBe('renamed the job')
  await job.undo()
  expect([job.document?.name, written()]).toEqual([name, pages])
  expect(job.undoes).toBe('')
  await job.redo()
  expect([job.document?.name, written()]).toEqual(['renamed', pages])
  await job.restore(start, 'earlier version')
  expect([job.document?.name, written()]).toEqual([name, pages])
  // a version that another page of the browser wrote more pages into brings them
  const more = addPage(pages, {
    kind: 'note',
    when: '2026-11-28T13:00:00Z',
    words: 'as left',
    content: {},
  })
  const theirs = withValue(start.document, ['record', 'pages'], more)
  await job.restore({ document: theirs, entries: {} }, 'change in another tab')
  expect(written()).toEqual(more)
  expect(written()).toHaveLength(2)
})
