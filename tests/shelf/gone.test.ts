// @vitest-environment happy-dom
import { createPinia, setActivePinia } from 'pinia'
import { beforeEach, expect, test, vi } from 'vitest'
import { newTrain } from '../../src/document/edits/newTrain'
import type * as database from '../../src/app/shelf/database'
import { Shelf } from '../../src/app/shelf/shelf'
import { useJob } from '../../src/app/stores/job'
import { useShelf } from '../../src/app/stores/shelf'

// A database that is deleted under the page: the connection tells, and here the test does.

const connection = vi.hoisted((): { gone: () => void } => ({ gone: () => undefined }))
vi.mock('../../src/app/shelf/database', async (original) => ({
  ...(await original<typeof database>()),
  openDatabase: (gone: () => void) => {
    connection.gone = gone
    return Promise.resolve({ put: () => Promise.resolve(), getAll: () => Promise.resolve([]) })
  },
}))

/** A planner that answers nothing: no plan is wanted here. */
class Silent extends EventTarget {
  postMessage(): void {
    // nobody listens
  }
}

beforeEach(() => {
  vi.stubGlobal('Worker', Silent)
  Object.defineProperty(navigator, 'locks', {
    configurable: true,
    value: {
      request: (_: string, held: () => unknown) => Promise.resolve(held()),
      query: () => Promise.resolve({ held: [] }),
    },
  })
  setActivePinia(createPinia())
})

test('what was kept in a database that is gone is called kept no more, and is kept again', async () => {
  const written: string[] = []
  let refuse = false
  vi.spyOn(Shelf.prototype, 'load').mockResolvedValue(undefined)
  vi.spyOn(Shelf.prototype, 'keep').mockImplementation((_, { text }, base) => {
    if (refuse) return Promise.reject(new DOMException('', 'QuotaExceededError'))
    written.push(text)
    return Promise.resolve({ kept: true, revision: base + 1 })
  })
  const [shelf, job] = [useShelf(), useJob()]
  void job.adopt({ document: newTrain(), entries: {}, name: 'x' })
  void job.restore({ document: { ...newTrain(), name: 'typed' }, entries: {} }, 'typed')
  await vi.waitUntil(() => shelf.state.kind === 'kept')
  const before = written.length
  refuse = true
  connection.gone()
  expect(shelf.state.kind).toBe('not yet kept')
  await vi.waitUntil(() => shelf.state.kind === 'cannot be kept')
  refuse = false
  await shelf.retry()
  expect(shelf.state.kind).toBe('kept')
  expect(written.length).toBe(before + 1)
  expect(written.at(-1)).toContain('typed')
})
