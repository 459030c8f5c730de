// @vitest-environment happy-dom
import { readFileSync } from 'node:fs'
import { enableAutoUnmount, mount } from '@vue/test-utils'
import { createPinia, setActivePinia } from 'pinia'
import { afterEach, expect, test } from 'vitest'
import { defineComponent, h, ref } from 'vue'
import CellGrid from '../../src/app/cells/CellGrid.vue'
import FreeNumber from '../../src/app/cells/FreeNumber.vue'
import NumberCell from '../../src/app/cells/NumberCell.vue'
import TextCell from '../../src/app/cells/TextCell.vue'
import PlatesCell from '../../src/app/figures/PlatesCell.vue'
import { useFreeBox } from '../../src/app/cells/useFreeBox'
import { useShortcuts } from '../../src/app/shortcuts'
import { useJob } from '../../src/app/stores/job'
import type { TrainDocument } from '../../src/document/schema'
import { firstOf } from '../counts'
import { point, press, typeText } from './keys'
import { settle } from './place'
import { useWorkersHere } from './workers'

// One cell behaves as every other, and as those of a spreadsheet do: chosen, typed over, edited.

const x = (foot: number) => ['machines', 0, 'feet', foot, 'x']
const reading = (k: number) => ['couplings', 0, 'found', 0, 'readings', k, 1]
const plates = ['machines', 0, 'feet', 0, 'pack', 'plates']
const free = ref<number | undefined>(12)
const asked = ref('A. Fitter')

const Asked = defineComponent({
  setup: () => {
    const { text, on } = useFreeBox(asked)
    const handlers = Object.fromEntries(
      Object.entries(on).map(([name, does]) => [
        `on${name[0]?.toUpperCase() ?? ''}${name.slice(1)}`,
        does,
      ]),
    )
    return () =>
      h('input', { type: 'text', 'aria-label': 'who stands here', value: text.value, ...handlers })
  },
})

const Cells = defineComponent({
  setup: () => {
    useShortcuts()
    return () => drawn()
  },
})

const drawn = () => [
  h(CellGrid, { label: 'readings and names' }, () => [
    h('div', { 'data-cell-row': '' }, [
      ...[0, 1, 2].map((k) => h(NumberCell, { path: reading(k), label: `reading ${k}` })),
    ]),
    h('div', { 'data-cell-row': '' }, [
      h(TextCell, { path: ['name'], label: 'job' }),
      h(TextCell, { path: ['note'], label: 'note', long: true }),
      h(PlatesCell, { path: plates, label: 'plates' }),
    ]),
  ]),
  h(NumberCell, { path: x(0), label: 'x alone' }),
  h(NumberCell, { path: ['machines', 0, 'mass'], label: 'mass', instead: 'not entered' }),
  h(FreeNumber, {
    modelValue: free.value,
    'onUpdate:modelValue': (now: number | undefined) => (free.value = now),
    label: 'factor',
    quantity: 'plain',
  }),
  h(Asked),
]

const example = JSON.parse(
  readFileSync('examples/bolt-bound-gearbox.json', 'utf8'),
) as TrainDocument

enableAutoUnmount(afterEach)
useWorkersHere()

/** Cells of a job whose first readings are 0, 500 and 600, and that has a pack of two plates. */
async function cells() {
  const pinia = createPinia()
  setActivePinia(pinia)
  const job = useJob()
  const document = structuredClone(example)
  const set = document.couplings[0]?.found[0]
  const foot = document.machines[0]?.feet[0]
  if (!set || set.kind === 'line' || !foot?.pack) throw new Error('the example has changed')
  set.readings = [
    [12, 0],
    [3, 500],
    [6, 600],
  ]
  foot.pack = { ...foot.pack, plates: [500, 50] }
  foot.x = 600
  document.note = 'as read'
  free.value = 12
  asked.value = 'A. Fitter'
  void job.adopt({ document, entries: {}, name: 'cells' })
  mount(Cells, { attachTo: globalThis.document.body, global: { plugins: [pinia] } })
  await settle()
  const read = () => {
    const now = job.document?.couplings[0]?.found[0]
    return now && now.kind !== 'line' ? now.readings.map(([, value]) => value) : []
  }
  return { job, read }
}

const box = (label: string): HTMLInputElement => {
  const found = document.querySelector<HTMLInputElement>(`[aria-label^="${label}"]`)
  if (!found) throw new Error(`no ${label}`)
  return found
}
const here = () => document.activeElement?.getAttribute('aria-label')?.replace(/, .*/, '')
/** What of a text is chosen. */
const chosen = (one: HTMLInputElement) =>
  one.value.slice(one.selectionStart ?? 0, one.selectionEnd ?? 0)

const every = [
  ['reading 1', '500', '7'],
  ['job', example.name, 'Pump'],
  ['note', 'as read', 'Seen'],
  ['plates', '500, 50', '300'],
  ['x alone', '600', '600'],
  ['factor', '12', '3'],
  ['who stands here', 'A. Fitter', 'N. Ferrer'],
] as const

/** All of them are one box within: where that is asked, the usual run asks a number and a text. */
const some = firstOf(every, 2, every.length)

test.each(some)(
  'a click chooses all of %s, and what is typed replaces it',
  async (name, was, now) => {
    await cells()
    await point(box(name))
    expect(chosen(box(name))).toBe(was)
    await typeText(now)
    expect(box(name).value).toBe(now)
  },
)

test.each(some)(
  'a second click edits %s, and Escape gives back what stood there',
  async (name, was) => {
    await cells()
    await point(box(name))
    await point(box(name))
    await typeText('1')
    expect(box(name).value).toBe(`${was}1`)
    await press('Escape')
    expect(box(name).value).toBe(was)
    expect(chosen(box(name))).toBe(was)
    await typeText('1')
    expect(box(name).value).toBe('1')
    await press('Escape')
    expect(box(name).value).toBe(was)
  },
)

test.each(some)('F2 and Enter edit %s', async (name, was) => {
  await cells()
  for (const key of ['F2', 'Enter']) {
    box('reading 0').focus()
    box(name).focus()
    expect(chosen(box(name))).toBe(was)
    await press(key)
    await typeText('1')
    expect(box(name).value).toBe(`${was}1`)
    await press('Escape')
  }
})

test.each(firstOf(['reading 1', 'plates', 'x alone', 'factor'], 1, 4))(
  '%s grows with the digits that stand in it, and clips none',
  async (name) => {
    await cells()
    await point(box(name))
    const digits = '-1234567.890123'
    for (const typed of ['-1', digits]) {
      await point(box(name))
      box(name).select()
      await typeText(typed)
      expect(box(name).getAttribute('style')).toContain(`${typed.length}ch + 12px`)
    }
  },
)

test('what is taken where nothing stands is read as a whole', async () => {
  const { job } = await cells()
  expect(job.document?.machines[0]?.mass).toBeUndefined()
  expect(box('mass').getAttribute('style')).toContain('9.3ch + 12px')
})

test('numbers with arrows between them come to where they belong', async () => {
  const { read } = await cells()
  await point(box('reading 0'))
  await typeText('0')
  await press('ArrowRight')
  await typeText('-180')
  await press('ArrowRight')
  await typeText('-660')
  expect(read()).toEqual([0, -180, -660])
})

test('the number that stands there, typed again, stays what it is', async () => {
  const { job } = await cells()
  await point(box('x alone'))
  await typeText('600')
  expect(job.document?.machines[0]?.feet[0]?.x).toBe(600)
})

test('arrows move the caret of what is edited, and walk from what is typed over', async () => {
  const { read } = await cells()
  await point(box('reading 1'))
  await press('F2')
  await press('ArrowLeft')
  await typeText('5')
  expect(here()).toBe('reading 1')
  expect(read()).toEqual([0, 5050, 600])
  await press('Enter')
  await point(box('reading 1'))
  await typeText('20')
  await press('ArrowLeft')
  expect(here()).toBe('reading 0')
  await press('End')
  expect(here()).toBe('reading 2')
  await press('Home')
  expect(here()).toBe('reading 0')
})

test('an arrow with nowhere to go leaves the whole of a cell chosen', async () => {
  const { read } = await cells()
  box('reading 2').focus()
  for (const key of ['ArrowUp', 'End']) {
    await press(key)
    expect(chosen(box('reading 2'))).toBe('600')
  }
  box('x alone').focus()
  for (const key of ['ArrowRight', 'ArrowLeft', 'ArrowUp', 'ArrowDown', 'Home', 'End']) {
    await press(key)
    expect(chosen(box('x alone'))).toBe('600')
  }
  await press('ArrowRight')
  expect(read()).toEqual([0, 500, 600])
})

test('no key sets a caret beside what is chosen as a whole', async () => {
  await cells()
  for (const keys of ['Control+End', 'Control+Home', 'Control+ArrowLeft', 'Control+ArrowRight']) {
    box('x alone').focus()
    await press(keys)
    await typeText('7')
    expect(box('x alone').value, keys).toBe('7')
    await press('Escape')
  }
  // but in what is edited it goes where it is sent
  await press('F2')
  await press('Control+Home')
  await typeText('1')
  expect(box('x alone').value).toBe('1600')
})

test('a first click on a cell that keys came to chooses it, too', async () => {
  const { read } = await cells()
  await point(box('reading 0'))
  await typeText('1')
  await press('ArrowRight')
  await point(box('reading 1'))
  await typeText('7')
  expect(read()).toEqual([1, 7, 600])
})

test('Enter takes what was typed, at the last row and outside of a table too', async () => {
  const { job } = await cells()
  for (const name of ['job', 'x alone']) {
    await point(box(name))
    await typeText('12')
    await press('Enter')
    expect(chosen(box(name))).toBe('12')
    await press('Escape')
    expect(box(name).value).toBe('12')
  }
  expect(job.document?.name).toBe('12')
})

test('a value that comes from elsewhere is chosen as a whole again', async () => {
  const { job } = await cells()
  await point(box('reading 1'))
  void job.set(reading(1), 41, 'changed by another hand')
  await settle()
  expect(chosen(box('reading 1'))).toBe('41')
  await typeText('7')
  expect(box('reading 1').value).toBe('7')
  await press('Control+z')
  expect(box('reading 1').value).toBe('41')
  expect(chosen(box('reading 1'))).toBe('41')
})

test('a note keeps its lines: Enter is a new line once something is typed', async () => {
  await cells()
  await point(box('note'))
  await typeText('a')
  expect(document.activeElement).toBe(box('note'))
  await press('Enter')
  await press('ArrowDown')
  expect(document.activeElement).toBe(box('note'))
})

const asks = (name: string) => box(name).closest('.cell')?.querySelector('.ask')?.textContent ?? ''
const yes = (name: string) => box(name).closest('.cell')?.querySelector<HTMLElement>('.ask button')

test('a reading beyond a dial is asked about in its cell until somebody says that it is right', async () => {
  const { job, read } = await cells()
  await point(box('reading 2'))
  await typeText('12700')
  expect(asks('reading 2')).toContain('12.7 mm at the dial: more than 10 mm. Is that right?')
  expect(document.querySelector('.cell-says')?.textContent).toContain('Is that right?')
  expect(read()).toEqual([0, 500, 12700])
  await press('ArrowLeft')
  expect(asks('reading 2')).toContain('12.7 mm')
  await point(box('reading 2'))
  yes('reading 2')?.click()
  await settle()
  expect(asks('reading 2')).toBe('')
  expect(here()).toBe('reading 2')
  expect(job.lastEdit).toBe('said that 12.7 mm at the dial is right')
  await typeText('500')
  await press('ArrowLeft')
  await point(box('reading 2'))
  await typeText('12700')
  expect(asks('reading 2')).toBe('')
  await typeText('0')
  expect(asks('reading 2')).toContain('127 mm at the dial')
})

test('a sum in place of a reading is no value until somebody says that it is one', async () => {
  const { job, read } = await cells()
  await point(box('reading 1'))
  await typeText('0-180')
  expect(asks('reading 1')).toContain('0-180 is a sum and comes to -180 µm. Is that right?')
  // the first keys made a number of their own: it is gone
  expect(read()).toEqual([0, 500, 600])
  expect(Object.values(job.entries)).toEqual(['0-180'])
  await press('ArrowLeft')
  expect(box('reading 1').value).toBe('0-180')
  yes('reading 1')?.click()
  await settle()
  expect(read()).toEqual([0, -180, 600])
  expect(job.entries).toEqual({})
  expect(asks('reading 1')).toBe('')
  // lengths are summed as people do it
  await point(box('x alone'))
  await typeText('600+20')
  expect(job.document?.machines[0]?.feet[0]?.x).toBe(620)
})
