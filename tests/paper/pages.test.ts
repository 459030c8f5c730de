import { describe, expect, test } from 'vitest'
import { paperHtml } from '../../src/paper/html'
import { blockHeight } from '../../src/paper/paginate'
import { roomHeight } from '../../src/paper/size'
import { displayedPlan } from '../../src/engine/fieldwork/displayed'
import { hasMoves } from '../../src/engine/plan/moves'
import { sentenceOf } from '../../src/engine/plan/sentence'
import { toldText } from '../../src/language/amounts'
import { askTooMuch, example } from '../cli/trains'
import { blocksOf, exampleNames, exampleOf, made, stepsOf, wordsOf } from './sheets'

describe.each(exampleNames)('the sheet of %s', (name) => {
  test('says what the plan says, and everything that was not entered', async () => {
    const { train, answer, paper } = await made(exampleOf(name))
    const words = wordsOf(paper)
    expect(words).toContain(JSON.stringify(sentenceOf(train, answer).headline).slice(1, -1))
    for (const { what } of answer.notEntered)
      expect(words.toLowerCase()).toContain(JSON.stringify(what).slice(1, -1).toLowerCase())
    for (const { id, anchored } of train.bodies)
      if (anchored !== undefined) expect(words, id).toContain(anchored)
    const sections = new Set(paper.pages.map(({ section }) => section))
    const always = ['front', 'demands', 'ready', 'readings', 'graph', 'arithmetic', 'assumptions']
    for (const section of always) expect(sections).toContain(section)
    for (const section of ['feet', 'order', 'stores', 'handover'] as const)
      expect(sections.has(section)).toBe(answer.status === 'planned')
  })

  test('has every step in its order, each stop point with it', async () => {
    const { answer, paper } = await made(exampleOf(name))
    const steps = stepsOf(paper)
    expect(steps.map(({ id }) => id)).toEqual(
      (hasMoves(answer) ? (answer.steps?.steps ?? []) : []).map(({ id }) => id),
    )
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, i) => i + 1))
    for (const [i, step] of (hasMoves(answer) ? (answer.steps?.steps ?? []) : []).entries())
      expect(steps[i]?.stop === undefined).toBe(step.hold === undefined)
  })

  test('shows as found and expected readings, and as many boxes to write in', async () => {
    const { train, answer, paper } = await made(exampleOf(name))
    const displayed = displayedPlan(answer)
    const expected = hasMoves(displayed) ? displayed.expected : []
    const faces = paper.pages
      .filter(({ section }) => section === 'readings')
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) => (block.kind === 'figures' ? [...block.figures] : []))
    for (const entry of expected) {
      if (!('readings' in entry)) continue
      const digits = entry.readings.map(
        ([, value]) => toldText(Math.abs(value), train.units).split(' ')[0],
      )
      const told = faces.some(({ marks }) => {
        const labels = marks.flatMap((mark) => (mark.kind === 'label' ? [mark.text] : []))
        return digits.every(
          (text) =>
            labels.some((label) => label.replace(/^[+\u2212]/, '') === text) ||
            (!/[1-9]/.test(text ?? '') && labels.includes('0')),
        )
      })
      const table = wordsOf(paper)
      expect(told || digits.every((text) => table.includes(text ?? '')), entry.coupling).toBe(true)
    }
  })

  test.each(['a4', 'letter'] as const)(
    'fits on %s: no page is fuller than it has room',
    async (size) => {
      const { paper } = await made(exampleOf(name), size)
      for (const { title, blocks } of paper.pages) {
        const used = blocks.reduce((sum, block) => sum + blockHeight(block), 0)
        expect(used, title).toBeLessThanOrEqual(roomHeight(size) + 1e-9)
        // neither a heading nor a drawing is left behind by what it belongs to
        const last = blocks.at(-1)
        expect(last?.kind, title).not.toBe('heading')
        expect(last?.kind === 'figures' && last.leads === true, title).toBe(false)
      }
      // both graphs and what explains them are one page
      expect(paper.pages.filter(({ section }) => section === 'graph')).toHaveLength(1)
      // a machine's feet are one page
      const titles = paper.pages.filter(({ section }) => section === 'feet').map((p) => p.title)
      expect(titles.filter((title) => title.endsWith('(continued)'))).toEqual([])
    },
  )
})

test('an impossible train has its conflict and its remedies, and no foot cards', async () => {
  const { answer, paper } = await made(example('bolt-bound-gearbox', askTooMuch))
  if (answer.status !== 'impossible' || !answer.reasons) throw new Error(answer.status)
  const { conflicts, remedies } = answer.reasons
  const front = JSON.stringify(paper.pages[0]?.blocks)
  expect(front).toContain('NO PLAN')
  expect(front).toContain(JSON.stringify(conflicts[0]?.sentence).slice(1, -1))
  const sections = paper.pages.map(({ section }) => section)
  expect(sections).toContain('remedies')
  for (const section of ['feet', 'order', 'stores', 'handover'] as const)
    expect(sections).not.toContain(section)
  const words = wordsOf(paper)
  for (const { sentence } of remedies.filter(({ solves }) => solves))
    expect(words).toContain(JSON.stringify(sentence).slice(1, -1))
})

test('a train in tolerance has a statement to sign, with its margin', async () => {
  const { answer, paper } = await made(exampleOf('leave-it-alone'))
  expect(paper.pages[0]?.title).toBe('Nothing needs to move')
  const words = wordsOf(paper)
  expect(words).toContain('nothing is moved: agreed by')
  const left = Math.round((answer.share - answer.standingShare) * 100)
  expect(words).toContain(`so ${left} % of the tolerance is left`)
})

test('what is not ready says so on every page; what is ready on none', async () => {
  const document = exampleOf('pump-and-motor')
  const open = await made(document)
  expect(open.answer.ready?.ready).toBe(false)
  const html = paperHtml(open.paper)
  const notices = html.match(/<b class="notice">NOT READY: see page 1<\/b>/g) ?? []
  expect(notices.length).toBe(open.paper.pages.length)
  const what = ['soft foot', 'pipe strain', 'signs', 'closure'] as const
  const waivers = what.map((one) => ({ what: one, by: 'A. Engineer', why: 'practice' }))
  const ready = await made({ ...document, record: { waivers } })
  expect(ready.answer.ready?.ready).toBe(true)
  expect(ready.paper.notice).toBe('')
  expect(wordsOf(ready.paper)).toContain('A. Engineer')
})

test('the same numbers give the same revision, another number another one', async () => {
  const document = exampleOf('pump-and-motor')
  const first = await made(document)
  const again = await made(structuredClone(document))
  expect(again.paper.revision).toBe(first.paper.revision)
  expect(first.paper.revision).toMatch(/^[0-9A-F]{4}-[0-9A-F]{4}$/)
  const [machine] = document.machines
  const [foot] = machine?.feet ?? []
  if (!foot) throw new Error('no foot')
  foot.x += 1
  const other = await made(document)
  expect(other.paper.revision).not.toBe(first.paper.revision)
})

test('the file needs nothing else, and no words of the train become markup', async () => {
  const document = exampleOf('pump-and-motor')
  document.name = 'A <script>alert(1)</script> & "train"'
  const html = paperHtml((await made(document)).paper)
  expect(html).not.toMatch(/<script|<link|<img|@import|url\(http| style=/)
  expect(html).toContain('A &lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;train&quot;')
  expect(html).toContain('<!doctype html>')
})

test('no number stands without its unit where something is to be done', async () => {
  for (const name of exampleNames) {
    const { paper } = await made(exampleOf(name))
    for (const block of blocksOf(paper)) {
      if (block.kind !== 'feet') continue
      for (const card of block.cards)
        for (const text of [card.shim, card.slide, card.room, card.pack, ...card.dials])
          expect(text).toMatch(/\d (µm|mm|mil)\b|pack stays|no slide|not entered/)
    }
  }
})
