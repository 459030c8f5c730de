import { readFileSync, readdirSync } from 'node:fs'
import { glpkSolver } from '../../src/solvers/glpk'
import type { Block, PaperFootCard, Paper, PaperSize, StepCard } from '../../src/paper/page'
import { workSheet } from '../../src/paper/workSheet'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { readTrain } from '../../src/document/readTrain'

export const exampleNames = readdirSync('examples')
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''))

export const exampleOf = (name: string): TrainDocument =>
  JSON.parse(readFileSync(`examples/${name}.json`, 'utf8')) as TrainDocument

export interface Made {
  readonly train: Train
  readonly answer: PlanAnswer
  readonly paper: Paper
}

const kept = new Map<string, Made>()

/** A whole work sheet of a document, as the command line and the page make it; each is made once. */
export async function made(document: unknown, size: PaperSize = 'a4'): Promise<Made> {
  const key = `${size} ${JSON.stringify(document)}`
  const sheet = kept.get(key) ?? (await make(document, size))
  kept.set(key, sheet)
  return sheet
}

async function make(document: unknown, size: PaperSize): Promise<Made> {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const sheet = workSheet(read, await glpkSolver(), { size, date: 'printed 2026-01-02' })
  if (sheet.status === 'stopped') throw new Error(sheet.why)
  return { train: read.train, answer: sheet.answer, paper: sheet.paper }
}

export const blocksOf = (paper: Paper): Block[] => paper.pages.flatMap(({ blocks }) => [...blocks])

export const cardsOf = (paper: Paper): PaperFootCard[] =>
  blocksOf(paper).flatMap((block) => (block.kind === 'feet' ? [...block.cards] : []))

export const stepsOf = (paper: Paper): StepCard[] =>
  blocksOf(paper).flatMap((block) => (block.kind === 'step' ? [block.step] : []))

/** Every text that a page says, drawings aside. */
export const wordsOf = (paper: Paper): string =>
  JSON.stringify(paper.pages, (key, value: unknown) =>
    key === 'figure' || key === 'figures' ? undefined : value,
  )
