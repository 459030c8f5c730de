import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { again, Autosaver, dragGap, gap, slow, type KeptState } from '../../src/app/shelf/autosave'

interface Item {
  readonly text: string
  readonly when: number
}

interface Writing {
  readonly key: string
  readonly item: string
  readonly end: () => void
  readonly fail: (error: unknown) => void
}

/** A saver whose writings end when the test says so. */
function saver(dragging?: () => boolean) {
  const writings: Writing[] = []
  const states: KeptState[] = []
  const made = new Autosaver<Item>(
    (key, { text }) =>
      new Promise((end, fail) => {
        writings.push({ key, item: text, end, fail })
      }),
    (state) => states.push(state),
    dragging,
  )
  const last = () => states.at(-1)
  const writing = (n: number): Writing => {
    const one = writings[n]
    if (!one) throw new Error(`there were ${writings.length} writings`)
    return one
  }
  return { saver: made, states, last, writings, writing }
}

const typed = (text: string): Item => ({ text, when: Date.now() })
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
  one.changed('job', typed('a'))
  expect(last()).toEqual({ kind: 'not yet kept', upTo: undefined })
  // the first change is written at once
  expect(writings).toHaveLength(1)
  expect(writing(0)).toMatchObject({ key: 'job', item: 'a' })
  await vi.advanceTimersByTimeAsync(150)
  expect(last()).toEqual({ kind: 'not yet kept', upTo: undefined })
  writing(0).end()
  await settle()
  expect(last()).toEqual({ kind: 'kept', when: 1_000_000 + 150, upTo: 1_000_000 })
  expect(one.idle).toBe(true)
})

test('changes that come during a writing are written together, after a gap', async () => {
  const { saver: one, writings, writing } = saver()
  for (const text of ['a', 'ab', 'abc']) one.changed('job', typed(text))
  expect(writings.map(({ item }) => item)).toEqual(['a'])
  writing(0).end()
  await vi.advanceTimersByTimeAsync(gap - 1)
  one.changed('job', typed('abcd'))
  expect(writings).toHaveLength(1)
  // the gap counts from the writing's end: it is not put off by changes that keep coming
  await vi.advanceTimersByTimeAsync(1)
  expect(writings.map(({ item }) => item)).toEqual(['a', 'abcd'])
})

test('a change during a writing is not kept by it, and is written next', async () => {
  const { saver: one, states, last, writing, writings } = saver()
  one.changed('job', typed('a'))
  one.changed('job', typed('ab'))
  writing(0).end()
  await settle()
  expect(states.filter(({ kind }) => kind === 'kept')).toEqual([])
  // but it is said up to when all is kept
  expect(last()).toEqual({ kind: 'not yet kept', upTo: 1_000_000 })
  expect(one.unkept('job')?.text).toBe('ab')
  await vi.advanceTimersByTimeAsync(gap)
  expect(writings).toHaveLength(2)
  writing(1).end()
  await settle()
  expect(writing(1).item).toBe('ab')
  expect(last()?.kind).toBe('kept')
})

test('a full disk is said with its reason until a writing comes through', async () => {
  const { saver: one, last, writing, writings } = saver()
  one.changed('job', typed('a'))
  writing(0).fail(full())
  await settle()
  expect(last()?.kind).toBe('cannot be kept')
  expect(JSON.stringify(last())).toContain('the disk is full')
  // what is typed meanwhile stays in memory, and does not make it look better
  one.changed('job', typed('ab'))
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
  one.changed('job', typed('a'))
  await vi.advanceTimersByTimeAsync(slow)
  expect(last()).toEqual({ kind: 'cannot be kept', reason: 'the disk does not answer' })
  writing(0).end()
  await settle()
  expect(last()?.kind).toBe('kept')
})

test('a flush writes at once, waits for what is under way, and says whether all is kept', async () => {
  const { saver: one, writing } = saver()
  one.changed('job', typed('a'))
  one.changed('job', typed('ab'))
  one.changed('other', typed('x'))
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
  one.changed('job', typed('a'))
  const flushed = one.flush()
  await settle()
  writing(0).fail(full())
  await settle()
  // asked to write at once, it tries again at once
  writing(1).fail(full())
  expect(await flushed).toBe(false)
  expect(one.unkept('job')?.text).toBe('a')
  await vi.advanceTimersByTimeAsync(again)
  writing(2).end()
  await settle()
  expect(last()?.kind).toBe('kept')
})

test('while a hand drags it is written less often, and never later than what people are told', async () => {
  let dragging = true
  const { saver: one, last, writings, writing } = saver(() => dragging)
  one.changed('job', typed('a'))
  expect(writings.map(({ item }) => item)).toEqual(['a'])
  one.changed('job', typed('ab'))
  writing(0).end()
  await settle()
  expect(last()).toMatchObject({ kind: 'not yet kept' })
  await vi.advanceTimersByTimeAsync(dragGap - 1)
  one.changed('job', typed('abc'))
  expect(writings).toHaveLength(1)
  await vi.advanceTimersByTimeAsync(1)
  expect(writings.map(({ item }) => item)).toEqual(['a', 'abc'])
  writing(1).end()
  await settle()
  expect(one.idle).toBe(true)
  // also where a writing ends before the next change comes
  await vi.advanceTimersByTimeAsync(16)
  one.changed('job', typed('abcd'))
  await vi.advanceTimersByTimeAsync(dragGap - 17)
  expect(writings).toHaveLength(2)
  await vi.advanceTimersByTimeAsync(1)
  writing(2).end()
  await settle()
  // what a change waits for is less than the 300 ms that may be lost
  expect(dragGap).toBeLessThan(300)
  // once it has let go, the next after a change waits no longer than for one that is typed
  dragging = false
  one.changed('job', typed('d'))
  one.changed('job', typed('de'))
  writing(3).end()
  await settle()
  await vi.advanceTimersByTimeAsync(gap)
  expect(writings.map(({ item }) => item).at(-1)).toBe('de')
})
