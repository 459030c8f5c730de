import { expect, test, type Page } from '@playwright/test'
import { focused, layOpen, savedTrain, tabTo } from './figuresPage'
import { chooseExample, openSheet, watch } from './sheet'

const moves = (page: Page) => page.locator('.moves')
const says = (page: Page) => page.locator('.cell-grid:focus-within > .cell-says')
const strain = (page: Page) =>
  page.locator('.ready-group', { hasText: 'Pipe strain' }).getByRole('listitem')

/** Waits until what is told belongs to the numbers as they stand, rounded to shims. */
async function settled(page: Page): Promise<void> {
  await expect(page.locator('.sentence.stale, .ready.old, .order.old, .stale-note')).toHaveCount(0)
  await expect(page.locator('.sentence .proof')).toContainText('Rounded')
}

/** The example with its plan rounded to shims, as it then stays, and the figures of couplings open. */
async function open(page: Page): Promise<void> {
  await openSheet(page)
  await chooseExample(page, 'piped-compressor.json')
  await settled(page)
  await layOpen(page, 'couplings')
}

/** Opens a fold by keys, from wherever the focus is. */
async function unfold(page: Page, summary: string): Promise<void> {
  await tabTo(page, summary)
  await page.keyboard.press('Enter')
}

test('an aim is entered by keys: said in words, planned, and taken back by name', async ({
  page,
}) => {
  const seen = watch(page)
  await open(page)
  const before = (await moves(page).textContent()) ?? ''
  await unfold(page, 'Aim: straight on in every state')
  await tabTo(page, /^offset up.*wanted of motor to gear, hot summer/)
  await page.keyboard.type('-100')
  await expect(says(page)).toHaveText('wanted: the step-up gear 100 µm lower than the motor')
  await expect(moves(page)).not.toHaveText(before)
  await page.keyboard.press('ArrowRight')
  expect(await focused(page)).toMatch(/^offset sideways.*hot summer/)
  await page.keyboard.type('30')
  await expect(says(page)).toContainText('toward the filter house')
  expect((await savedTrain(page)).couplings[0]?.aim).toEqual({
    'hot-summer': { offset: { z: -100, y: 30 } },
  })
  await page.getByRole('button', { name: 'Take the aims away' }).press('Enter')
  await expect(moves(page)).toHaveText(before)
  expect(seen.faults).toEqual([])
})

test('an axial gap is entered by keys: judged as found, and planned by tilting or along the train', async ({
  page,
}) => {
  const seen = watch(page)
  await open(page)
  const before = (await moves(page).textContent()) ?? ''
  await unfold(page, 'Axial gap: not entered, not checked')
  await tabTo(page, /^gap found between the shaft ends of motor to gear/)
  await page.keyboard.type('401')
  await expect(page.locator('.stale-note')).toContainText('motor to gear, axial gap, wanted')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.type('400')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.type('0.5')
  await expect(says(page)).toHaveText('1 mm too wide as found, cold, more than is allowed')
  await expect(page.locator('.stale-note')).toHaveCount(0)
  // nothing may move along yet: the shaft ends are brought apart by tilting alone, at a price
  await settled(page)
  await expect(moves(page)).not.toHaveText(before)
  await expect(moves(page)).not.toContainText('along the train')
  const tilted = (await moves(page).textContent()) ?? ''
  await layOpen(page, 'train')
  await tabTo(page, 'Motor may move along')
  await page.keyboard.press('Space')
  await expect(moves(page)).toContainText(/move the motor along the train, \d+ µm/)
  await page.keyboard.press('Control+z')
  await expect(moves(page)).toHaveText(tilted)
  await page.getByRole('button', { name: 'Take the axial gap away' }).press('Enter')
  await expect(moves(page)).toHaveText(before)
  expect(seen.faults).toEqual([])
})

test('pipe strain is entered by keys: judged against its limit, and moving waits for it', async ({
  page,
}) => {
  const seen = watch(page)
  await open(page)
  await unfold(page, 'Pipe strain: not measured')
  await tabTo(page, 'Add a flange')
  await page.keyboard.press('Enter')
  const folds = page.locator('[data-figures="couplings"] summary')
  await tabTo(page, /^movement up as flange 1 was made up, motor to gear/)
  await page.keyboard.type('-60')
  await expect(says(page)).toHaveText('the shaft moved 60 µm down')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.type('10')
  await expect(folds.filter({ hasText: 'Pipe strain: past the limit' })).toHaveCount(1)
  await expect(strain(page).first()).toContainText(/60 µm/)
  await tabTo(page, /^pipe strain allowed at motor to gear/)
  await page.keyboard.type('80')
  await expect(folds.filter({ hasText: 'Pipe strain: within the limit' })).toHaveCount(1)
  expect((await savedTrain(page)).couplings[0]?.strain).toEqual({
    limit: 80,
    flanges: [{ name: 'flange 1', z: -60, y: 10 }],
  })
  expect(seen.faults).toEqual([])
})
