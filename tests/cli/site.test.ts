import { copyFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { freshFolder, holdfast } from './shell'

test('every train of a folder on a day; a file that is no train stops none, with exit 2', () => {
  const folder = freshFolder()
  for (const name of ['leave-it-alone', 'piped-compressor', 'over-the-years'])
    copyFileSync(`examples/${name}.json`, join(folder, `${name}.json`))
  const all = holdfast(['site', folder, '--date', '2026-11-30'])
  expect(all.status).toBe(0)
  const flat = all.out.replace(/\s+/g, ' ')
  expect(Math.max(...all.out.split('\n').map((line) => Array.from(line).length))).toBeLessThan(81)
  expect(flat).toContain('3 trains on 2026-11-30')
  expect(flat).toContain('now: beyond its tolerance by the readings entered: 388 %')
  writeFileSync(join(folder, 'spoilt.json'), '{"format": "other"}')
  const { status, out } = holdfast(['site', folder, '--date', '2026-11-30', '--json'])
  expect(status).toBe(2)
  const { today, trains, unread } = JSON.parse(out) as {
    today: string
    trains: { name: string; aligned?: string; due: { is: string; when: string }[] }[]
    unread: { file: string; refused: { at: string }[] }[]
  }
  expect(today).toBe('2026-11-30')
  expect(trains.map(({ aligned, due }) => [aligned, due[0]?.is])).toEqual([
    [undefined, 'over tolerance'],
    ['2024-05-21', 'over tolerance'],
    [undefined, 'no date'],
  ])
  expect(unread.map(({ file, refused }) => [file, refused[0]?.at])).toEqual([
    [join(folder, 'spoilt.json'), 'format'],
  ])
})
