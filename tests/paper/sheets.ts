import { readFileSync, readdirSync } from 'node:fs'
import { glpkSolver } from '../../src/solvers/glpk'
import type { PaperJob } from '../../src/paper/job'
import type {
  Block,
  PaperFootCard,
  Paper,
  PaperSize,
  PrintFor,
  StepCard,
} from '../../src/paper/page'
import { paperOf } from '../../src/paper/paperOf'
import { workSheet } from '../../src/paper/workSheet'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { readTrain } from '../../src/document/readTrain'
import { firstOf } from '../counts'

export const exampleNames = readdirSync('examples')
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''))

/** Those that the usual run looks at in full; all of them in the whole one. */
export const someExamples = firstOf(exampleNames, 1, exampleNames.length)

export const exampleOf = (name: string): TrainDocument =>
  JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as TrainDocument

export interface Made {
  readonly train: Train
  readonly answer: PlanAnswer
  readonly paper: Paper
}

const kept = new Map<string, Promise<PaperJob>>()
const date = 'printed 2026-01-02'

/** A print of a document's work sheet, as the command line and the page make it; each is planned once. */
export async function made(
  document: unknown,
  size: PaperSize = 'a4',
  print: PrintFor = 'crew',
): Promise<Made> {
  const key = JSON.stringify(document)
  const planned = kept.get(key) ?? plan(document)
  kept.set(key, planned)
  const job = await planned
  return { train: job.train, answer: job.answer, paper: paperOf(job, { size, print, date }) }
}

async function plan(document: unknown): Promise<PaperJob> {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const settings = { size: 'a4', print: 'crew', date } as const
  const sheet = workSheet(read, await glpkSolver(), settings)
  if (sheet.status === 'stopped') throw new Error(sheet.why)
  return sheet.job
}

/** All blocks of a print, those that stand beside each other too. */
export const blocksOf = (paper: Paper): Block[] =>
  paper.pages.flatMap(({ blocks }) => blocks.flatMap(inner))

const inner = (block: Block): Block[] =>
  block.kind === 'beside' ? block.parts.flatMap(({ blocks }) => blocks.flatMap(inner)) : [block]

export const cardsOf = (paper: Paper): PaperFootCard[] =>
  blocksOf(paper).flatMap((block) => (block.kind === 'feet' ? [...block.cards] : []))

/** Steps in their order; one that goes on over the page is one again, and must say so where it is left. */
export function stepsOf(paper: Paper): StepCard[] {
  const steps: StepCard[] = []
  for (const block of blocksOf(paper)) {
    if (block.kind !== 'step') continue
    const last = steps.at(-1)
    if (last?.id !== block.step.id) steps.push(block.step)
    else if (last.over === undefined) throw new Error(`${last.id} does not say that it goes on`)
    else {
      const { expected, stop, sign } = block.step
      steps[steps.length - 1] = { ...last, expected, sign, ...(stop !== undefined && { stop }) }
    }
  }
  return steps
}

/** Every text that a page says, drawings aside. */
export const wordsOf = (paper: Paper): string =>
  JSON.stringify(paper.pages, (key, value: unknown) =>
    key === 'figure' || key === 'figures' ? undefined : value,
  )
