// @vitest-environment happy-dom
import { readFileSync } from 'node:fs'
import { enableAutoUnmount, mount } from '@vue/test-utils'
import { createPinia, setActivePinia } from 'pinia'
import { afterEach, expect, test } from 'vitest'
import { h, type Component } from 'vue'
import AimFigures from '../../src/app/figures/AimFigures.vue'
import AxialFigures from '../../src/app/figures/AxialFigures.vue'
import BodyCells from '../../src/app/figures/BodyCells.vue'
import GearFigures from '../../src/app/figures/GearFigures.vue'
import RunOutFigures from '../../src/app/figures/RunOutFigures.vue'
import SettingFigures from '../../src/app/figures/SettingFigures.vue'
import { useJob } from '../../src/app/stores/job'
import type { TrainDocument } from '../../src/document/schema'
import { point, press, typeText } from './keys'
import { settle } from './place'
import { useWorkersHere } from './workers'

// What is typed in a fold, or over a reason, and taken back again.

const example = JSON.parse(readFileSync('examples/hot-check.json', 'utf8')) as TrainDocument

enableAutoUnmount(afterEach)
useWorkersHere()

async function figures(component: Component, props: object) {
  const pinia = createPinia()
  setActivePinia(pinia)
  const job = useJob()
  void job.adopt({ document: structuredClone(example), entries: {}, name: 'folds' })
  mount(() => h(component, props), {
    attachTo: globalThis.document.body,
    global: { plugins: [pinia] },
  })
  await settle()
  return job
}

const folds = {
  aim: AimFigures,
  'axial gap': AxialFigures,
  'gear coupling': GearFigures,
  'run-out': RunOutFigures,
  'cold setting': SettingFigures,
}

test.each(Object.entries(folds))(
  'the fold of %s stays open while the first number typed in it is taken back',
  async (_, component) => {
    const coupling = example.couplings[0]
    const job = await figures(component, {
      index: 0,
      title: 'turbine to compressor',
      coupling,
      machines: example.machines,
    })
    const before = JSON.stringify(job.document)
    const fold = document.querySelector('details')
    const cell = fold?.querySelector<HTMLInputElement>('input[data-cell][type=text]')
    if (!fold || !cell) throw new Error('no cell in the fold')
    fold.open = true
    fold.dispatchEvent(new Event('toggle'))
    await settle()
    await point(cell)
    await typeText('7')
    await settle()
    expect(JSON.stringify(job.document)).not.toBe(before)
    await press('Escape')
    await settle()
    expect(cell.value).toBe('')
    expect(JSON.stringify(job.document)).toBe(before)
    expect(fold.open).toBe(true)
    expect(document.activeElement).toBe(cell)
  },
)

test('Escape gives back why a machine may never be released', async () => {
  const job = await figures(BodyCells, {
    path: ['machines', 0],
    name: 'Steam turbine',
    more: false,
    rollSays: () => '',
  })
  const cell = document.querySelector<HTMLInputElement>('[data-at="machines[0].anchored"]')
  if (!cell) throw new Error('no cell')
  const was = job.document?.machines[0]?.anchored
  await point(cell)
  await typeText('x')
  expect(job.document?.machines[0]?.anchored).toBe('x')
  await press('Escape')
  expect(job.document?.machines[0]?.anchored).toBe(was)
})
