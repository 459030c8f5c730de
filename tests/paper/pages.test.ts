import { describe, expect, test } from 'vitest'
import { paperHtml } from '../../src/paper/html'
import { blockHeight, rowHeight } from '../../src/paper/blockHeight'
import {
  prints,
  type Page,
  type Paper,
  type PaperSize,
  type PrintFor,
  type StepCard,
} from '../../src/paper/page'
import { print } from '../../src/paper/print'
import { columnGap, proseWidth, roomHeight } from '../../src/paper/size'
import { stepColumns, stepWidth } from '../../src/paper/stepRuns'
import { folded } from '../../src/paper/textSize'
import { displayedPlan } from '../../src/engine/fieldwork/displayed'
import { hasMoves } from '../../src/engine/plan/moves'
import { sentenceOf } from '../../src/engine/plan/sentence'
import { signedDigits, toldText } from '../../src/language/amounts'
import { askTooMuch, example } from '../cli/trains'
import {
  blocksOf,
  cardsOf,
  someExamples,
  exampleOf,
  made,
  stepsOf,
  wordsOf,
  type Made,
} from './sheets'
import { kept } from '../kept/kept'
import { isWhole } from '../counts'

/** mm in a printer's point. */
const pointInMm = 25.4 / 72

const sizes = ['a4', 'letter'] as const
const quoted = (text: string) => JSON.stringify(text).slice(1, -1)

describe.each(someExamples)('the prints of %s', (name) => {
  test('say what the plan says, and everything that was not entered', async () => {
    const [crew, office] = await both(exampleOf(name))
    const { train, answer } = crew
    for (const { paper } of [crew, office])
      expect(wordsOf(paper)).toContain(quoted(sentenceOf(train, answer).headline))
    const words = wordsOf(office.paper)
    for (const { what } of answer.notEntered)
      expect(words.toLowerCase()).toContain(quoted(what).toLowerCase())
    for (const { id, anchored } of train.bodies)
      if (anchored !== undefined) expect(words, id).toContain(anchored)
    const sections = ({ paper }: Made) => paper.pages.flatMap(sectionsOn)
    for (const title of ['Before anything is moved|What is in', 'readings', 'The shaft lines'])
      expect(sections(crew).join('; ')).toMatch(new RegExp(title))
    for (const title of ['Tolerances and states', 'By hand', 'What this stands on'])
      expect(sections(office).join('; ')).toContain(title)
    for (const title of ['Material list', 'As left'])
      expect(sections(crew).includes(title)).toBe(answer.status === 'planned')
  })

  test('have every step in its order, each stop point with it', async () => {
    const { answer, paper } = await made(exampleOf(name))
    const printed = stepsOf(paper)
    // they stand machine by machine; where another machine's step comes between, the page says so
    const steps = printed.toSorted((a, b) => a.number - b.number)
    const words = wordsOf(paper)
    for (const [i, { number }] of printed.entries())
      if (i > 0 && number !== (printed[i - 1]?.number ?? 0) + 1 && number !== 1)
        expect(words).toMatch(/Next comes step \d+, on the page of/)
    expect(steps.map(({ id }) => id)).toEqual(
      (hasMoves(answer) ? (answer.steps?.steps ?? []) : []).map(({ id }) => id),
    )
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, i) => i + 1))
    for (const [i, step] of (hasMoves(answer) ? (answer.steps?.steps ?? []) : []).entries())
      expect(steps[i]?.stop === undefined).toBe(step.hold === undefined)
  })

  test('let the crew do the job alone: every foot, its steps, every expected reading, a box for each', async () => {
    const sheet = await made(exampleOf(name))
    const { train, answer, paper } = sheet
    const tables = blocksOf(paper).flatMap((block) => (block.kind === 'table' ? [block] : []))
    // what is worked by: the plan, or what the store's shims make of it
    const displayed = displayedPlan(answer)
    const shown = hasMoves(displayed) ? displayed : { feet: [], expected: [] }
    const feet = tables
      .filter(({ columns }) => columns.at(-1)?.head === 'steps')
      .flatMap((t) => t.rows)
    const cards = cardsOf(paper)
    expect(feet).toHaveLength(cards.length)
    const digits = (value: number) => toldText(Math.abs(value), train.units)
    for (const [i, card] of cards.entries()) {
      const own = shown.feet.find(({ body, foot }) => `${body} ${foot}` === card.key)
      const row = feet.find(
        (_, r) => machineAt(feet, r) === card.machine && `Foot ${feet[r]?.[1]}` === card.name,
      )
      expect(row, `${i} ${card.key}`).toBeDefined()
      for (const [value, text = ''] of [
        [own?.shim ?? 0, row?.[2]],
        [own?.side ?? 0, row?.[3]],
      ] as const)
        if (/[1-9]/.test(digits(value))) expect(text).toContain(digits(value))
        else expect(text).toMatch(/pack stays|no slide/)
      expect(row?.[5]?.match(/\d+/g) ?? []).toEqual(card.steps.match(/\d+/g) ?? [])
      expect(card.actuals).toHaveLength(4)
    }
    const clocks = tables.filter(({ columns }) => columns[0]?.head === "o'clock")
    for (const entry of shown.expected) {
      if (!('readings' in entry)) continue
      const wanted = entry.readings.map(([, value]) => digits(value).split(' ')[0])
      // from where to where each is good: the band of the plan, signs as on the dial
      const set = train.couplings.find(({ id }) => id === entry.coupling)?.found[entry.set]
      const bare = (text: string) => (set?.kind === 'gap' ? text.replace(/^[+\u2212]/, '') : text)
      const good = (entry.good ?? []).map(([low, high]) =>
        high > low
          ? [low, high].map((value) => bare(signedDigits(value, train.units))).join(' to ')
          : 'set to 0',
      )
      expect(good).toHaveLength(wanted.length)
      // two sets that are read at the same hours share a table
      const told = clocks.some(({ rows, columns }) =>
        columns.some(
          ({ head }, c) =>
            head === 'expected' &&
            columns[c + 1]?.head === 'good from, to' &&
            columns[c + 2]?.head === 'as left' &&
            rows.length === wanted.length &&
            rows.every(
              (row, r) =>
                row[c + 2] === '' &&
                row[c + 1] === good[r] &&
                Number(row[c]?.replace(/^[+\u2212]/, '')) === Number(wanted[r]),
            ),
        ),
      )
      expect(told, `${entry.coupling}, set ${entry.set + 1}`).toBe(true)
    }
  })

  test.each(prints.flatMap((print) => sizes.map((size) => [print, size] as const)))(
    'for the %s on %s: no page too full, none but the last under a third, no long line',
    async (print, size) => {
      const { paper, answer } = await made(exampleOf(name), size, print)
      for (const [p, { title, blocks }] of paper.pages.entries()) {
        const used = blocks.reduce((sum, block) => sum + blockHeight(block), 0)
        expect(used, title).toBeLessThanOrEqual(roomHeight(size) + 1e-9)
        if (p < paper.pages.length - 1)
          expect(used / roomHeight(size), `page ${p + 1}, ${title}`).toBeGreaterThan(1 / 3)
        // neither a heading nor a drawing is left behind by what it belongs to
        const last = blocks.at(-1)
        expect(last?.kind, title).not.toMatch(/heading|title/)
        expect(last?.kind === 'figures' && last.leads === true, title).toBe(false)
      }
      expect(paper.pages.length).toBeLessThanOrEqual(most(name, answer, print, size))
      for (const [text, points, width = proseWidth(points)] of prose(paper))
        for (const line of folded(text, points, width / pointInMm, false))
          expect(line.length, line).toBeLessThanOrEqual(90)
      for (const block of blocksOf(paper))
        if (block.kind === 'table')
          for (const row of block.rows)
            if (row.includes('')) expect(rowHeight(block, row)).toBeGreaterThanOrEqual(9)
    },
  )

  test('carry one revision, for crew and office, on A4 and Letter', async () => {
    const all = await Promise.all(
      prints.flatMap((print) => sizes.map((size) => made(exampleOf(name), size, print))),
    )
    expect(new Set(all.map(({ paper }) => paper.revision)).size).toBe(1)
  })
})

test('remedies of many couplings in many states leave no page of the office print too full', async () => {
  const { paper, answer } = await made(kept('remedies-of-many-couplings'), 'letter', 'office')
  expect(answer.status).toBe('impossible')
  for (const { title, blocks } of paper.pages)
    expect(
      blocks.reduce((sum, block) => sum + blockHeight(block), 0),
      title,
    ).toBeLessThanOrEqual(roomHeight('letter') + 1e-9)
  const words = wordsOf(paper)
  expect(words).toContain('Must agree: the maker of the coupling')
  expect(words).toContain('Risk: ')
})

test.runIf(isWhole)(
  'the as-left page prints the facts that were entered, and a box for each that was not',
  async () => {
    const document = exampleOf('piped-compressor')
    const facts = {
      ...{ workOrder: 'WO 4711', dials: 'D3, D4; 2031-01-15', micrometers: 'M1; 2030-11-02' },
      ...{ temperatures: '18 / 40 / 21', readBy: 'A. Fitter' },
    }
    const { paper, answer, train } = await made({ ...document, record: { facts } })
    const displayed = displayedPlan(answer)
    const tables = blocksOf(paper).flatMap((block) => (block.kind === 'table' ? [block] : []))
    const closed = blocksOf(paper).flatMap((block) => (block.kind === 'boxes' ? block.boxes : []))
    const figureOf = (what: string) => closed.find(({ label }) => label === what)?.value
    expect(figureOf('work order')).toBe('WO 4711')
    expect(figureOf('dials: numbers, calibrated when')).toBe('D3, D4; 2031-01-15')
    expect(figureOf('micrometers: numbers, calibrated when')).toBe('M1; 2030-11-02')
    expect(figureOf('temperatures of air, oil and base')).toBe('18 / 40 / 21')
    expect(figureOf('tag')).toBe('')
    const labels = blocksOf(paper).flatMap((block) => (block.kind === 'blanks' ? block.labels : []))
    expect(labels[labels.indexOf('Read by') + 1]).toBe('name: A. Fitter')
    expect(labels[labels.indexOf('Checked by') + 1]).toBe('name')
    // every reading of the plan has what was found and its target beside its box
    const expected = hasMoves(displayed) ? displayed.expected : []
    for (const entry of expected) {
      if (!('readings' in entry)) continue
      const targets = entry.readings.map(([, value]) => signedDigits(value, train.units))
      const found = train.couplings.find(({ id }) => id === entry.coupling)?.found[entry.set]
      if (!found || found.kind === 'line') throw new Error(entry.coupling)
      const beside = found.readings.map(({ value }) => signedDigits(value, train.units))
      const column = (rows: readonly (readonly string[])[], c: number) => rows.map((row) => row[c])
      const has = tables.some(({ columns, rows }) =>
        columns.some(
          ({ head }, c) =>
            head === 'as left' &&
            column(rows, c).every((cell) => cell === '') &&
            column(rows, c - 2).join() === targets.join() &&
            column(rows, c - 3).join() === beside.join(),
        ),
      )
      expect(has, `${entry.coupling}, set ${entry.set + 1}`).toBe(true)
    }
  },
)

/** Pages that the crew's print of each example takes, on A4 and on Letter, which is shorter: no more. */
const crewPages: Readonly<Record<string, Readonly<Record<PaperSize, number>>>> = {
  'base-bound-motor': { a4: 10, letter: 12 },
  'bolt-bound-gearbox': { a4: 11, letter: 12 },
  clutch: { a4: 8, letter: 9 },
  endwise: { a4: 11, letter: 12 },
  'five-in-a-line': { a4: 14, letter: 15 },
  'gear-coupling': { a4: 5, letter: 5 },
  'hot-check': { a4: 4, letter: 4 },
  'leave-it-alone': { a4: 5, letter: 5 },
  'over-the-years': { a4: 6, letter: 6 },
  pedestals: { a4: 7, letter: 7 },
  'piped-compressor': { a4: 9, letter: 9 },
  'pump-and-motor': { a4: 5, letter: 5 },
  'rigid-coupling': { a4: 5, letter: 5 },
  'skid-as-one': { a4: 8, letter: 9 },
  'twisted-base': { a4: 6, letter: 6 },
}

/** Pages that a print may take; of the office's one for how sure the plan is, one more on the shorter paper. */
const most = (
  name: string,
  { asFound }: Made['answer'],
  print: PrintFor,
  size: PaperSize,
): number =>
  print === 'crew'
    ? (crewPages[name]?.[size] ?? 0)
    : 9 + asFound.length + (size === 'letter' ? 1 : 0)

/** Running text and its size (points), with the width that it stands in on a step's card (mm). */
const prose = (paper: Paper): (readonly [string, number, number?])[] =>
  blocksOf(paper).flatMap((block) => {
    if (block.kind === 'step') return stepProse(block.step)
    if (block.kind === 'text' && (block.look === 'plain' || block.look === 'small'))
      return [[block.text, print[block.look]] as const]
    if (block.kind === 'list' || block.kind === 'box')
      return block.items.map((text) => [text, print.plain] as const)
    return []
  })

const stepProse = (step: StepCard): (readonly [string, number, number?])[] => [
  ...stepColumns(step).flatMap(({ width, cautions, runs }) => {
    const wide = width === 12 ? proseWidth(print.small) : ((stepWidth - columnGap) * width) / 12
    return [
      ...cautions,
      ...runs.flatMap(({ title, text, lines }) => [`${title} ${text}`, ...lines]),
    ].map((text) => [text, print.small, wide] as const)
  }),
  ...(step.stop === undefined ? [] : [[`STOP POINT. ${step.stop}`, print.plain] as const]),
]

/** In a table that names each machine once, the machine of a row. */
const machineAt = (rows: readonly (readonly string[])[], at: number): string | undefined =>
  rows
    .slice(0, at + 1)
    .map(([name = '']) => name.trim())
    .findLast((name) => name !== '')

/** Titles on a page, of chapters that begin on it. */
const sectionsOn = ({ title, blocks }: Page): string[] => [
  title,
  ...blocks.flatMap((block) => (block.kind === 'title' ? [block.text] : [])),
]

const both = (document: unknown) =>
  Promise.all([made(document, 'a4', 'crew'), made(document, 'a4', 'office')])

test('an impossible train has its conflict and its remedies, and no foot cards', async () => {
  const [crew, office] = await both(example('bolt-bound-gearbox', askTooMuch))
  const { answer } = crew
  if (answer.status !== 'impossible' || !answer.reasons) throw new Error(answer.status)
  const { conflicts, remedies } = answer.reasons
  for (const { paper } of [crew, office]) {
    const front = JSON.stringify(paper.pages[0]?.blocks)
    expect(front).toContain('NO PLAN')
    expect(front).toContain(quoted(conflicts[0]?.sentence ?? 'none'))
    // no planned line is drawn, nor limits for it, and none is told of
    expect(wordsOf(paper)).not.toMatch(/Hatched strokes|the planned line/)
    const notices = paperHtml(paper).match(/<b class="notice">NO PLAN: see page 1<\/b>/g) ?? []
    expect(notices).toHaveLength(paper.pages.length)
    const titles = paper.pages.flatMap(sectionsOn).join('; ')
    expect(titles).not.toMatch(/steps|Material list|As left/)
    expect(cardsOf(paper)).toEqual([])
  }
  expect(office.paper.pages.flatMap(sectionsOn)).toContain('What is in the way')
  const words = wordsOf(office.paper)
  for (const { sentence } of remedies.filter(({ solves }) => solves))
    expect(words).toContain(quoted(sentence))
})

test('a train in tolerance has a statement to sign, with its margin', async () => {
  const { answer, paper } = await made(exampleOf('leave-it-alone'), 'a4', 'office')
  expect(paper.pages[0]?.title).toBe('Nothing needs to move')
  const words = wordsOf(paper)
  expect(words).toContain('nothing is moved: agreed by')
  const left = Math.round((answer.share - answer.standingShare) * 100)
  expect(words).toContain(`so ${left} % of the tolerance is left`)
})

test('beside "nothing needs to move" stands what a hot check shows, with its amounts', async () => {
  for (const print of prints) {
    const { answer, paper } = await made(exampleOf('hot-check'), 'a4', print)
    expect(answer.status).toBe('in-tolerance')
    const shown = answer.ready?.items.filter(
      ({ what, state }) => what === 'hot check' && state === 'bad',
    )
    expect(shown).toHaveLength(1)
    const words = shown?.[0]?.words ?? ''
    expect(words).toMatch(/ran at \d+ % of its tolerance, and the growth in use expects \d+ %/)
    expect(JSON.stringify(paper.pages[0]?.blocks)).toContain(quoted(words.slice(1)))
  }
})

test.runIf(isWhole)('what is not ready says so on every page; what is ready on none', async () => {
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
  expect((await made(document, 'a4', 'office')).paper.notice).toBe(open.paper.notice)
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
  for (const name of someExamples) {
    const { paper } = await made(exampleOf(name))
    for (const block of blocksOf(paper)) {
      if (block.kind !== 'feet') continue
      for (const card of block.cards)
        for (const text of [card.shim, card.slide, card.room, card.pack])
          expect(text).toMatch(/\d (µm|mm|mil)\b|pack stays|no slide|not entered/)
    }
  }
})
