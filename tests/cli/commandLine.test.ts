import { spawn } from 'node:child_process'
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { version } from '../../package.json'
import { fileWith, freshFolder, holdfast, refusalsOf } from './shell'
import { firstOf } from '../counts'
import { askTooMuch, example, exampleFile, reverseDial } from './trains'

interface PlanJson {
  status: string
  cost?: number
  feet?: { body: string; foot: string; shim: number; side: number }[]
  floor: number
  share: number
}
const answerOf = (out: string) => JSON.parse(out) as PlanJson
const text = (document: unknown) => JSON.stringify(document)

describe('exit 0: answered', () => {
  test('plan --json prints the plan and nothing else', () => {
    const ended = holdfast(['plan', '-', '--json'], { input: text(reverseDial) })
    expect(ended.complaints).toBe('')
    expect(ended.status).toBe(0)
    const answer = answerOf(ended.out)
    expect(answer.status).toBe('planned')
    const feet = answer.feet?.filter(({ body }) => body === 'moved') ?? []
    expect(feet.map(({ shim }) => Math.round(shim * 100) / 100)).toEqual([16, 30])
    expect(feet.map(({ side }) => Math.round(side * 100) / 100)).toEqual([-28, -36])
  })

  test('plan prints text with the same moves in words', () => {
    const ended = holdfast(['plan', fileWith(text(reverseDial))])
    expect(ended.status).toBe(0)
    expect(ended.complaints).toBe('')
    expect(ended.out).toMatch(/inner +put in 16\.0 mil +28\.0 mil toward 9 o'clock/)
    expect(ended.out).toMatch(/outer +put in 30\.0 mil +36\.0 mil toward 9 o'clock/)
    expect(ended.out).toContain('Leave the driver fixed.')
    expect(ended.out.replace(/\s+/g, ' ')).toContain('the responsible engineer decides and signs.')
  })

  test('a train within tolerance is answered too', () => {
    const ended = holdfast(['plan', '--json', exampleFile('leave-it-alone')])
    expect(ended.status).toBe(0)
    expect(answerOf(ended.out)).toMatchObject({ status: 'in-tolerance', cost: 0 })
  })

  test('the same file gives the same bytes, from a file and from standard input', () => {
    const file = exampleFile('skid-as-one')
    const first = holdfast(['plan', file, '--json'])
    const second = holdfast(['plan', '-', '--json'], { input: readFileSync(file) })
    expect(first.status).toBe(0)
    expect(second.out).toBe(first.out)
  })

  test('hotcheck tells how the train ran, and writes the file with its growth corrected where asked', () => {
    const out = join(freshFolder(), 'corrected.json')
    const ended = holdfast(['hotcheck', exampleFile('hot-check'), '-o', out, '--json'])
    expect(ended.status).toBe(0)
    const { written, hotChecks } = JSON.parse(ended.out) as {
      written: string
      hotChecks: { trim: { when: string; plan?: { total?: { shim: number } } } }[]
    }
    expect([written, hotChecks[0]?.trim.when]).toEqual([out, 'now'])
    // planned by the command, it is the trim that was told
    const plan = JSON.parse(holdfast(['plan', out, '--json']).out) as {
      rounded: { total: { shim: number } }
    }
    expect(plan.rounded.total.shim).toBe(hotChecks[0]?.trim.plan?.total?.shim)
    const text = holdfast(['hotcheck', exampleFile('hot-check')])
    expect(text.out).not.toContain('\n\n\n')
    expect(text.out.replace(/\s+/g, ' ')).toContain(
      'a trim is worth it now, before it runs again: the',
    )
    expect(holdfast(['hotcheck', exampleFile('five-in-a-line')]).out).toContain('no hot check')
    const same = fileWith(readFileSync(exampleFile('hot-check'), 'utf8'))
    expect(holdfast(['hotcheck', same, '-o', same]).status).toBe(2)
  })

  test('check answers without a plan', () => {
    const json = holdfast(['check', exampleFile('five-in-a-line'), '--json'])
    expect(json.status).toBe(0)
    const report = JSON.parse(json.out) as Record<string, unknown>
    expect(report.ok).toBe(true)
    for (const key of ['findings', 'notEntered', 'closure', 'asFound'])
      expect(Array.isArray(report[key]), key).toBe(true)
    expect(report).not.toHaveProperty('feet')
    const plain = holdfast(['check', exampleFile('five-in-a-line')])
    expect(plain.status).toBe(0)
    expect(plain.out).toContain('The file is in order.')
    expect(plain.out).toContain('NOT ENTERED')
  })

  test('a file with a byte order mark, and one behind a link with a space in its name', () => {
    const folder = freshFolder()
    writeFileSync(join(folder, 'a train.json'), `\ufeff${text(reverseDial)}`)
    symlinkSync(join(folder, 'a train.json'), join(folder, 'link'))
    expect(holdfast(['check', 'link', '--json'], { folder }).status).toBe(0)
  })

  test('a file whose name begins with a dash, after --', () => {
    const folder = freshFolder()
    writeFileSync(join(folder, '-x'), text(reverseDial))
    expect(holdfast(['check', '--json', '--', '-x'], { folder }).status).toBe(0)
  })

  test('help and version', () => {
    const help = holdfast(['--help'])
    expect(help.status).toBe(0)
    for (const word of ['plan FILE', 'check FILE', 'model FILE', 'sheet FILE', '--json'])
      expect(help.out).toContain(word)
    expect(help.out).toContain('Exit status')
    expect(Math.max(...help.out.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(80)
    expect(holdfast(['--version'])).toMatchObject({ status: 0, out: `${version}\n` })
  })
})

describe('exit 1: impossible, and answered all the same', () => {
  const document = text(example('piped-compressor', askTooMuch))

  test('as JSON', () => {
    const ended = holdfast(['plan', '-', '--json'], { input: document })
    expect(ended.status).toBe(1)
    expect(ended.complaints).toBe('')
    const answer = answerOf(ended.out)
    expect(answer.status).toBe('impossible')
    expect(answer.floor).toBeGreaterThan(answer.share)
    for (const absent of ['cost', 'bodies', 'feet', 'couplings', 'packs', 'expected'])
      expect(answer).not.toHaveProperty(absent)
  })

  test('as text', () => {
    const ended = holdfast(['plan', '-'], { input: document })
    expect(ended.status).toBe(1)
    expect(ended.out.replace(/\s+/g, ' ')).toMatch(
      /the best reachable is \d+ % of tolerance; 5 % was/,
    )
    expect(ended.out).not.toContain('FEET')
  })
})

describe('exit 2: refused, with the place', () => {
  const cases: [name: string, words: string[], at: string, why: RegExp, input?: string | Buffer][] =
    [
      ['no command', [], 'command', /give plan, .*model/],
      ['an unknown command', ['polish', 'x'], 'polish', /the commands are plan, .*model/],
      ['an unknown option', ['plan', 'x', '--jsn'], '--jsn', /unknown option/],
      ['no file', ['plan'], 'FILE', /give a train file after plan/],
      ['two files', ['check', 'a', 'b'], 'b', /one file at a time/],
      ['-o where nothing is written', ['plan', 'a', '-o', 'b.lp'], '-o', /belongs to model/],
      ['model without -o', ['model', 'a'], '-o', /needs -o FILE/],
      ['-o without a name', ['model', 'a', '-o'], '-o', /give the file to write/],
      ['an unknown format', ['model', 'a', '-o', 'b.txt'], 'b.txt', /\.lp.*\.mps/],
      ['-o twice', ['model', 'a', '-o', 'b.lp', '-o', 'c.lp'], '-o', /given twice/],
      ['a missing file', ['plan', 'nowhere.json'], 'nowhere.json', /no such file/],
      ['a folder', ['check', 'examples'], 'examples', /a folder/],
      ['a file as a folder', ['plan', 'package.json/x'], 'package.json/x', /no folder/],
      ['no JSON', ['plan', '-'], '', /not a JSON document.*line 2, column 3/, '{\n  oops'],
      ['nothing at all', ['plan', '-'], '', /not a JSON document/, ''],
      [
        'text that is not UTF-8',
        ['check', '-'],
        'standard input',
        /byte 12, on line 2/,
        Buffer.concat([Buffer.from('{"name":\n "'), Buffer.from([0xe9, 0x22, 0x7d])]),
      ],
      ['more than 10 MB', ['check', '-'], 'standard input', /10 MB/, Buffer.alloc(10_000_001, 32)],
    ]

  // each is a process: what decides stands in arguments.test.ts and in tests/refused
  test.each(firstOf(cases, 4, cases.length))('%s', (_, words, at, why, input) => {
    const options = input === undefined ? {} : { input }
    const json = holdfast([...words, '--json'], options)
    expect(json.status).toBe(2)
    expect(json.complaints).toBe('')
    const [first] = refusalsOf(json)
    expect(first?.at).toBe(at)
    expect(first?.why).toMatch(why)
    const plain = holdfast(words, options)
    expect(plain.status).toBe(2)
    expect(plain.out).toBe('')
    expect(plain.complaints).toContain('refused: ')
    expect(plain.complaints).toMatch(why)
  })

  test('a large file is refused before it is read', () => {
    const file = fileWith(Buffer.alloc(10_000_001, 32))
    expect(refusalsOf(holdfast(['plan', file, '--json']))).toMatchObject([{ at: file }])
  })

  test('a train that is not right names its place', () => {
    const document = example('pump-and-motor', (train) => {
      const [foot] = train.machines[0]?.feet ?? []
      if (foot) foot.x = Number('1e9')
    })
    const ended = holdfast(['plan', '-', '--json'], { input: text(document) })
    expect(ended.status).toBe(2)
    expect(refusalsOf(ended).map(({ at }) => at)).toContain('machines[0].feet[0].x')
  })

  test('a model that cannot be written', () => {
    const folder = freshFolder()
    mkdirSync(join(folder, 'taken.lp'))
    const file = resolve(exampleFile('pump-and-motor'))
    for (const [out, why] of [
      ['taken.lp', /a folder/],
      ['nowhere/x.mps', /no such file or folder/],
    ] as const) {
      const ended = holdfast(['model', file, '-o', out, '--json'], { folder })
      expect(ended.status).toBe(2)
      const [refusal] = refusalsOf(ended)
      expect(refusal?.at).toBe(out)
      expect(refusal?.why).toMatch(why)
    }
  })
})

test('a reader that closes early gets no complaint, and a status that is not 0', async () => {
  const child = spawn(
    process.execPath,
    ['src/cli/holdfast.mjs', 'check', exampleFile('five-in-a-line'), '--json'],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  )
  let complaints = ''
  child.stderr.on('data', (data: Buffer) => {
    complaints += data.toString()
  })
  child.stdout.destroy()
  const status = await new Promise((done) => child.on('close', done))
  expect(complaints).toBe('')
  expect(status).toBe(3)
})
