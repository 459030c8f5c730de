import { readFileSync } from 'node:fs'
import { mount, type VueWrapper } from '@vue/test-utils'
import { createPinia, disposePinia, type Pinia } from 'pinia'
import { afterEach, beforeAll, beforeEach, expect, vi } from 'vitest'
import App from '../../src/app/App.vue'
import { fetchTheRest } from '../../src/app/services/later'
import type { TrainDocument } from '../../src/document/schema'
import './matchers'
import { patience, Place, settle } from './place'
import { useWorkersHere } from './workers'

// The whole sheet, mounted without a browser: what it says and does, not how it is laid out. Its workers run in
// this thread, and it keeps nothing, as where a browser's storage is switched off.

// every part in turn, before any of them is fetched by itself: one that cannot be loaded then says where and why
import.meta.glob('../../src/app/**/*.vue', { eager: true })

/** Width of the page (px). */
const room = 1200

/** Every text and every place on the sheet. */
export const page = new Place(() => [document.body], 'page')
/** Files handed over to whoever sits at the screen, in order. */
export const handedOver: { readonly name: string; readonly text: string }[] = []
/** Warnings and errors, which no test may see. */
const faults: string[] = []

let mounted: VueWrapper | undefined
let stores: Pinia | undefined

/** What stands around the sheet in the tests of a file: for the setup of each file, since files share this module. */
export function useSheet(): void {
  useWorkersHere()
  // as a moment after the first plan; a part that is missing would be looked for in vain by some later test
  beforeAll(async () => {
    for (const why of await fetchTheRest()) throw why
  })
  beforeEach(() => {
    localStorage.clear()
    sessionStorage.clear()
    handedOver.length = 0
    faults.length = 0
    vi.stubGlobal('ResizeObserver', Sizes)
    Object.defineProperty(navigator, 'locks', { configurable: true, value: alone })
    vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockImplementation(function (
      this: HTMLCanvasElement,
    ) {
      return penOn(this)
    })
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      last = blob as Blob
      return 'blob:here'
    })
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (
      this: HTMLAnchorElement,
    ) {
      const name = this.download
      void last?.text().then((text) => handedOver.push({ name, text }))
    })
    for (const level of ['warn', 'error'] as const)
      vi.spyOn(console, level).mockImplementation((...words: unknown[]) => {
        faults.push(words.map(String).join(' '))
      })
  })
  afterEach(() => {
    mounted?.unmount()
    mounted = undefined
    // their listeners on the window would keep the whole sheet, and the next test would walk through it too
    if (stores) disposePinia(stores)
    stores = undefined
    vi.restoreAllMocks()
    document.body.innerHTML = ''
    expect(faults).toEqual([])
  })
}

let last: Blob | undefined

/** Tells at once how large an element is. */
class Sizes {
  private readonly told: (entries: readonly object[]) => void
  constructor(told: (entries: readonly object[]) => void) {
    this.told = told
  }
  observe(): void {
    this.told([{ contentRect: { width: room, height: 800 } }])
  }
  unobserve(): void {
    // told once
  }
  disconnect(): void {
    // told once
  }
}

/** Locks of a browser with no other page. */
const alone = {
  request: (_: string, held: () => unknown) => Promise.resolve(held()),
  query: () => Promise.resolve({ held: [] }),
}

/** A pen that draws nothing, and knows what it does not draw on: a chart asks it. */
const penOn = (canvas: HTMLCanvasElement) =>
  new Proxy(
    {},
    {
      get: (_, name) =>
        name === 'canvas'
          ? canvas
          : name === 'measureText'
            ? () => ({ width: 10 })
            : () => undefined,
    },
  ) as never

export const exampleText = (file: string): string => readFileSync(`examples/${file}`, 'utf8')

/** Opens the sheet and waits until the plan of its first example is drawn. */
export async function openSheet(): Promise<void> {
  stores = createPinia()
  mounted = mount(App, { attachTo: document.body, global: { plugins: [stores] } })
  await drawn()
}

/** Waits until what is on the sheet is the newest plan. */
export async function drawn(): Promise<void> {
  await expect(page.locator('.band-couplings')).toHaveCount(1)
  await expect(page.locator('p.status')).toHaveText('')
}

/** Opens an example, its plan drawn. */
export async function chooseExample(file: string): Promise<void> {
  await page.getByLabel('Example').selectOption(file)
  const { name } = JSON.parse(exampleText(file)) as TrainDocument
  await expect(page.locator('.train-name')).toHaveText(name)
  await drawn()
}

/** Opens a file of this text. */
export async function openText(name: string, text: string): Promise<void> {
  const input = await page.locator('input[type=file][data-opens-files]').one()
  const file = new File([text], name, { type: 'application/json' })
  Object.defineProperty(input, 'files', { configurable: true, value: [file] })
  input.dispatchEvent(new Event('change', { bubbles: true }))
  await settle()
}

/** Opens the figures of a band. */
export async function layOpen(...bands: readonly string[]): Promise<void> {
  for (const band of bands) {
    await page.locator(`.figures-button[data-enters="${band}"]`).click()
    await expect(page.locator(`[data-figures="${band}"] > .figures-body`)).toHaveCount(1)
  }
}

/** The document on the sheet, as it would be saved. */
export async function savedTrain(): Promise<TrainDocument> {
  const before = handedOver.length
  await page.getByRole('button', { name: 'Save a file', exact: true }).click()
  await vi.waitUntil(() => handedOver.length > before, { timeout: patience })
  return JSON.parse(handedOver.at(-1)?.text ?? '') as TrainDocument
}
