// @vitest-environment happy-dom
import { readFileSync } from 'node:fs'
import { mount } from '@vue/test-utils'
import { createPinia, disposePinia, setActivePinia, type Pinia } from 'pinia'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import EveryTrain from '../../src/app/jobs/EveryTrain.vue'
import { takePaper } from '../../src/app/paper/printed'
import type { TrainDocument } from '../../src/document/schema'
import type { Job } from '../../src/app/shelf/records'
import { useShelf } from '../../src/app/stores/shelf'
import { settle } from './place'
import { handedOver } from './sheet'

const example = (name: string): TrainDocument =>
  JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as TrainDocument
const calm = example('leave-it-alone')
const sheets: Record<string, TrainDocument> = {
  calm,
  blast: { ...example('piped-compressor'), site: 'Blower hall' },
  begun: { ...calm, couplings: calm.couplings.map((coupling) => ({ ...coupling, found: [] })) },
}
const jobOf = (id: string, name: string): Job => ({
  ...{ id, name, mark: '', site: '', machines: [], match: '', made: 0, changed: 0, revision: 1 },
})

let stores: Pinia
beforeEach(() => {
  stores = createPinia()
  setActivePinia(stores)
})
afterEach(() => {
  takePaper()
  disposePinia(stores)
})

test('every train of the shelf with what is due, to open, to print and to save', async () => {
  const shelf = useShelf()
  shelf.documentOf = (id) => {
    const document = sheets[id]
    return Promise.resolve(document ? { document } : { why: 'what is kept there is no train' })
  }
  const opened = vi.spyOn(shelf, 'openJob').mockResolvedValue(true)
  const print = vi.fn()
  vi.stubGlobal('print', print)
  shelf.jobs = [
    jobOf('calm', 'Calm'),
    jobOf('blast', 'Blast'),
    jobOf('begun', 'Begun'),
    jobOf('spoilt', 'Spoilt'),
  ]
  const page = mount(EveryTrain, { global: { plugins: [stores] } })
  await vi.waitFor(() => {
    expect(page.text()).not.toContain('Reading the trains')
  })
  const rows = page.findAll('tbody tr').map((row) => row.text().replace(/\s+/g, ' '))
  expect(rows[0]).toBe('Blower hall')
  expect(rows[1]).toMatch(/^Blast.*now: beyond its tolerance.*388 %/)
  expect(rows[2]).toBe('no site entered')
  expect(rows[3]).toMatch(/^Calm.*not known.*61 %.*not written down$/)
  expect(rows.slice(4)).toEqual([
    'cannot be judged yet',
    'Begunmachines, feet and couplings are entered; a plan still needs readings',
    'Spoiltwhat is kept there is no train',
  ])
  await page.findAll('tbody button')[0]?.trigger('click')
  expect(opened).toHaveBeenCalledWith('blast')
  const [printing, saving] = page.findAll('.acts button')
  await printing?.trigger('click')
  expect(print).toHaveBeenCalledOnce()
  expect(document.querySelector('.printed-paper')?.shadowRoot?.textContent).toContain('4 trains')
  await saving?.trigger('click')
  await settle()
  expect(handedOver[0]?.text).toContain('Blower hall,Blast,,388,')
  page.unmount()
})
