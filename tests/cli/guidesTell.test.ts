import { readFileSync } from 'node:fs'
import { describe, expect, it, test } from 'vitest'
import { scripts } from '../../package.json'
import { files, madePart, page, rowsOf } from './pages'
import { holdfast } from './shell'

/** Words of the code in a text. */
const wordsOfCode = (text: string): Set<string> =>
  new Set(
    [...text.matchAll(/`[^`]+`/g)].flatMap(([code]) => code.match(/[A-Za-z][A-Za-z0-9]*/g) ?? []),
  )

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
    ['hotcheck', 'hot-check'],
    ['since', 'piped-compressor'],
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
      holdfast([command, ...filesOf(command, `examples/${example}.json`), '--json']).out,
    )
    walk(answer)
    expect([...unsaid]).toEqual([])
  })
})

/** `since` compares two files. */
const filesOf = (command: string, file: string) => (command === 'since' ? [file, file] : [file])

/** Where a script of the project can make a part again, compare `madePart` with what it makes. */
describe('what is made stands between its markers', () => {
  it.each([
    ['numbers', 'shared/docs/numbers.md', 'numbers'],
    ['marks', 'shared/docs/numbers.md', undefined],
    ['counts', 'shared/docs/testing.md', undefined],
    ['map', 'DEVELOPERS.md', 'map'],
  ])('%s in %s', (name, path, script) => {
    expect(page(path).split(`<!-- ${name} -->`)).toHaveLength(2)
    const made = madePart(page(path), name)
    expect(made).toBeDefined()
    if (script === undefined || script in scripts) expect(made?.trim()).not.toBe('')
  })

  test('a number that decides stands in the file that the page names, under the name it says', () => {
    const rows = rowsOf(madePart(page('shared/docs/numbers.md'), 'marks') ?? '')
    expect(rows.length).toBeGreaterThan(30)
    const wrong = rows.flatMap(([number, where = '']) => {
      const named = [...where.matchAll(/`([^`]+)`/g)].map(([, file = '']) => file)
      const names = where.replace(/`[^`]+`/g, '').match(/\w+/g) ?? []
      const at = named.map((file) => files.filter((f) => f === file || f.endsWith(`/${file}`)))
      const texts = at.flat().map((file) => readFileSync(file, 'utf8'))
      const lost = names.filter((name) => !texts.some((t) => new RegExp(`\\b${name}\\b`).test(t)))
      return at.length === 0 || at.some((found) => found.length === 0) || lost.length > 0
        ? [`${number ?? ''}: ${where}`]
        : []
    })
    expect(wrong).toEqual([])
  })

  test('the usual and the long count of a test are those in its file', () => {
    const table = page('shared/docs/testing.md')
      .split('## Usual, whole and long')[1]
      ?.split('\n## ')[0]
    const rows = rowsOf(table ?? '')
    expect(rows.length).toBeGreaterThan(9)
    for (const [file = '', , usual = '', long = ''] of rows)
      expect(readFileSync(file.replaceAll('`', ''), 'utf8'), file).toMatch(
        new RegExp(`\\? ${long} : ${usual}\\b|counted\\(${usual}, ${long}\\b`),
      )
  })
})
