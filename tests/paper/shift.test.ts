import { expect, test } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import type { WorkDone } from '../../src/document/work'
import { workCards } from '../../src/engine/fieldwork/steps/cards'
import { instructionsOf } from '../../src/engine/fieldwork/steps/instructions'
import { displayedPlan } from '../../src/engine/fieldwork/displayed'
import { hasMoves } from '../../src/engine/plan/moves'
import { blocksOf, someExamples, exampleOf, made, type Made } from './sheets'
import { isWhole } from '../counts'

// The page that one shift leaves to the next: what is done, begun, next and not to be touched, from the record alone.

const example = exampleOf('bolt-bound-gearbox')

/** The cards of the plan's steps, as they are ticked at the machine. */
async function cardsFor(document: TrainDocument) {
  const { train, answer } = await made(document)
  const shown = displayedPlan(answer)
  if (!hasMoves(shown) || !shown.steps) throw new Error('no steps')
  return workCards(train, instructionsOf(train, shown.steps))
}

const withWork = (work: readonly WorkDone[]): TrainDocument => ({ ...example, record: { work } })

const tick = (step: string, body: string, foot: string | undefined, shim?: number): WorkDone => ({
  ...{ step, body, done: true, by: 'A. Berg', when: '2026-03-02T14:05:09.123Z' },
  ...(foot !== undefined && { foot }),
  ...(shim !== undefined && { shim }),
})

/** What stands in the box of a title; nothing where there is none. */
const boxOf = ({ paper }: Made, title: string): string =>
  blocksOf(paper)
    .flatMap((block) => (block.kind === 'box' && block.title === title ? block.items : []))
    .join(' ')

const listed = ({ paper }: Made): string[] =>
  blocksOf(paper).flatMap((block) => (block.kind === 'list' ? block.items : []))

test('a job that nobody began has nothing half done, and says what comes first', async () => {
  const page = await made(example, 'a4', 'shift')
  expect(boxOf(page, 'BEGUN AND NOT FINISHED')).toBe('')
  expect(boxOf(page, 'NEXT')).toBe('What the readings mean: 0 of 3 confirmed.')
  expect(boxOf(page, 'MUST NOT BE TOUCHED')).toMatch(/^The low-stage compressor: fixed\. /)
  expect(listed(page)).toContain('waits: Step 1. Step-up gear: shims')
  expect(listed(page)).not.toContainEqual(expect.stringMatching(/^done/))
})

test('a step half done says which feet are, with what was measured, and which are not', async () => {
  const page = await made(withWork([tick('gear:vertical', 'gear', '1 lake', 60)]), 'a4', 'shift')
  const begun = boxOf(page, 'BEGUN AND NOT FINISHED')
  expect(begun).toMatch(/^Step 1\. Shim the step-up gear/)
  expect(begun).toContain('Done: foot 1 lake (shims +60 µm, by A. Berg).')
  expect(begun).toMatch(/Not done: foot 1 workshop.* and its stop point\./)
  expect(begun).not.toMatch(/Not done:[^.]*1 lake/)
  expect(begun).toContain('which of its bolts are loose')
  expect(listed(page)).toContain(
    'begun: Step 1. Step-up gear: shims (A. Berg, 2026-03-02 14:05:09 UTC)',
  )
})

test.runIf(isWhole)(
  'a machine whose steps are all done is not to be touched, and its steps are done',
  async () => {
    const cards = await cardsFor(example)
    const gear = cards.filter(({ instruction }) => instruction.body === 'gear')
    const work = gear.map((card) =>
      tick(card.instruction.id, 'gear', card.kind === 'foot' ? card.feet[0] : undefined),
    )
    const page = await made(withWork(work), 'a4', 'shift')
    expect(boxOf(page, 'BEGUN AND NOT FINISHED')).toBe('')
    expect(boxOf(page, 'MUST NOT BE TOUCHED')).toContain(
      'The step-up gear: all that was to move there is done. Packs and bolts stay as they are.',
    )
    expect(boxOf(page, 'MUST NOT BE TOUCHED')).not.toMatch(/steam turbine: all/i)
    expect(listed(page).filter((item) => item.startsWith('done: Step'))).toHaveLength(3)
  },
)

test.each(someExamples)(
  'the page of %s is one, of the revision of the other prints',
  async (name) => {
    const document = exampleOf(name)
    const [crew, page] = [await made(document), await made(document, 'a4', 'shift')]
    expect(page.paper.pages).toHaveLength(1)
    expect(page.paper.revision).toBe(crew.paper.revision)
    expect(page.paper.pages[0]?.title).toBe('Where the work stands')
  },
)
