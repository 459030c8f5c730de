// @vitest-environment happy-dom
import { mount } from '@vue/test-utils'
import { createPinia, setActivePinia } from 'pinia'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import SheetHead from '../../src/app/head/SheetHead.vue'
import TopBar from '../../src/app/head/TopBar.vue'
import { newTrain } from '../../src/document/edits/newTrain'
import { Analyst } from '../../src/app/services/analyst'
import { useJob } from '../../src/app/stores/job'
import { usePlan } from '../../src/app/stores/plan'
import type { AnalysisReply } from '../../src/worker/analysisMessages'
import { ready, type SolverHanded } from '../../src/worker/messages'

// The planner's worker in trouble: what is noticed, said and done, with workers that do as the test says.

interface Asked {
  readonly id: number
  readonly document: unknown
}
/** What a worker of this test does from its start on, and when it is asked. */
interface Way {
  readonly start?: (worker: Scripted) => void
  readonly asked?: (worker: Scripted, request: Asked) => void
}

let way: Way = {}
let made: Scripted[] = []

class Scripted extends EventTarget {
  ended = false
  readonly handed: (WebAssembly.Module | undefined)[] = []
  constructor() {
    super()
    made.push(this)
    setTimeout(() => way.start?.(this), 0)
  }
  postMessage(request: Asked | SolverHanded): void {
    if (!('id' in request)) {
      this.handed.push(request.module)
      return
    }
    const { asked } = way
    setTimeout(() => asked?.(this, request), 0)
  }
  terminate(): void {
    this.ended = true
  }
  says(data: unknown): void {
    if (!this.ended) this.dispatchEvent(new MessageEvent('message', { data }))
  }
  breaks(): void {
    // a script that cannot be loaded breaks without a message
    if (!this.ended) this.dispatchEvent(new Event('error'))
  }
}

const refused = [{ at: 'machines', why: 'none yet' }]
const works: Way = {
  start: (worker) => {
    worker.says(ready)
  },
  asked: (worker, { id }) => {
    worker.says({ id, kind: 'begun' })
    worker.says({ id, kind: 'refused', refused })
  },
}
const notLoading: Way = {
  start: (worker) => {
    worker.breaks()
  },
}
const silentAtStart: Way = {}
const withoutWasm: Way = {
  start: (worker) => {
    worker.says({ kind: 'not loaded', why: 'the solver is missing' })
  },
}
/** Loads and then never says that it has begun: it has closed itself, or its thread is dead. */
const dumb: Way = {
  start: (worker) => {
    worker.says(ready)
  },
}

let bar: ReturnType<typeof mount>
const alert = () => bar.find('[role=alert]')
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('Worker', Scripted)
  made = []
  const pinia = createPinia()
  setActivePinia(pinia)
  bar = mount(TopBar, {
    global: { plugins: [pinia], stubs: ['KeptTools', 'FileTools', 'EditTools'] },
  })
})
afterEach(() => {
  bar.unmount()
  vi.useRealTimers()
})

const typed = { ...newTrain(), name: 'typed' }
const open = (): void => {
  void useJob().adopt({ document: newTrain(), entries: {}, name: 'x' })
}

test.each([
  ['cannot be loaded', notLoading, /could not be loaded/],
  ['sits silent at its start', silentAtStart, /does not start/],
  ['finds no solver', withoutWasm, /the solver is missing/],
  ['sits silent when it is asked', dumb, /does not answer/],
])('a planner that %s: said within 5 s, started again, and healed', async (_, bad, why) => {
  way = bad
  open()
  await pass(5000)
  expect(alert().text()).toMatch(why)
  expect(alert().text()).toMatch(/started again/)
  // where the plan would stand it is not called a train that lacks something
  expect(mount(SheetHead).find('h1').text()).toBe('No plan: the planner does not work')
  // it is not said that a plan is being worked out while none is
  expect(bar.find('.status').text()).toBe('')
  expect(alert().find('button').exists()).toBe(false)
  // what is typed meanwhile stays, and is what is planned in the end
  void useJob().restore({ document: typed, entries: { 'plan.share': 'x' } }, 'typed')
  expect(useJob().entries).toEqual({ 'plan.share': 'x' })
  way = works
  await pass(30_000)
  expect(alert().exists()).toBe(false)
  expect(usePlan().working).toBe(false)
  expect(useJob().document).toEqual(typed)
  expect(useJob().entries).toEqual({ 'plan.share': 'x' })
  expect(useJob().faults).toEqual(refused)
  expect(made.filter(({ ended }) => !ended)).toHaveLength(1)
})

test('the solver that a planner has compiled is handed to those started after it', async () => {
  // the smallest program there is: its mark and its version
  const module = new WebAssembly.Module(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]))
  way = {
    start: (worker) => {
      worker.says({ kind: 'compiled', module })
      worker.breaks()
    },
  }
  open()
  await pass(500)
  way = works
  await pass(30_000)
  expect(made[0]?.handed).toHaveLength(1)
  expect(made.at(-1)?.handed).toEqual([module])
  expect(useJob().faults).toEqual(refused)
})

test('it is started again three times, and then by a press', async () => {
  way = notLoading
  open()
  await pass(60_000)
  expect(made).toHaveLength(4)
  expect(alert().text()).toMatch(/three times/)
  await pass(600_000)
  expect(made).toHaveLength(4)
  way = works
  await alert().get('button').trigger('click')
  await pass(100)
  expect(made).toHaveLength(5)
  expect(alert().exists()).toBe(false)
  expect(useJob().faults).toEqual(refused)
})

test('a computation that has begun and takes long is no silence', async () => {
  way = {
    ...works,
    asked: (worker, { id }) => {
      worker.says({ id, kind: 'begun' })
      setTimeout(() => {
        worker.says({ id, kind: 'refused', refused })
      }, 60_000)
    },
  }
  open()
  await pass(59_000)
  expect(alert().exists()).toBe(false)
  expect(bar.find('.status').text()).toMatch(/working out/)
  await pass(2000)
  expect(useJob().faults).toEqual(refused)
  expect(made).toHaveLength(1)
})

test('a planner that ends itself in the middle of a computation is noticed by its lock', async () => {
  let gone: (() => void) | undefined
  Object.defineProperty(navigator, 'locks', {
    configurable: true,
    value: {
      request: (_: string, free: () => void) => {
        gone = free
        return new Promise(() => undefined)
      },
    },
  })
  way = {
    start: (worker) => {
      worker.says({ kind: 'alive', lock: 'planner 1' })
      worker.says(ready)
    },
    asked: (worker, { id }) => {
      worker.says({ id, kind: 'begun' })
    },
  }
  open()
  await pass(1000)
  expect(alert().exists()).toBe(false)
  // the browser lets go of the lock of a worker that is no more
  gone?.()
  way = works
  await pass(10)
  expect(alert().text()).toMatch(/ended by itself/)
  await pass(5000)
  expect(alert().exists()).toBe(false)
  expect(useJob().faults).toEqual(refused)
})

test('an analysis whose planner finds no solver says why, and the next one is worked out', async () => {
  const told: AnalysisReply[] = []
  const analyst = new Analyst((reply) => told.push(reply))
  way = withoutWasm
  const first = analyst.ask({ kind: 'reasons', work: 1, document: newTrain() })
  await pass(100)
  expect(told).toEqual([{ id: first, kind: 'failed', why: 'the solver is missing' }])
  way = {
    ...works,
    asked: (worker, { id }) => {
      worker.says({ id, kind: 'reasons', reasons: undefined })
    },
  }
  const second = analyst.ask({ kind: 'reasons', work: 1, document: newTrain() })
  await pass(100)
  expect(told.at(-1)).toEqual({ id: second, kind: 'reasons', reasons: undefined })
  expect(made.filter(({ ended }) => !ended)).toHaveLength(1)
  // one that cannot be loaded says so too
  analyst.end()
  way = notLoading
  const third = analyst.ask({ kind: 'reasons', work: 1, document: newTrain() })
  await pass(100)
  expect(told.at(-1)).toEqual({
    ...{ id: third, kind: 'failed' },
    why: 'its program could not be loaded',
  })
})
