import { expect, test } from 'vitest'
import { printOf } from '../../src/document/contentPrint'
import { paperCode } from '../../src/document/paperCode'
import { readCode, type CodePlace } from '../../src/document/typedCode'
import { findCode } from '../../src/app/shelf/code'
import { codeWords } from '../../src/app/shelf/codeWords'
import { labelOf } from '../../src/app/shelf/label'
import type { Shelf } from '../../src/app/shelf/shelf'
import type { TrainDocument } from '../../src/document/schema'
import { exampleOf } from '../paper/sheets'

// A code from a paper on a shelf that has, had, or never had the sheet it was printed from.

const first = exampleOf('pump-and-motor')
const worked: TrainDocument = { ...first, record: { work: [] } }
const changed: TrainDocument = { ...worked, plan: { ...worked.plan, share: 0.55 } }

const placeOf = (document: TrainDocument, step = 3): CodePlace => {
  const read = readCode(paperCode(document, step))
  if (read.is !== 'code') throw new Error(read.is)
  return read.place
}

const jobOf = (id: string, document: TrainDocument, removed?: number) => ({
  ...{ id, ...labelOf(document), mark: '', made: 1, changed: 2, revision: 1 },
  ...(removed !== undefined && { removed }),
})

/** A shelf of jobs, each by its sheets, oldest first. */
function shelfOf(jobs: Record<string, TrainDocument[]>, off: string[] = []): Shelf {
  const text = (document: TrainDocument) => JSON.stringify(document)
  const rows = Object.entries(jobs).map(([id, [sheet]]) => {
    if (!sheet) throw new Error(id)
    return jobOf(id, sheet, off.includes(id) ? 5 : undefined)
  })
  return {
    list: (_: string, removed?: boolean) =>
      Promise.resolve(rows.filter((row) => (row.removed !== undefined) === (removed ?? false))),
    load: (id: string) => {
      const [job, last] = [rows.find((row) => row.id === id), jobs[id]?.at(-1)]
      return Promise.resolve(job && last && { job, head: { text: text(last) } })
    },
    allVersions: (id: string) =>
      Promise.resolve(
        (jobs[id] ?? [])
          .map((sheet, n) => ({
            ...{ n: n + 1, what: `change ${n + 1}`, when: n, text: text(sheet) },
            print: printOf(text(sheet)),
          }))
          .toReversed(),
      ),
  } as Shelf
}

test('the sheet as it stands here is opened as it is', async () => {
  const found = await findCode(shelfOf({ a: [first, worked] }), placeOf(worked))
  expect(found).toMatchObject({ is: 'job', sheet: 'newest', since: [], job: { id: 'a' } })
  expect(codeWords(found, 9).join(' ')).toContain('printed from the sheet as it stands here')
})

test('a paper older than the sheet says how many changes came since, and whether the plan is its own', async () => {
  const shelf = shelfOf({ a: [first, worked, changed] })
  const old = await findCode(shelf, placeOf(first))
  expect(old).toMatchObject({ is: 'job', sheet: 'older', samePlan: false })
  expect(old).toMatchObject({ since: [{ what: 'change 3' }, { what: 'change 2' }] })
  const told = codeWords(old, 9).join(' ')
  expect(told).toContain('newer than the paper: 2 changes since')
  expect(told).toContain('(change 3)')
  expect(told).toContain('go by the sheet, not by the paper')
  const same = await findCode(shelfOf({ a: [first, worked] }), placeOf(first))
  expect(same).toMatchObject({ sheet: 'older', samePlan: true })
  expect(codeWords(same, 9).join(' ')).toContain('1 change since')
  expect(codeWords(same, 9).join(' ')).toContain('what is planned from is the same')
})

test('of several jobs of one train the one with that sheet is found', async () => {
  const shelf = shelfOf({ a: [changed], b: [first, worked] })
  expect(await findCode(shelf, placeOf(worked))).toMatchObject({ job: { id: 'b' } })
  expect(await findCode(shelf, placeOf(first))).toMatchObject({ job: { id: 'b' } })
})

test('a sheet from elsewhere, a train taken off and one that is not there say what to do', async () => {
  const elsewhere = await findCode(shelfOf({ a: [first] }), placeOf(changed))
  expect(elsewhere).toMatchObject({ is: 'job', sheet: 'elsewhere' })
  expect(codeWords(elsewhere, 9).join(' ')).toMatch(/cannot be told.*open the file.*Do not move/)
  const off = await findCode(shelfOf({ a: [first] }, ['a']), placeOf(first))
  expect(off.is).toBe('off')
  expect(codeWords(off, 9).join(' ')).toContain('Put it back')
  const nowhere = await findCode(shelfOf({ a: [exampleOf('twisted-base')] }), placeOf(first))
  expect(nowhere).toEqual({ is: 'nowhere' })
  expect(codeWords(nowhere, 9).join(' ')).toContain('not on this shelf')
})
