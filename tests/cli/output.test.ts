import { spawn, spawnSync } from 'node:child_process'
import {
  existsSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { firstOf } from '../counts'
import { fileWith, freshFolder, holdfast, refusalsOf } from './shell'
import { exampleFile, reverseDial } from './trains'

const launcher = resolve('src/cli/holdfast.mjs')
const sound = JSON.stringify(reverseDial)

/** Runs the command line with its standard output where it is put; closed after so many bytes of a pipe. */
function withOutput(words: readonly string[], out: number | 'closed') {
  return new Promise<{ status: number | null; complaints: string }>((done) => {
    const child = spawn(process.execPath, [launcher, ...words], {
      stdio: ['ignore', out === 'closed' ? 'pipe' : out, 'pipe'],
    })
    let complaints = ''
    child.stderr?.on('data', (text: Buffer) => (complaints += text.toString()))
    if (out === 'closed') child.stdout?.destroy()
    child.on('close', (status) => {
      done({ status, complaints })
    })
  })
}

describe('an answer that reaches nobody is no success', () => {
  // the device that is always full, of Linux
  const commands: readonly (readonly string[])[] = [
    ['plan', exampleFile('pump-and-motor')],
    ['plan', exampleFile('pump-and-motor'), '--json'],
    ['check', exampleFile('pump-and-motor'), '--json'],
    ['--help'],
    ['--version'],
    ['plan', 'nowhere.json', '--json'],
  ]
  const full = test.runIf(existsSync('/dev/full'))
  full.each(firstOf(commands, 2, commands.length).map((words) => [words]))(
    'a full disk: exit 3, %j',
    async (words) => {
      const ended = await withOutput(words, openSync('/dev/full', 'w'))
      expect(ended.complaints).toBe(
        'stopped: standard output cannot be written: the disk is full\n',
      )
      expect(ended.status).toBe(3)
    },
  )

  test('a reader that has gone: exit 3, and nothing to complain of', async () => {
    const ended = await withOutput(['plan', exampleFile('pump-and-motor'), '--json'], 'closed')
    expect(ended).toEqual({ status: 3, complaints: '' })
  })
})

// what /proc tells is known on Linux alone
describe.runIf(process.platform === 'linux')('standard output that is closed', () => {
  const command = `'${process.execPath}' '${launcher}' check '${exampleFile('pump-and-motor')}'`
  const closed = { status: 3, why: 'stopped: standard output is closed: the answer reached nobody' }
  const answered = { status: 0, why: '' }
  /** Ends of the command within a line of a shell, which tells its exit status on standard error, last. */
  const inShell = (line: string, out: 'pipe' | 'ignore' = 'pipe') => {
    const { stderr } = spawnSync('sh', ['-c', `${line}; echo "$?" >&2`], {
      stdio: ['ignore', out, 'pipe'],
      encoding: 'utf8',
    })
    const lines = stderr.trim().split('\n')
    return { status: Number(lines.pop()), why: lines.join() }
  }

  const lines: [name: string, line: string, ended: typeof closed][] = [
    ['closed by a shell', `${command} >&-`, closed],
    ['closed in a script, and so for all in it', `exec >&-; ${command}`, closed],
    ['closed for a shell within it', `sh -c "${command}; exit \\$?" >&-`, closed],
    ['thrown away by a shell', `${command} >/dev/null`, answered],
    ['read by another', `(${command}; exit $?) | cat >/dev/null`, answered],
  ]
  test.each(firstOf(lines, 1, lines.length))('%s', (_, line, ended) => {
    expect(inShell(line)).toEqual(ended)
  })

  test('thrown away by the program that began it, which opens it for reading too', () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      [launcher, 'check', exampleFile('pump-and-motor')],
      { stdio: ['ignore', 'ignore', 'pipe'], encoding: 'utf8' },
    )
    expect({ status, why: stderr }).toEqual(answered)
    expect(inShell(command, 'ignore')).toEqual(answered)
  })
})

describe('the train file is never written over', () => {
  const written = (name: string): string => fileWith(sound, name)
  const beside = (file: string, name: string): string => join(dirname(file), name)

  test.each([
    ['by its own name', (file: string) => file],
    ['by another path', (file: string) => `${dirname(file)}/deep/../train.lp`],
    [
      'through a symbolic link',
      (file: string) => {
        symlinkSync(file, beside(file, 'link.lp'))
        return beside(file, 'link.lp')
      },
    ],
    [
      'through a second name',
      (file: string) => {
        linkSync(file, beside(file, 'second.mps'))
        return beside(file, 'second.mps')
      },
    ],
  ])('%s', (_, outOf) => {
    const file = written('train.lp')
    mkdirSync(join(dirname(file), 'deep'))
    const out = outOf(file)
    const ended = holdfast(['model', file, '-o', out, '--json'])
    expect(ended.status).toBe(2)
    expect(refusalsOf(ended)).toEqual([
      { at: out, why: 'this is the train file itself: give another file to write' },
    ])
    expect(readFileSync(file, 'utf8')).toBe(sound)
  })

  test('by its name counted from the folder, as a sheet, and where it comes by standard input', async () => {
    const file = written('train.html')
    const [folder, name] = [dirname(file), 'train.html']
    expect(holdfast(['sheet', file, '-o', `./${name}`], { folder }).status).toBe(2)
    const child = spawn(process.execPath, [launcher, 'sheet', '-', '-o', file], {
      stdio: [openSync(file, 'r'), 'ignore', 'ignore'],
    })
    const status = await new Promise((done) => child.on('close', done))
    expect(status).toBe(2)
    expect(readFileSync(file, 'utf8')).toBe(sound)
  })

  test('but another file that is there already is', () => {
    const file = written('train.json')
    const out = beside(file, 'old.lp')
    writeFileSync(out, 'old')
    expect(holdfast(['model', file, '-o', out]).status).toBe(0)
    expect(readFileSync(out, 'utf8')).toContain('Minimize')
  })
})

describe('names', () => {
  test.each([
    [['plan', ''], 'FILE'],
    [['model', exampleFile('pump-and-motor'), '-o', ''], '-o'],
  ])('an empty one is said to be empty: %j', (words, at) => {
    const ended = holdfast([...words, '--json'])
    expect(ended.status).toBe(2)
    expect(refusalsOf(ended)).toMatchObject([{ at, why: /^empty: give the name/ }])
  })

  test('and texts steer no terminal, wherever they are told', () => {
    const name = 'a\u001b[31m\u202eb.json'
    const missing = holdfast(['plan', name])
    expect(missing.complaints).toBe(
      'refused: a\ufffd[31m\ufffdb.json: no such file or folder: check the name\n',
    )
    const json = holdfast(['plan', name, '--json'])
    expect(json.out).toContain('a\\u001b[31m\\u202eb.json')
    expect(refusalsOf(json)[0]?.at).toBe(name)
    const folder = freshFolder()
    writeFileSync(join(folder, 'train.json'), sound)
    const out = holdfast(['model', 'train.json', '-o', 'a\u001bb.lp'], { folder })
    expect(out.out).toContain('Wrote a\ufffdb.lp:')
  })
})
