import { spawn } from 'node:child_process'
import { mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { readArguments } from '../../src/cli/arguments'
import { fileWith, freshFolder, holdfast, refusalsOf } from './shell'
import { askTooMuch, example, reverseDial } from './trains'
import { counted, isWhole } from '../counts'

const launcher = resolve('src/cli/holdfast.mjs')

interface Told {
  line?: number
  file?: string
  sha256?: string
  name?: string
  status?: string
  why?: string
  refused?: { at: string; why: string }[]
}
const told = (out: string): Told[] =>
  out
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Told)

const train = (name: string, share?: number): string =>
  JSON.stringify({ ...reverseDial, name, ...(share !== undefined && { plan: { share } }) })
const impossible = JSON.stringify(example('pump-and-motor', askTooMuch))

const many = counted(60, 200, 200)
test(`--lines: ${many} lines in order, and a bad one stops nothing`, () => {
  const lines = Array.from({ length: many }, (_, i) => train(`train ${i + 1}`))
  lines[51] = train('too much', -1)
  lines[49] = '{"format": "holdfast-train",'
  const ended = holdfast(['plan', '--lines'], { input: lines.join('\n') })
  const answers = told(ended.out)
  expect(answers.map(({ line }) => line)).toEqual(lines.map((_, i) => i + 1))
  const sound = answers.filter(({ status }) => status === 'planned')
  expect(sound.map(({ line, name }) => [line, name])).toEqual(
    lines.flatMap((_, i) => (i === 51 || i === 49 ? [] : [[i + 1, `train ${i + 1}`]])),
  )
  expect(answers[51]?.refused).toMatchObject([{ at: 'plan.share', why: /-1.*/ }])
  expect(answers[49]?.refused?.[0]?.why).toMatch(/not a JSON document: .*column 29/)
  expect(ended).toMatchObject({ status: 2, complaints: '' })
  // apart from the line it is what plan --json answers
  const { line, ...first } = answers[0] ?? {}
  expect(line).toBe(1)
  const alone = holdfast(['plan', '-', '--json'], { input: lines[0] ?? '' })
  expect(first).toEqual(JSON.parse(alone.out))
})

test.runIf(isWhole)(
  '--lines: blank lines count and have no answer; one that cannot be aligned is answered',
  () => {
    const file = fileWith(`\n${train('a')}\r\n  \n${impossible}`, 'trains.jsonl')
    const ended = holdfast(['plan', file, '--lines'])
    expect(told(ended.out).map(({ line, status }) => [line, status])).toEqual([
      [2, 'planned'],
      [4, 'impossible'],
    ])
    expect(ended.status).toBe(0)
    const odd = Buffer.concat([Buffer.from('{"a":"'), Buffer.from([0xff]), Buffer.from('"}\n[]\n')])
    const bad = holdfast(['plan', '--lines'], { input: odd })
    expect(told(bad.out).map(({ refused }) => refused?.[0]?.why)).toEqual([
      expect.stringContaining('not UTF-8 text: byte 7'),
      expect.any(String),
    ])
    expect(refusalsOf(holdfast(['plan', 'nowhere.jsonl', '--lines']))).toMatchObject([
      { at: 'nowhere.jsonl', why: 'no such file or folder: check the name' },
    ])
  },
)

test('--lines: a slow reader holds up the reading; one that goes ends it with 3', async () => {
  const child = spawn(process.execPath, [launcher, 'plan', '--lines'], {
    stdio: ['pipe', 'pipe', 'ignore'],
  })
  child.stdout.pause()
  child.stdin.on('error', () => undefined)
  // refused at once, with the value in the answer, so that what stands still is never the planner
  const line = `${JSON.stringify({ format: 'x'.repeat(300) })}\n`
  const ended = new Promise((done) => child.on('close', done))
  for (let k = 0; k < 20_000; k++) child.stdin.write(line)
  await new Promise((done) => child.stdout.once('readable', done))
  let before = -1
  while (child.stdin.writableLength !== before) {
    before = child.stdin.writableLength
    await new Promise((done) => setTimeout(done, 250))
  }
  // pipes, and what Node holds of each, are all that has been taken of some 6 MB
  expect(20_000 * line.length - before).toBeLessThan(1_500_000)
  child.stdout.destroy()
  expect(await ended).toBe(3)
})

/** A folder of trains, one of them bad and one that cannot be aligned. */
function plant(): { folder: string; names: string[] } {
  const folder = freshFolder()
  mkdirSync(join(folder, 'plant'))
  const texts = [train('a'), '{', impossible, train('d'), train('e')]
  const names = texts.map((text, i) => {
    writeFileSync(join(folder, 'plant', `${i}.json`), text)
    return join('plant', `${i}.json`)
  })
  writeFileSync(join(folder, 'plant', 'notes.txt'), 'no train')
  return { folder, names }
}

test('a folder: one line a file, in order, the same with any number of jobs', () => {
  const { folder, names } = plant()
  const one = holdfast(['plan', 'plant', '--jobs', '1'], { folder })
  expect(told(one.out).map(({ file, status }) => [file, status])).toEqual(
    names.map((name, i) => [name, ['planned', undefined, 'impossible', 'planned', 'planned'][i]]),
  )
  expect(one).toMatchObject({ status: 2, complaints: '' })
  expect(told(one.out)[1]?.refused?.[0]?.why).toContain('not a JSON document')
  const two = holdfast(['plan', ...names], { folder })
  expect(two.out).toBe(one.out)
  const gone = holdfast(['plan', names[0] ?? '', 'gone.json'], { folder })
  expect(told(gone.out)[1]).toEqual({
    file: 'gone.json',
    refused: [{ at: 'gone.json', why: 'no such file or folder: check the name' }],
  })
})

test.runIf(isWhole)(
  '--known: what has not changed is told again; what has, what was cut off and what stopped is planned',
  () => {
    const { folder, names } = plant()
    const first = holdfast(['plan', 'plant', '--jobs', '1'], { folder }).out
    const lines = told(first)
    // an answer that only an earlier run can have given shows where it came from
    const marked = lines.slice(0, 4).map((line) => JSON.stringify({ ...line, from: 'before' }))
    marked[2] = JSON.stringify({ ...lines[2], status: 'stopped' })
    writeFileSync(
      join(folder, 'known.jsonl'),
      `${marked.join('\n')}\n${JSON.stringify(lines[4]).slice(0, 90)}`,
    )
    writeFileSync(join(folder, names[0] ?? ''), train('changed'))
    const words = ['plan', 'plant', '--jobs', '1', '--known', 'known.jsonl']
    const again = holdfast(words, { folder })
    expect(again.complaints).toMatch(/^passed over: 1 of the known lines/)
    expect(again.status).toBe(2)
    expect(told(again.out).map((line) => 'from' in line)).toEqual([false, true, false, true, false])
    expect(told(again.out)[0]).toMatchObject({ name: 'changed', status: 'planned' })
    expect(told(again.out)[2]).toEqual(lines[2])
    expect(told(again.out)[4]).toEqual(lines[4])
    const other = holdfast([...words, '--work', '2'], { folder })
    expect(told(other.out).some((line) => 'from' in line)).toBe(false)
  },
)

test('--known: never the file that standard output goes into', async () => {
  const { folder } = plant()
  const known = join(folder, 'known.jsonl')
  const child = spawn(process.execPath, [launcher, 'plan', 'plant', '--known', 'known.jsonl'], {
    cwd: folder,
    stdio: ['ignore', openSync(known, 'a'), 'ignore'],
  })
  expect(await new Promise((done) => child.on('close', done))).toBe(2)
  expect(readFileSync(known, 'utf8')).toContain('this very file')
})

test.runIf(isWhole)('a worker that dies is told for its file, and another goes on', async () => {
  const { folder } = plant()
  writeFileSync(join(folder, 'plant', '3.json'), train('ends its worker'))
  // as if the planner took its thread with it: reading this train ends the worker
  const dying = fileWith(
    `const { isMainThread } = require('node:worker_threads')
     const parse = JSON.parse
     if (!isMainThread)
       JSON.parse = (text) => (text.includes('ends its worker') ? process.exit(7) : parse(text))`,
    'dying.cjs',
  )
  const child = spawn(
    process.execPath,
    ['--require', dying, launcher, 'plan', 'plant', '--jobs', '1'],
    {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'ignore'],
    },
  )
  let out = ''
  child.stdout.on('data', (text: Buffer) => (out += text.toString()))
  expect(await new Promise((done) => child.on('close', done))).toBe(3)
  expect(told(out).map(({ status }) => status)).toEqual([
    ...['planned', undefined, 'impossible', 'stopped', 'planned'],
  ])
  expect(told(out)[3]?.why).toBe('the worker that had this file died: it ended with 7')
})

test.each([
  [['check', '--lines'], '--lines', /belongs to plan/],
  [['holds', 'a', '--jobs', '2'], '--jobs', /belongs to plan/],
  [['plan', 'a', '--jobs', '0'], '--jobs', /"0" is no whole number from 1/],
  [['plan', '-', '--jobs', '2'], '-', /--lines/],
  [['plan', 'a', 'b', '--lines'], 'b', /one file at a time/],
  [['plan', '--lines', '--jobs', '2'], '--jobs', /belongs to many files/],
])('refused: %j', (words, at, why) => {
  const request = readArguments(words)
  expect(request).toMatchObject({
    command: 'refused',
    refused: [{ at, why: expect.stringMatching(why) as string }],
  })
})
