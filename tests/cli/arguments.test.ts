import { expect, test } from 'vitest'
import { readArguments } from '../../src/cli/arguments'

/** What is said of words that are refused. */
function refusal(words: readonly string[]) {
  const request = readArguments(words)
  if (request.command !== 'refused') throw new Error(`not refused: ${words.join(' ')}`)
  return request.refused[0]
}

test('joined and grouped options are refused as they were typed', () => {
  for (const word of ['--paper=a4', '-ox.lp', '-o=x.lp', '--o', '-hx', '-ho', '--json=1'])
    expect(refusal(['sheet', 'a', word, '-o', 'b.html']), word).toMatchObject({
      at: word,
      why: expect.stringMatching(/^unknown option/) as string,
    })
})

test('an option is never taken for the value of another', () => {
  for (const next of ['--json', '-x', '--'])
    expect(refusal(['sheet', 'a', '--date', next])).toMatchObject({ at: '--date' })
})

test('the first fault is told, and help only where there is none', () => {
  expect(refusal(['plan', '-x', '--help', '-y'])?.at).toBe('-x')
  expect(refusal(['polish', '-x'])?.at).toBe('polish')
  expect(readArguments(['--version', '-h'])).toEqual({ command: 'version' })
})

test('- is a file or a value; after -- everything is a file', () => {
  expect(readArguments(['model', '-', '-o', '-.lp'])).toMatchObject({ command: 'refused' })
  expect(readArguments(['sheet', '-', '-o', 'a.pdf', '--date', '-'])).toMatchObject({
    file: '-',
    date: '-',
  })
  expect(readArguments(['plan', '--', '--help'])).toEqual({
    command: 'plan',
    file: '--help',
    json: false,
    sure: false,
    work: 1,
  })
})

test('--work takes a number above 0, for plan alone', () => {
  expect(readArguments(['plan', 'a', '--work', '10'])).toMatchObject({ work: 10 })
  for (const wrong of ['0', 'x', '', 'Infinity'])
    expect(refusal(['plan', 'a', '--work', wrong])).toMatchObject({ at: '--work' })
  expect(refusal(['check', 'a', '--work', '2'])?.why).toContain('it belongs to plan')
})

test('a site takes files, folders and a day, and writes no file', () => {
  expect(readArguments(['site', 'a', 'b', '--date', '2026-11-30', '--json'])).toEqual({
    ...{ command: 'site', json: true, files: ['a', 'b'], date: '2026-11-30' },
  })
  for (const day of ['tomorrow', '2026-02-30', '2026-11', ''])
    expect(refusal(['site', 'a', '--date', day])?.why, day).toContain('give it as 2026-11-30')
  expect(refusal(['site', 'a', '-o', 'b'])?.why).toContain('site writes to standard output')
  expect(refusal(['site'])?.at).toBe('FILE')
  expect(refusal(['plan', 'a', '--date', '2026-11-30'])?.why).toBe(
    'plan has no date: it belongs to sheet and site',
  )
})
