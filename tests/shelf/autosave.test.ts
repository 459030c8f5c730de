import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { again, Autosaver, delay, slow, type KeptState } from '../../src/app/shelf/autosave'

interface Writing {
  readonly key: string
  readonly item: string
  readonly end: () => void
  readonly fail: (error: unknown) => void
}

/** A saver whose writings end when the test says so. */
function saver() {
  const writings: Writing[] = []
  const states: KeptState[] = []
  const made = new Autosaver<string>(
    (key, item) =>
      new Promise((end, fail) => {
        writings.push({ key, item, end, fail })
      }),
    (state) => states.push(state),
  )
  const last = () => states.at(-1)
  const writing = (n: number): Writing => {
    const one = writings[n]
    if (!one) throw new Error(`there were ${writings.length} writings`)
    return one
  }
  return { saver: made, states, last, writings, writing }
}

const settle = () => vi.advanceTimersByTimeAsync(0)
const full = () => new DOMException('', 'QuotaExceededError')

beforeEach(() => {
  vi.useFakeTimers({ now: 1_000_000 })
})
afterEach(() => {
  vi.useRealTimers()
})

test('nothing is called kept before its writing has ended', async () => {
  const { saver: one, last, writings, writing } = saver()
  one.changed('job', 'a')
  expect(last()).toEqual({ kind: 'not yet kept' })
  await vi.advanceTimersByTimeAsync(delay - 1)
  expect(writings).toHaveLength(0)
  await vi.advanceTimersByTimeAsync(1)
  expect(writing(0)).toMatchObject({ key: 'job', item: 'a' })
  await vi.advanceTimersByTimeAsync(150)
  expect(last()).toEqual({ kind: 'not yet kept' })
  writing(0).end()
  await settle()
  expect(last()).toEqual({ kind: 'kept', when: 1_000_000 + delay + 150 })
  expect(one.idle).toBe(true)
})

test('changes are written together, however long they keep coming', async () => {
  const { saver: one, writings } = saver()
  for (let at = 0; at < delay; at += 10) {
    one.changed('job', `typed ${at}`)
    await vi.advanceTimersByTimeAsync(10)
  }
  // the wait counts from the first change: it is not put off by those that follow
  expect(writings.map(({ item }) => item)).toEqual([`typed ${delay - 10}`])
})

test('a change during a writing is not kept by it, and is written next', async () => {
  const { saver: one, states, last, writing, writings } = saver()
  one.changed('job', 'a')
  await vi.advanceTimersByTimeAsync(delay)
  one.changed('job', 'ab')
  writing(0).end()
  await settle()
  expect(states.filter(({ kind }) => kind === 'kept')).toEqual([])
  expect(one.unkept('job')).toBe('ab')
  await vi.advanceTimersByTimeAsync(delay)
  expect(writings).toHaveLength(2)
  writing(1).end()
  await settle()
  expect(writing(1).item).toBe('ab')
  expect(last()?.kind).toBe('kept')
})

test('a full disk is said with its reason until a writing comes through', async () => {
  const { saver: one, last, writing, writings } = saver()
  one.changed('job', 'a')
  await vi.advanceTimersByTimeAsync(delay)
  writing(0).fail(full())
  await settle()
  expect(last()?.kind).toBe('cannot be kept')
  expect(JSON.stringify(last())).toContain('the disk is full')
  // what is typed meanwhile stays in memory, and does not make it look better
  one.changed('job', 'ab')
  expect(last()?.kind).toBe('cannot be kept')
  await vi.advanceTimersByTimeAsync(again)
  expect(writings).toHaveLength(2)
  expect(writing(1).item).toBe('ab')
  writing(1).end()
  await settle()
  expect(last()?.kind).toBe('kept')
})

test('a disk that does not answer is called out, and may still come through', async () => {
  const { saver: one, last, writing } = saver()
  one.changed('job', 'a')
  await vi.advanceTimersByTimeAsync(delay + slow)
  expect(last()).toEqual({ kind: 'cannot be kept', reason: 'the disk does not answer' })
  writing(0).end()
  await settle()
  expect(last()?.kind).toBe('kept')
})

test('a flush writes at once, waits for what is under way, and says whether all is kept', async () => {
  const { saver: one, writing } = saver()
  one.changed('job', 'a')
  await vi.advanceTimersByTimeAsync(delay)
  one.changed('job', 'ab')
  one.changed('other', 'x')
  const flushed = one.flush()
  writing(0).end()
  await settle()
  writing(1).end()
  await settle()
  writing(2).end()
  expect(await flushed).toBe(true)
  expect([writing(1).item, writing(2).item]).toEqual(['ab', 'x'])
})

test('a flush that fails says so and gives nothing up', async () => {
  const { saver: one, writing, last } = saver()
  one.changed('job', 'a')
  const flushed = one.flush()
  await settle()
  writing(0).fail(full())
  expect(await flushed).toBe(false)
  expect(one.unkept('job')).toBe('a')
  await vi.advanceTimersByTimeAsync(again)
  writing(1).end()
  await settle()
  expect(last()?.kind).toBe('kept')
})
