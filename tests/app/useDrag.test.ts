// @vitest-environment happy-dom
import { beforeEach, expect, test, vi } from 'vitest'
import { useDrag } from '../../src/app/parts/useDrag'

const begin = vi.fn((event: PointerEvent, name: string) =>
  name === 'nothing' ? undefined : { name, from: event.clientX },
)
interface Taken {
  readonly name: string
  readonly from: number
}
const move = vi.fn<(event: PointerEvent, taken: Taken) => void>()
const end = vi.fn<(taken: Taken) => void>()
const place = document.createElement('div')
const capture = vi.fn()
place.setPointerCapture = capture

/** A drag bound as a component binds it, to `name`. */
function bound(name: string) {
  const drag = useDrag({ begin, move, end })
  const abort = new AbortController()
  const add = (type: string, heard: (event: PointerEvent) => void) => {
    place.addEventListener(type, heard as EventListener, { signal: abort.signal })
  }
  add('pointerdown', (event) => {
    drag.take(event, name)
  })
  for (const [type, heard] of Object.entries(drag.on)) add(type, heard)
  return {
    ...drag,
    unbind: () => {
      abort.abort()
    },
  }
}

const point = (type: string, clientX = 0, button = 0) =>
  place.dispatchEvent(new PointerEvent(type, { clientX, button, pointerId: 7 }))

beforeEach(() => {
  vi.clearAllMocks()
})

test('a drag is begun once, follows the pointer and ends once', () => {
  const { held, unbind } = bound('shaft')
  point('pointermove', 5)
  expect(move).not.toHaveBeenCalled()
  point('pointerdown', 10)
  expect(capture).toHaveBeenCalledExactlyOnceWith(7)
  const taken = { name: 'shaft', from: 10 }
  expect(held.value).toEqual(taken)
  point('pointermove', 12)
  point('pointermove', 15)
  expect(move.mock.calls.map(([event, what]) => [event.clientX, what])).toEqual([
    [12, taken],
    [15, taken],
  ])
  point('pointerup', 15)
  expect(end).toHaveBeenCalledExactlyOnceWith(taken)
  expect(held.value).toBeUndefined()
  point('pointermove', 30)
  point('pointerup', 30)
  expect(move).toHaveBeenCalledTimes(2)
  expect(end).toHaveBeenCalledOnce()
  unbind()
})

test.each(['pointerup', 'pointercancel'])('%s ends it', (type) => {
  const { held, unbind } = bound('hole')
  point('pointerdown')
  point(type)
  expect(end).toHaveBeenCalledOnce()
  expect(held.value).toBeUndefined()
  unbind()
})

test('only the first button takes hold', () => {
  const { held, unbind } = bound('hole')
  for (const button of [1, 2]) point('pointerdown', 0, button)
  expect(capture).not.toHaveBeenCalled()
  expect(begin).not.toHaveBeenCalled()
  expect(held.value).toBeUndefined()
  unbind()
})

test('where there is nothing to hold nothing moves or ends', () => {
  const { unbind } = bound('nothing')
  point('pointerdown')
  point('pointermove', 3)
  point('pointerup', 3)
  expect(begin).toHaveBeenCalledOnce()
  expect(move).not.toHaveBeenCalled()
  expect(end).not.toHaveBeenCalled()
  unbind()
})

test('what keys hold is let go like the rest, by the pointer or by hand', () => {
  const { held, release, unbind } = bound('rim')
  held.value = { name: 'keys', from: 0 }
  release()
  release()
  expect(end).toHaveBeenCalledExactlyOnceWith({ name: 'keys', from: 0 })
  unbind()
})

test('the end already sees nothing held, so that it may begin anew', () => {
  const { held, unbind } = bound('shaft')
  let seen: unknown = 'not called'
  end.mockImplementationOnce(() => {
    seen = held.value
  })
  point('pointerdown')
  point('pointerup')
  expect(seen).toBeUndefined()
  unbind()
})
