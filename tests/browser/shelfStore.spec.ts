import { fileURLToPath } from 'node:url'
import { expect, test, type Page } from '@playwright/test'
import { build, type Rolldown } from 'vite'
import type * as photos from '../../src/app/shelf/photos'
import type * as store from '../../src/app/shelf/shelf'

// The storage layer by itself, in a browser's own database.

type Layer = typeof store & typeof photos
declare const layer: Layer

const folder = fileURLToPath(new URL('../../src/app/shelf/', import.meta.url))
let script = ''

// one after the other in one process, which builds the layer once
test.describe.configure({ mode: 'default' })

test.beforeAll(async () => {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    plugins: [
      {
        name: 'layer',
        resolveId: (id) => (id.endsWith('layer.ts') ? '\0layer' : undefined),
        load: (id) =>
          id === '\0layer'
            ? `export * from '${folder}shelf.ts'; export * from '${folder}photos.ts'`
            : undefined,
      },
    ],
    build: { write: false, lib: { entry: `${folder}layer.ts`, formats: ['iife'], name: 'layer' } },
  })
  const [output] = [built].flat() as Rolldown.RolldownOutput[]
  script = output?.output[0].code ?? ''
})

async function openLayer(page: Page): Promise<void> {
  await page.route('**/layer.html', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<script src="layer.js"></script>' }),
  )
  await page.route('**/layer.js', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: script }),
  )
  await page.goto('layer.html')
}

test('of two writings on top of one revision, the second is told what the first wrote', async ({
  page,
}) => {
  await openLayer(page)
  const told = await page.evaluate(async () => {
    const [one, other] = [await layer.openShelf(), await layer.openShelf()]
    const sheet = (text: string, when: number) => ({
      ...{ text, when, entries: { 'plan.share': 'x' }, what: 'typed', page: 'p' },
    })
    const first = await one.keep('job', sheet('{"name":"A"}', 1), 0)
    // both at once: the database lets one of them in
    const both = await Promise.all([
      one.keep('job', sheet('{"name":"B"}', 2), 1),
      other.keep('job', sheet('{"name":"C"}', 3), 1),
    ])
    const same = await other.keep('job', sheet('{"name":"B"}', 4), 1)
    return { first, both, same, head: (await one.load('job'))?.head }
  })
  expect(told.first).toEqual({ kept: true, revision: 1 })
  expect(told.both[0]).toEqual({ kept: true, revision: 2 })
  expect(told.both[1]).toMatchObject({ kept: false, head: { text: '{"name":"B"}', revision: 2 } })
  // what is there already needs no second writing
  expect(told.same).toEqual({ kept: true, revision: 2 })
  expect(told.head).toMatchObject({ text: '{"name":"B"}', entries: { 'plan.share': 'x' }, when: 2 })
})

test('the last 50 versions stay; typing on is one; a copy begins anew', async ({ page }) => {
  await openLayer(page)
  const told = await page.evaluate(async () => {
    const shelf = await layer.openShelf()
    for (let n = 0; n < 60; n++)
      await shelf.keep(
        'job',
        { text: `{"n":${n}}`, entries: {}, what: `edit ${n}`, when: n * 100, page: 'p' },
        n,
      )
    for (let n = 60; n < 64; n++)
      await shelf.keep(
        'job',
        { text: `{"n":${n}}`, entries: {}, what: 'typed', when: n * 100, page: 'p' },
        n,
      )
    const copy = await shelf.copy('job', 'copy', 9000)
    return {
      versions: await shelf.versions('job'),
      oldest: await shelf.version('job', 12),
      gone: await shelf.version('job', 11),
      copy: copy && (await shelf.versions(copy.id)),
    }
  })
  expect(told.versions).toHaveLength(50)
  expect(told.versions[0]).toEqual({ n: 61, what: 'typed', when: 6300 })
  expect(told.versions[1]).toEqual({ n: 60, what: 'edit 59', when: 5900 })
  expect(told.oldest?.text).toBe('{"n":11}')
  expect(told.gone).toBeUndefined()
  expect(told.copy).toEqual([{ n: 1, what: 'copied from without a name', when: 9000 }])
})

test('a job that is ended takes its versions and pictures along, others stay', async ({ page }) => {
  await openLayer(page)
  const told = await page.evaluate(async () => {
    const shelf = await layer.openShelf()
    for (const id of ['a', 'b']) {
      const sheet = { text: `{"name":"${id}"}`, entries: {}, what: 'made', when: 1, page: 'p' }
      await shelf.keep(id, sheet, 0)
      await layer.keepPhoto(shelf, id, new Blob([`picture of ${id}`]), 2)
    }
    await shelf.remove('a', 1000)
    const listed = (await shelf.list()).map(({ id }) => id)
    await shelf.clearOut(1000 + layer.clearedAfter)
    const waits = (await shelf.list('', true)).map(({ id }) => id)
    await shelf.clearOut(1001 + layer.clearedAfter)
    const pictures = await layer.photosOf(shelf, 'b')
    return {
      listed,
      waits,
      gone: (await shelf.list('', true)).length,
      ofA: [(await shelf.versions('a')).length, (await layer.photosOf(shelf, 'a')).length],
      ofB: [(await shelf.versions('b')).length, await pictures[0]?.blob.text()],
    }
  })
  expect(told).toEqual({
    listed: ['b'],
    waits: ['a'],
    gone: 0,
    ofA: [0, 0],
    ofB: [1, 'picture of b'],
  })
})

test('a writing that fails half way leaves nothing behind', async ({ page }) => {
  await openLayer(page)
  const told = await page.evaluate(async () => {
    const shelf = await layer.openShelf()
    const sheet = (text: string) => ({ text, entries: {}, what: 'typed', when: 1, page: 'p' })
    await shelf.keep('job', sheet('{"name":"A"}'), 0)
    const put = Reflect.get<IDBObjectStore, 'put'>(IDBObjectStore.prototype, 'put')
    let puts = 0
    IDBObjectStore.prototype.put = function (...given) {
      if (++puts === 2) throw new DOMException('full', 'QuotaExceededError')
      return put.apply(this, given)
    }
    const failed = await shelf.keep('job', { ...sheet('{"name":"B"}'), what: 'other' }, 1).then(
      () => 'kept',
      (error: unknown) => (error as Error).name,
    )
    IDBObjectStore.prototype.put = put
    return {
      failed,
      head: (await shelf.load('job'))?.head.text,
      versions: (await shelf.versions('job')).length,
    }
  })
  expect(told).toEqual({ failed: 'QuotaExceededError', head: '{"name":"A"}', versions: 1 })
})
