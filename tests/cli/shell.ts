import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

const launcher = resolve('src/cli/holdfast.mjs')

/** A run ends within a second: compiling less and later takes a third less time, and gives the same answer. */
const quick = ['--sparkplug', '--liftoff-only', '--interrupt-budget=1000000']

export interface Ended {
  status: number | null
  out: string
  complaints: string
}

/** Runs the real command line in a process of its own. */
export function holdfast(
  words: readonly string[],
  { input = '', folder = process.cwd() }: { input?: string | Buffer; folder?: string } = {},
): Ended {
  const env = { ...process.env }
  delete env.npm_lifecycle_event
  const ended = spawnSync(process.execPath, [...quick, launcher, ...words], {
    cwd: folder,
    env,
    input,
    encoding: 'utf8',
    maxBuffer: 50_000_000,
  })
  return { status: ended.status, out: ended.stdout, complaints: ended.stderr }
}

/** An empty folder of this run. */
export const freshFolder = (): string => mkdtempSync(join(tmpdir(), 'holdfast-cli-'))

export function fileWith(content: string | Buffer, name = 'train.json'): string {
  const file = join(freshFolder(), name)
  writeFileSync(file, content)
  return file
}

/** The refusals of a `--json` answer, and that nothing else stands in it. */
export function refusalsOf({ out }: Ended): { at: string; why: string }[] {
  const answer = JSON.parse(out) as { refused: { at: string; why: string }[] }
  if (Object.keys(answer).join() !== 'refused') throw new Error(`not a refusal: ${out}`)
  return answer.refused
}
