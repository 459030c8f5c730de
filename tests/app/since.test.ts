import { useSheet } from './sheet'

useSheet()
// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { Random } from '../second/random'
import { readAfter } from '../since/walking'
import { drawn, openSheet, openText, page } from './sheet'
import { settle } from './place'
import { answering } from './workers'
import { isWhole } from '../counts'

const random = new Random(11)
const left = JSON.stringify(readAfter(random))
const found = JSON.stringify(
  readAfter(random, { machine: 2, left: { y: 0, z: -160 }, right: { y: 120, z: -140 } }),
)
const since = page.locator('.since')

async function compareWith(name: string, text: string): Promise<void> {
  const input = await since.locator('input[type=file]').one()
  const file = new File([text], name, { type: 'application/json' })
  Object.defineProperty(input, 'files', { configurable: true, value: [file] })
  input.dispatchEvent(new Event('change', { bubbles: true }))
  await settle()
}

test.runIf(isWhole)(
  'the file of the last time says which machine walked; one that is no train says why not',
  async () => {
    answering('work')
    await openSheet()
    await openText('found.json', found)
    await expect(page.locator('.train-name')).toHaveText('Five machines that may walk')
    await drawn()
    await expect(since).toContainText('says which machine walked since then')
    await compareWith('left.json', left)
    await expect(since).toContainText('One thing explains all that changed. Against left.json.')
    await expect(since.locator('li').first()).toHaveText(
      /^The machine 2 walked: left feet 1\d\d µm \(±\d+ µm\) lower/,
    )
    await compareWith('notes.json', '{"format": "other"}')
    await expect(since).toContainText('notes.json cannot be compared.')
    await expect(since).not.toContainText('walked:')
    // the train on the sheet is as it was
    await expect(page.locator('.train-name')).toHaveText('Five machines that may walk')
  },
)
