import { expect, test } from 'vitest'
import { firstUnseen } from '../../src/language/harmless'
import { paperBody, paperHtml } from '../../src/paper/html'
import type { Paper } from '../../src/paper/page'
import { askTooMuch, example } from '../cli/trains'
import { folded, textLength } from '../../src/paper/textSize'
import { exampleOf, made } from './sheets'

const hostile = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onload='alert(1)",
  '</style></svg></title></p>',
  '<!-- ',
  ']]>',
  '&lt;b&gt; &amp;',
  '&',
  '`${1}`',
  '$& $1 $$',
]
/** Words that choose a branch or a place and never come from people. */
const chosen = new Set(['kind', 'section', 'size', 'align', 'row', 'anchor'])

/** The paper with every text that is not empty replaced, looks and paths too. */
const spoilt = (paper: Paper, by: string): Paper =>
  JSON.parse(JSON.stringify(paper), (key, value: unknown) =>
    typeof value === 'string' && value !== '' && !chosen.has(key) ? by : value,
  ) as Paper

const entities: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" }
const read = (text: string): string =>
  text.replace(/&([^;\s]*);/g, (whole, name: string) => entities[name] ?? whole)

/** Tags with the names of their attributes, as a browser finds them where no text has broken out. */
const tags = (html: string): string[] =>
  (html.match(/<[^>]*>/g) ?? []).map((tag) => tag.replace(/"[^"]*"/g, '""'))

/** Texts and values of attributes, as they are read. */
const texts = (html: string): string[] =>
  [...html.matchAll(/>([^<>]*)<|"([^"<>]*)"/g)].map(([, text, value]) =>
    // how stacks share their width goes by the length of their words
    read(text ?? value ?? '').replace(/^part w\d+$/, 'part'),
  )

const papers = async () => [
  (await made(exampleOf('skid-as-one'))).paper,
  (await made(example('bolt-bound-gearbox', askTooMuch))).paper,
]

test.each(hostile)('no text breaks out of its place: %s', async (text) => {
  for (const paper of await papers()) {
    const [harmless, spoiled] = [
      paperBody(spoilt(paper, 'harmless')),
      paperBody(spoilt(paper, text)),
    ]
    expect(tags(spoiled)).toEqual(tags(harmless))
    const words = texts(harmless)
    expect(words.filter((word) => word.includes('harmless')).length).toBeGreaterThan(500)
    expect(texts(spoiled)).toEqual(words.map((word) => word.replaceAll('harmless', () => text)))
  }
})

test('the name of a train stays text in the title too', async () => {
  for (const paper of await papers()) {
    const html = paperHtml({ ...paper, train: hostile.join(' ') })
    expect(tags(html)).toEqual(tags(paperHtml(paper)))
  }
})

test('no text steers or turns what stands around it', async () => {
  const attack = 'red \u001b[31m\u009b2J\u202egnorw\ufffeover'
  for (const paper of await papers())
    for (const html of [paperBody(spoilt(paper, attack)), paperHtml(spoilt(paper, attack))]) {
      expect(html).toContain('red \ufffd[31m\ufffd2J\ufffdgnorw\ufffdover')
      expect(firstUnseen(html.replaceAll('\n', ''))).toBeUndefined()
    }
})

test('no line may end between a number and its unit, and lines are counted so', async () => {
  const torn = /\d (?:µm|mm|mil|mrad|%)(?![\w])/
  const { paper } = await made(exampleOf('pump-and-motor'))
  const words = paperBody(paper).replace(/<[^>]*>/g, '\n')
  expect(words).toMatch(/\d\u00a0mil/)
  expect(words).not.toMatch(torn)
  // by the widths, "as told 10 mil" takes two lines where "as told 10" fits and "mil" does not
  const room = textLength('as told 10', 10) + 0.1
  expect(folded('as told 10 mil', 10, room / (25.4 / 72), false)).toEqual([
    'as told',
    '10\u00a0mil',
  ])
})

test('the name of a foot with a hyphen is never parted, and stays a text that can be searched for', async () => {
  const document = exampleOf('pump-and-motor')
  const [foot] = document.machines[0]?.feet ?? []
  if (!foot) throw new Error('no foot')
  foot.id = '1-far'
  const html = paperHtml((await made(document)).paper)
  const outside = html.replace(/<svg\b[^]*?<\/svg>/g, '')
  expect(outside.match(/1-far/g)?.length).toBeGreaterThan(3)
  expect(outside.match(/<span class="firm">1-far<\/span>/g)).toHaveLength(
    outside.match(/1-far/g)?.length ?? 0,
  )
  for (const svg of html.match(/<svg\b[^]*?<\/svg>/g) ?? []) expect(svg).not.toContain('<span')
})
