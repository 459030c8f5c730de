import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { scripts } from '../../package.json'
import { holdfast } from './shell'

const guide = readFileSync('DEVELOPERS.md', 'utf8')
const readme = readFileSync('README.md', 'utf8')

test('the example in the README is what the command line prints', () => {
  const found = /<!-- from: (.+?) -->\n```\n([\s\S]+?)```/.exec(readme)
  const [, words = '', shown = ''] = found ?? []
  const printed = holdfast(words.split(' ')).out.split('\n')
  const lines = shown.split('\n').filter((line) => line !== '')
  expect(lines.length).toBeGreaterThan(8)
  let from = 0
  for (const line of lines) {
    const at = printed.indexOf(line, from)
    expect(at, line).toBeGreaterThanOrEqual(0)
    from = at + 1
  }
})

test('the guide explains every script', () => {
  for (const name of Object.keys(scripts)) {
    const said = name === 'start' || name === 'test' ? `\`npm ${name}\`` : `\`npm run ${name}`
    expect(guide.includes(`| ${said}`), name).toBe(true)
  }
})

/** Folders of a folder that hold any file. */
const folders = (parent: string) =>
  readdirSync(parent, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && readdirSync(`${parent}/${entry.name}`).length > 0)
    .map(({ name }) => name)

test('the map shows every folder of the engine, the sources and the tests', () => {
  const missing = [
    ...folders('src/engine').filter((name) => !guide.includes(` ${name}/ `)),
    ...['src', 'tests'].flatMap((parent) =>
      folders(parent)
        .map((name) => `${parent}/${name}/`)
        .filter((path) => !guide.includes(path)),
    ),
  ]
  expect(missing, 'add them to the map in DEVELOPERS.md').toEqual([])
})

test('every file that the guides link to is there', () => {
  for (const text of [readme, guide])
    for (const [, target = ''] of text.matchAll(/\]\((?!#|https?:)([^)]+)\)/g))
      if (!target.endsWith('.png')) expect(() => readFileSync(target), target).not.toThrow()
})
