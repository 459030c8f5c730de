import { spawnSync } from 'node:child_process'
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { findBrowser } from '../../src/dev/browser.mjs'
import { freshFolder, holdfast, refusalsOf } from './shell'
import { askTooMuch, example, exampleFile } from './trains'
import { firstOf, isWhole } from '../counts'

const file = exampleFile('pump-and-motor')
const out = (name: string) => join(freshFolder(), name)

/** The command line with an environment of its own. */
function under(env: Record<string, string>, words: readonly string[]) {
  return spawnSync(process.execPath, [resolve('src/cli/holdfast.mjs'), ...words], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
  })
}

test('a sheet as HTML, its pages counted', () => {
  const to = out('sheet.html')
  const ended = holdfast(['sheet', file, '-o', to, '--json', '--date', 'spring'])
  expect(ended.status).toBe(0)
  const said = JSON.parse(ended.out) as { pages: number; revision: string; paper: string }
  expect(said).toMatchObject({ written: to, status: 'planned', for: 'crew', paper: 'a4' })
  const html = readFileSync(to, 'utf8')
  expect((html.match(/<section class="page /g) ?? []).length).toBe(said.pages)
  expect(html).toContain(`<b>for the crew, page ${said.pages} of ${said.pages}</b>`)
  expect((html.match(/, spring<\/p>/g) ?? []).length).toBe(said.pages)
  expect(html).toContain('size:A4')
})

test.runIf(isWhole)('on Letter, and with the date of the day where none is given', () => {
  const to = out('sheet.HTML')
  const ended = holdfast(['sheet', file, '--paper', 'Letter', '-o', to])
  expect(ended.status).toBe(0)
  expect(ended.out).toMatch(
    /Wrote .*, for the crew: \d+ pages, revision [0-9A-F]{4}-[0-9A-F]{4}, code (?:[2-9A-Z]{4}-){2}[2-9A-Z]{4}\./,
  )
  const html = readFileSync(to, 'utf8')
  expect(html).toContain('size:letter')
  expect(html).toMatch(/, printed \d{4}-\d\d-\d\d<\/p>/)
})

test.runIf(isWhole)('for the office, under the same revision', () => {
  const revision = (words: string[]) => {
    const ended = holdfast(['sheet', file, '-o', out('sheet.html'), '--json', ...words])
    expect(ended.status).toBe(0)
    return JSON.parse(ended.out) as { for: string; revision: string }
  }
  const [crew, office] = [revision(['--for', 'Crew']), revision(['--for', 'office'])]
  expect([crew.for, office.for]).toEqual(['crew', 'office'])
  expect(office.revision).toBe(crew.revision)
})

test.runIf(isWhole)('an impossible train: exit 1, and its sheet all the same', () => {
  const to = out('sheet.html')
  const input = JSON.stringify(example('piped-compressor', askTooMuch))
  const ended = holdfast(['sheet', '-', '-o', to, '--json'], { input })
  expect(ended.status).toBe(1)
  expect(readFileSync(to, 'utf8')).toContain('NO PLAN')
})

const refusals: [name: string, words: string[], at: string, why: RegExp][] = [
  ['no -o', ['sheet', file], '-o', /needs -o FILE.*\.html or \.pdf/],
  ['another ending', ['sheet', file, '-o', 'sheet.doc'], 'sheet.doc', /\.html or \.pdf/],
  ['another paper', ['sheet', file, '-o', 'a.pdf', '--paper', 'a3'], '--paper', /a4 or letter/],
  [
    'another print',
    ['sheet', file, '-o', 'a.pdf', '--for', 'me'],
    '--for',
    /crew, office or shift/,
  ],
  ['a print elsewhere', ['plan', file, '--for', 'crew'], '--for', /belongs to sheet/],
  ['paper elsewhere', ['plan', file, '--paper', 'a4'], '--paper', /belongs to sheet/],
  ['a date elsewhere', ['check', file, '--date', 'now'], '--date', /belongs to sheet/],
  [
    'a folder that is not there',
    ['sheet', file, '-o', 'nowhere/a.html'],
    'nowhere/a.html',
    /no such file/,
  ],
]
test.each(firstOf(refusals, 1, refusals.length))('refused: %s', (_, words, at, why) => {
  const ended = holdfast([...words, '--json'])
  expect(ended.status).toBe(2)
  const [first] = refusalsOf(ended)
  expect(first?.at).toBe(at)
  expect(first?.why).toMatch(why)
})

test('exit 3 without a browser, saying what to install', () => {
  const empty = freshFolder()
  const nowhere = join(empty, 'no-such-browser')
  const without = [{ PATH: empty, CHROMIUM: '' }, { CHROMIUM: nowhere }]
  for (const env of firstOf(without, 1)) {
    const to = out('sheet.pdf')
    const ended = under(env, ['sheet', file, '-o', to])
    expect(ended.status).toBe(3)
    expect(ended.stderr).toContain('install Chromium')
    expect(existsSync(to)).toBe(false)
  }
})

test.runIf(isWhole)('exit 3 where the browser makes no PDF, with what it said', () => {
  const folder = freshFolder()
  const browser = join(folder, 'chromium')
  writeFileSync(browser, '#!/bin/sh\necho no display here >&2\nexit 7\n')
  chmodSync(browser, 0o755)
  const ended = under({ CHROMIUM: browser }, ['sheet', file, '-o', join(folder, 'a.pdf'), '--json'])
  expect(ended.status).toBe(3)
  const { status, why } = JSON.parse(ended.stdout) as { status: string; why: string }
  expect(status).toBe('stopped')
  expect(why).toContain('status 7')
  expect(why).toContain('no display here')
})

test.skipIf(findBrowser() === undefined)('a PDF with as many pages as the sheet says', () => {
  const folder = freshFolder()
  mkdirSync(join(folder, 'a b'))
  const to = join(folder, 'a b', 'sheet.pdf')
  const ended = holdfast(['sheet', file, '-o', to, '--json'])
  expect(ended.complaints).toBe('')
  expect(ended.status).toBe(0)
  const { pages } = JSON.parse(ended.out) as { pages: number }
  const bytes = readFileSync(to, 'latin1')
  expect(bytes.startsWith('%PDF-')).toBe(true)
  // leaves of the page tree; Chromium writes them uncompressed
  expect((bytes.match(/\/Type\s*\/Page\b/g) ?? []).length).toBe(pages)
  expect(bytes).toMatch(/\/MediaBox\s*\[0 0 59[45]/)
})
