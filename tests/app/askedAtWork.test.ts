// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { exampleText, openSheet, openText, page } from './sheet'
import { answering } from './workers'

test('an amount beyond what feet are moved is asked about where it is typed with gloves, and answered there', async () => {
  answering('work')
  await openSheet()
  const train = JSON.parse(exampleText('bolt-bound-gearbox.json')) as TrainDocument
  await openText('train.json', JSON.stringify(train))
  await expect(page.locator('.train-name')).toHaveText(train.name)
  await expect(page.locator('.step-list')).toBeShown()
  await page.getByRole('button', { name: 'At the machine', exact: true }).click()
  const panel = page.locator('.foot-work .number-panel')
  await expect(panel).toBeShown()
  const box = panel.getByLabel(/^really/)
  await box.fill('61')
  await expect(panel.locator('.asks')).toHaveCount(0)
  // ten digits where two were meant
  await box.fill('61000')
  const asks = panel.locator('.asks')
  await expect(asks).toContainText(
    '61\u00a0mm under the foot: more than 10\u00a0mm. Is that right?',
  )
  await asks.getByRole('button', { name: 'Yes, it is right' }).click()
  await expect(asks).toHaveCount(0)
  await expect(page.locator('.machine-face')).not.toContainText(
    'nobody has said that this is right',
  )
  // another value is asked about anew
  await box.fill('62000')
  await expect(asks).toContainText('62\u00a0mm under the foot')
})
