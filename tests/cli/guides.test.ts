import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { scripts } from '../../package.json'
import {
  brokenLinks,
  files,
  folders,
  isThere,
  madePart,
  page,
  pages,
  placesIn,
  rowsOf,
} from './pages'
import { holdfast } from './shell'

/**
 * What the pages name although it is not there yet, and what is there although the map does not show it
 * any more. Each must still be so: what has come or gone is taken out here.
 */
const coming = {
  scripts: ['map', 'counts'],
  places: [
    ...['layers.mjs', 'src/engine/planningRun.ts', 'src/engine/lp'],
    ...['mechanics', 'language', 'document', 'scene', 'text', 'paper'].map((name) => `src/${name}`),
  ],
}
const leaving = (
  'algebra conflict elastic entry explain floor growth hand holds limits loop misalignment motion packs ' +
  'paper program readings ready remedies scene sheet solver steps tradeoff train units'
)
  .split(' ')
  .map((name) => `src/engine/${name}`)

const developers = page('DEVELOPERS.md')
const everyPage = [...pages.keys()]

/** Words of the code in a text. */
const wordsOfCode = (text: string): Set<string> =>
  new Set([...text.matchAll(/`[^`]+`/g)].flatMap(([code]) => code.match(/[A-Za-z]+/g) ?? []))

test('what is said to be coming or leaving still is', () => {
  expect(coming.scripts.filter((name) => name in scripts)).toEqual([])
  expect(coming.places.filter(isThere)).toEqual([])
  expect(leaving.filter((place) => !isThere(place))).toEqual([])
})

describe('what the pages show', () => {
  test('an example of the command line is what it prints', () => {
    const examples = [...page('README.md').matchAll(/<!-- from: (.+?) -->\n```\n([\s\S]+?)```/g)]
    expect(examples.length).toBeGreaterThan(0)
    for (const [, words = '', shown = ''] of examples) {
      const printed = holdfast(words.split(' ')).out.split('\n')
      const lines = shown.split('\n').filter((line) => line !== '')
      expect(lines.length).toBeGreaterThan(8)
      let from = 0
      for (const line of lines) {
        const at = printed.indexOf(line, from)
        expect(at, line).toBeGreaterThanOrEqual(0)
        from = at + 1
      }
    }
  })

  test('every script is explained, and every script that is named is one', () => {
    for (const name of Object.keys(scripts)) {
      const said = name === 'start' || name === 'test' ? `\`npm ${name}` : `\`npm run ${name}`
      expect(new RegExp(`^\\| ${said}[\` ]`, 'm').test(developers), name).toBe(true)
    }
    const known = new Set([...Object.keys(scripts), ...coming.scripts])
    const strange = everyPage.flatMap((path) =>
      [...page(path).matchAll(/npm run (?:--silent )?([\w:]+)/g)]
        .map(([, name = '']) => name)
        .filter((name) => !known.has(name)),
    )
    expect(strange).toEqual([])
  })

  test('the map shows every folder of the sources and the tests', () => {
    const map = /```\n(src\/[\s\S]+?)```/.exec(developers)?.[1] ?? ''
    const missing = [
      ...folders('src')
        .map((name) => `src/${name}`)
        .filter((path) => !map.includes(`${path}/ `)),
      ...folders('src/engine')
        .filter((name) => !map.includes(`\n  ${name}/ `))
        .map((name) => `src/engine/${name}`),
      ...[
        'src/mechanics',
        'src/engine/infeasible',
        'src/engine/studies',
        'src/engine/work',
      ].flatMap((parent) =>
        folders(parent)
          .filter((name) => !map.includes(name))
          .map((name) => `${parent}/${name}`),
      ),
    ].filter((path) => !leaving.includes(path))
    expect(missing, 'add them to the map in DEVELOPERS.md').toEqual([])
    const tests = page('shared/docs/testing.md')
    expect(
      folders('tests').filter((name) => !tests.includes(`\`tests/${name}/\``)),
      'add them to shared/docs/testing.md',
    ).toEqual([])
  })

  test('DEVELOPERS.md stays short', () => {
    expect(developers.split('\n').length).toBeLessThanOrEqual(201)
  })
})

describe('what the pages name is there', () => {
  it.each(everyPage)('in %s', (path) => {
    expect(brokenLinks(path)).toEqual([])
    const places = placesIn(page(path))
    expect(places.filter((place) => !isThere(place) && !coming.places.includes(place))).toEqual([])
  })

  test('nothing stands at the top but what is expected there', () => {
    const settings = /^(\..*|(package|package-lock|tsconfig)\.json|\w+(\.\w+)?\.config\.[jt]s)$/
    const expected = ['README.md', 'DEVELOPERS.md', 'LICENSE', 'index.html', 'layers.mjs']
    const own = ['src', 'tests', 'shared', 'examples']
    const ignored = readFileSync('.gitignore', 'utf8')
    const other = readdirSync('.', { withFileTypes: true }).filter((entry) =>
      entry.isFile()
        ? !settings.test(entry.name) && !expected.includes(entry.name)
        : !own.includes(entry.name) &&
          !entry.name.startsWith('.') &&
          !ignored.includes(`${entry.name}/`),
    )
    expect(other.map(({ name }) => name)).toEqual([])
  })
})

describe('the pages tell all of it', () => {
  test('every field of the train file', () => {
    const schema: unknown = JSON.parse(readFileSync('shared/train.schema.json', 'utf8'))
    const fields = new Set<string>()
    const walk = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return
      const { properties } = node as { properties?: unknown }
      if (!Array.isArray(node)) Object.keys(properties ?? {}).forEach((name) => fields.add(name))
      Object.values(node).forEach(walk)
    }
    walk(schema)
    const said = wordsOfCode(page('shared/docs/trainFile.md'))
    expect(fields.size).toBeGreaterThan(90)
    expect([...fields].filter((name) => !said.has(name))).toEqual([])
  })

  it.each([
    ['plan', 'pump-and-motor'],
    ['plan', 'piped-compressor'],
    ['plan', 'base-bound-motor'],
    ['holds', 'bolt-bound-gearbox'],
    ['check', 'piped-compressor'],
  ])('every key of %s %s', (command, example) => {
    const said = wordsOfCode(page('shared/docs/answers.md'))
    const unsaid = new Set<string>()
    const walk = (node: unknown): void => {
      if (Array.isArray(node)) node.forEach(walk)
      else if (typeof node === 'object' && node !== null)
        for (const [key, value] of Object.entries(node)) {
          if (!said.has(key)) unsaid.add(key)
          // shares stand by the id of their state
          if (key !== 'share') walk(value)
        }
    }
    const answer: unknown = JSON.parse(
      holdfast([command, `examples/${example}.json`, '--json']).out,
    )
    walk(answer)
    expect([...unsaid]).toEqual([])
  })
})

/** Where a script of the project can make a part again, compare `madePart` with what it makes. */
describe('what is made stands between its markers', () => {
  it.each([
    ['numbers', 'shared/docs/numbers.md', undefined],
    ['counts', 'shared/docs/testing.md', undefined],
    ['map', 'DEVELOPERS.md', 'map'],
  ])('%s in %s', (name, path, script) => {
    expect(page(path).split(`<!-- ${name} -->`)).toHaveLength(2)
    const made = madePart(page(path), name)
    expect(made).toBeDefined()
    if (script === undefined || script in scripts) expect(made?.trim()).not.toBe('')
  })

  test('a number that decides stands in the file that the page names, under the name it says', () => {
    const rows = rowsOf(madePart(page('shared/docs/numbers.md'), 'numbers') ?? '')
    expect(rows.length).toBeGreaterThan(50)
    const wrong = rows.flatMap(([number, where = '']) => {
      const named = [...where.matchAll(/`([^`]+)`/g)].map(([, file = '']) => file)
      const names = where.replace(/`[^`]+`/g, '').match(/\w+/g) ?? []
      const at = named.map((file) => files.find((f) => f === file || f.endsWith(`/${file}`)))
      const texts = at.map((file) => (file === undefined ? '' : readFileSync(file, 'utf8')))
      const lost = names.filter((name) => !texts.some((t) => new RegExp(`\\b${name}\\b`).test(t)))
      return at.length === 0 || at.includes(undefined) || lost.length > 0
        ? [`${number ?? ''}: ${where}`]
        : []
    })
    expect(wrong).toEqual([])
  })

  test('the usual and the long count of a test are those in its file', () => {
    const table = page('shared/docs/testing.md').split('## Usual and long')[1]?.split('\n## ')[0]
    const rows = rowsOf(table ?? '')
    expect(rows.length).toBeGreaterThan(9)
    for (const [file = '', , usual = '', long = ''] of rows)
      expect(readFileSync(file.replaceAll('`', ''), 'utf8'), file).toMatch(
        new RegExp(`\\? ${long} : ${usual}\\b`),
      )
  })
})
