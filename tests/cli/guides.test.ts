import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { scripts } from '../../package.json'
import { brokenLinks, folders, isThere, page, pages, placesIn } from './pages'
import { holdfast } from './shell'

/** Folders whose folders the map names too. */
const withParts = [
  ...['src/mechanics', 'src/document'],
  ...['src/engine/infeasible', 'src/engine/studies', 'src/engine/fieldwork'],
]

const developers = page('DEVELOPERS.md')
const everyPage = [...pages.keys()]

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
    const known = new Set(Object.keys(scripts))
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
      ...withParts.flatMap((parent) =>
        folders(parent)
          .filter((name) => !map.includes(name))
          .map((name) => `${parent}/${name}`),
      ),
    ]
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
    expect(places.filter((place) => !isThere(place))).toEqual([])
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
