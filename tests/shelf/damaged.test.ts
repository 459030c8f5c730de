// @vitest-environment happy-dom
import { readFileSync } from 'node:fs'
import { createPinia, setActivePinia } from 'pinia'
import { beforeEach, expect, test, vi } from 'vitest'
import { Shelf } from '../../src/app/shelf/shelf'
import type { Head, Job } from '../../src/app/shelf/records'
import { newTrain } from '../../src/document/edits/newTrain'
import { labelOfText } from '../../src/app/shelf/label'
import { useJob } from '../../src/app/stores/job'
import { useShelf } from '../../src/app/stores/shelf'

// A shelf of which some rows are no trains. The rows lie in this test, and not in a browser's database.

const sound = readFileSync('examples/pump-and-motor.json', 'utf8')
const soundName = 'Hot water circulating pump'
const exampleName = (
  JSON.parse(readFileSync('examples/piped-compressor.json', 'utf8')) as { name: string }
).name
const jobs = new Map<string, Job>()
const heads = new Map<string, Head>()
let lastJob: string | undefined

/** Puts a job on the shelf; the one put later was changed later. */
function put(id: string, name: string, text: string): void {
  const when = 1_000_000 * (jobs.size + 1)
  const label = { ...labelOfText(sound), name }
  jobs.set(id, { id, ...label, mark: '', made: when, changed: when, revision: 1 })
  heads.set(id, { job: id, revision: 1, text, entries: {}, what: 'typed', when, page: 'p' })
}

/** Locks of a browser with no other page. */
const alone = {
  request: (_: string, held: () => unknown) => Promise.resolve(held()),
  query: () => Promise.resolve({ held: [] }),
}

/** A planner that answers nothing: no plan is wanted here. */
class Silent extends EventTarget {
  postMessage(): void {
    // nobody listens
  }
}

/** What the page says beside its sheet. */
const said = (): string =>
  useShelf()
    .notes.flatMap(({ title, says = [] }) => [title, ...says])
    .join('\n')

/** Name of the train on the sheet once the page has started. */
async function started(): Promise<string | undefined> {
  await useShelf().start()
  return useJob().document?.name
}

beforeEach(() => {
  vi.restoreAllMocks()
  vi.stubGlobal('Worker', Silent)
  Object.defineProperty(navigator, 'locks', { configurable: true, value: alone })
  localStorage.clear()
  sessionStorage.clear()
  setActivePinia(createPinia())
  jobs.clear()
  heads.clear()
  lastJob = undefined
  vi.spyOn(Shelf.prototype, 'open').mockResolvedValue({} as never)
  vi.spyOn(Shelf.prototype, 'setNote').mockResolvedValue()
  vi.spyOn(Shelf.prototype, 'note').mockImplementation(() => Promise.resolve(lastJob))
  vi.spyOn(Shelf.prototype, 'freeMark').mockImplementation((_, mark) => Promise.resolve(mark))
  vi.spyOn(Shelf.prototype, 'versions').mockResolvedValue([])
  vi.spyOn(Shelf.prototype, 'list').mockImplementation((_, removed = false) =>
    Promise.resolve(removed ? [] : [...jobs.values()].sort((a, b) => b.changed - a.changed)),
  )
  vi.spyOn(Shelf.prototype, 'load').mockImplementation((id) => {
    const [job, head] = [jobs.get(id), heads.get(id)]
    return Promise.resolve(job && head && { job, head })
  })
  vi.spyOn(Shelf.prototype, 'known').mockImplementation((match) =>
    Promise.resolve(
      [...jobs.values()].flatMap((job) => {
        const head = heads.get(job.id)
        return head && job.match === match ? [{ job, head, version: undefined }] : []
      }),
    ),
  )
  vi.spyOn(Shelf.prototype, 'keep').mockImplementation((id, sheet) => {
    const { page: from, text, entries, what, when } = sheet
    const revision = (heads.get(id)?.revision ?? 0) + 1
    put(id, labelOfText(text).name, text)
    heads.set(id, { job: id, revision, text, entries, what, when, page: from })
    return Promise.resolve({ kept: true, revision })
  })
})

const changed = (change: object): string =>
  JSON.stringify({ ...(JSON.parse(sound) as object), ...change })
const damaged: readonly (readonly [what: string, text: string, why: RegExp])[] = [
  ['cut off', '{"format":', /not a JSON document: line 1/],
  ['null', 'null', /empty: give a group of named fields/],
  ['a number', '42', /42 is not a group/],
  ['a list', '[]', /an empty list is not a group/],
  ['an empty group', '{}', /format/],
  ['without a machine in its list', changed({ machines: [null] }), /machines\[0\]/],
  ['without units', changed({ units: null }), /units/],
]

test.each(damaged)(
  'a newest sheet that is %s is set aside by name; the next opens',
  async (_, text, why) => {
    put('sound', soundName, sound)
    put('bad', 'Damaged pump', text)
    lastJob = 'bad'
    expect(await started()).toBe(soundName)
    expect(said()).toContain('Damaged pump')
    expect(said()).toMatch(why)
    // the browser did what it was asked for: it is the text that is wrong
    expect(said()).not.toMatch(/browser/)
    // what is there stays, and can be had as a file
    expect(heads.get('bad')?.text).toBe(text)
    let handed: Blob | undefined
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockReturnValue()
    vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      handed = blob as Blob
      return 'blob:here'
    })
    const [note] = useShelf().notes
    const act = note?.acts?.find(({ label }) => label === 'Save what is there')
    if (!note || !act) throw new Error('nothing to save it by')
    await useShelf().act(note, act)
    expect(await handed?.text()).toBe(text)
  },
)

test('a damaged job that is chosen is named, and the one on the sheet stays', async () => {
  put('bad', 'Damaged pump', '[]')
  put('sound', soundName, sound)
  expect(await started()).toBe(soundName)
  expect(said()).toBe('')
  await useShelf().openJob('bad')
  expect(useJob().document?.name).toBe(soundName)
  expect(useShelf().currentId).toBe('sound')
  expect(said()).toMatch(/Damaged pump/)
})

test('where every job is damaged each is named, and an example opens', async () => {
  put('one', 'First damaged', 'null')
  put('two', 'Second damaged', '{"a"')
  expect(await started()).toBe(exampleName)
  expect(said()).toMatch(/First damaged/)
  expect(said()).toMatch(/Second damaged/)
  expect(heads.get('one')?.text).toBe('null')
})

test('a train under way, which no plan can be made of yet, is not damaged', async () => {
  put('under way', 'New', JSON.stringify(newTrain()))
  expect(await started()).toBe('')
  expect(said()).toBe('')
})

test('a file whose job on the shelf is damaged opens as a job of its own', async () => {
  put('bad', soundName, '{"name":')
  await started()
  useShelf().putAway('damaged')
  await useShelf().openFile(new File([sound], 'pump.json'))
  expect(useJob().document?.name).toBe(soundName)
  expect(said()).toBe('')
  expect(heads.get('bad')?.text).toBe('{"name":')
})

const left = { job: 'sound', page: 'gone', base: 1, entries: {}, what: 'typed', when: 5_000_000 }
test.each([
  ['cut off', '{"job":'],
  ['null', 'null'],
  ['a number', '42'],
  ['a list', '[]'],
  ['an empty group', '{}'],
  ['without a train', JSON.stringify({ ...left, text: 'null' })],
  ['with a train cut off', JSON.stringify({ ...left, text: '{"name":' })],
  ['with no text', JSON.stringify({ ...left, text: 7 })],
])('an entry left behind that is %s is set aside and the job opens', async (_, entry) => {
  put('sound', soundName, sound)
  localStorage.setItem('holdfast-left gone sound', entry)
  expect(await started()).toBe(soundName)
  expect(said()).toMatch(/written down/)
  expect(said()).not.toMatch(/browser/)
  expect(heads.get('sound')?.text).toBe(sound)
  // set aside under a name of its own: it is not in the way of the next start, and not lost
  expect(localStorage.getItem('holdfast-left gone sound')).toBeNull()
  expect(localStorage.getItem('holdfast-damaged gone sound')).toBe(entry)
})

test('a disk that is full when left sheets are taken in keeps no job from opening', async () => {
  put('sound', soundName, sound)
  const entry = JSON.stringify({ ...left, text: sound })
  localStorage.setItem('holdfast-left gone sound', entry)
  vi.spyOn(Shelf.prototype, 'keep').mockRejectedValue(new DOMException('', 'QuotaExceededError'))
  expect(await started()).toBe(soundName)
  expect(said()).toMatch(/the disk is full/)
  expect(localStorage.getItem('holdfast-left gone sound')).toBe(entry)
})

test('a reason that the shelf has said already is not wrapped in another', async () => {
  vi.spyOn(Shelf.prototype, 'open').mockRestore()
  // there is no storage here: the name itself is unknown
  expect(await started()).toBe(exampleName)
  expect(said()).toMatch(/a private window, or storage is switched off/)
  expect(said()).not.toMatch(/could not/)
})

test('what was taken off the shelf long ago is cleared out at the start, and a disk that cannot keeps no job from opening', async () => {
  put('sound', soundName, sound)
  const clearing = vi.spyOn(Shelf.prototype, 'clearOut').mockRejectedValue(new Error('busy'))
  expect(await started()).toBe(soundName)
  expect(clearing).toHaveBeenCalledTimes(1)
  expect(said()).toBe('')
})
