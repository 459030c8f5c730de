// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { press, typeText } from './keys'
import { nameOf } from './names'
import { layOpen, openSheet, page, savedTrain } from './sheet'
import { answering } from './workers'
import { isWhole } from '../counts'

const moves = page.locator('.moves')
/** What is said of the number that is being entered. */
const says = page
  .locator('.cell-grid > .cell-says')
  .within('of the cell', (all) =>
    all.filter((one) => one.parentElement?.contains(document.activeElement)),
  )
const strain = page.locator('.ready-group', { hasText: 'Pipe strain' }).getByRole('listitem')

/** Goes into the cell of this name. */
const into = (name: RegExp) => page.getByLabel(name).first().focus()

/** Waits until what is told belongs to the numbers as they stand, rounded to shims. */
async function settled(): Promise<void> {
  await expect(page.locator('.sentence.stale, .ready.old, .order.old, .stale-note')).toHaveCount(0)
  await expect(page.locator('.sentence .proof').last()).toContainText('Rounded')
}

/** The example with its plan rounded to shims, as it then stays, and the figures of couplings open. */
async function open(): Promise<void> {
  answering('work')
  await openSheet()
  await settled()
  await layOpen('couplings')
}

test.runIf(isWhole)(
  'an aim is entered: said in words, planned, and taken back by name',
  async () => {
    await open()
    const before = await moves.textContent()
    await page.getByText('Aim: straight on in every state', { exact: true }).first().click()
    await into(/^offset up.*wanted of motor to gear, hot summer/)
    await typeText('-100')
    await expect(says).toHaveText('wanted: the step-up gear 100 µm lower than the motor')
    await expect(moves).not.toHaveText(before)
    await press('ArrowRight')
    expect(nameOf(document.activeElement ?? document.body)).toMatch(/^offset sideways.*hot summer/)
    await typeText('30')
    await expect(says).toContainText('toward the filter house')
    expect((await savedTrain()).couplings[0]?.aim).toEqual({
      'hot-summer': { offset: { z: -100, y: 30 } },
    })
    await page.getByRole('button', { name: 'Take the aims away' }).press('Enter')
    await expect(moves).toHaveText(before)
  },
)

test.runIf(isWhole)(
  'an axial gap is entered: judged as found, and planned by tilting or along the train',
  async () => {
    await open()
    const before = await moves.textContent()
    await page.getByText('Axial gap: not entered, not checked', { exact: true }).first().click()
    await into(/^gap found between the shaft ends of motor to gear/)
    await typeText('401')
    await expect(page.locator('.stale-note')).toContainText('motor to gear, axial gap, wanted')
    await press('ArrowRight')
    await typeText('400')
    await press('ArrowRight')
    await typeText('0.5')
    await expect(says).toHaveText('1 mm too wide as found, cold, more than is allowed')
    await expect(page.locator('.stale-note')).toHaveCount(0)
    // nothing may move along yet: the shaft ends are brought apart by tilting alone, at a price
    await settled()
    await expect(moves).not.toHaveText(before)
    await expect(moves).not.toContainText('along the train')
    const tilted = await moves.textContent()
    await layOpen('train')
    await page.getByLabel('Motor may move along', { exact: true }).check()
    await expect(moves).toContainText(/move the motor along the train, \d+ µm/)
    await press('Control+z')
    await expect(moves).toHaveText(tilted)
    await page.getByRole('button', { name: 'Take the axial gap away' }).press('Enter')
    await expect(moves).toHaveText(before)
  },
)

test.runIf(isWhole)(
  'pipe strain is entered: judged against its limit, and moving waits for it',
  async () => {
    await open()
    await page.getByText('Pipe strain: not measured', { exact: true }).first().click()
    await page.getByRole('button', { name: 'Add a flange' }).first().click()
    const folds = page.locator('[data-figures="couplings"] summary')
    await into(/^movement up as flange 1 was made up, motor to gear/)
    await typeText('-60')
    await expect(says).toHaveText('the shaft moved 60 µm down')
    await press('ArrowRight')
    await typeText('10')
    await expect(folds.filter({ hasText: 'Pipe strain: past the limit' })).toHaveCount(1)
    await expect(strain.first()).toContainText(/60 µm/)
    await into(/^pipe strain allowed at motor to gear/)
    await typeText('80')
    await expect(folds.filter({ hasText: 'Pipe strain: within the limit' })).toHaveCount(1)
    expect((await savedTrain()).couplings[0]?.strain).toEqual({
      limit: 80,
      flanges: [{ name: 'flange 1', z: -60, y: 10 }],
    })
  },
)

test('a tolerance judged as a box warns how much further its diagonal reaches; a round one does not', async () => {
  await open()
  // the corner of a square against the circle within it: the square root of 2
  const further = new RegExp(`diagonal may reach ${Math.round((Math.SQRT2 - 1) * 100)} % further`)
  await expect(page.getByText(further)).toHaveCount(0)
  await page.getByLabel('shape of the tolerance of motor to gear').selectOption('box')
  await expect(page.getByText(further)).toHaveCount(1)
  // a file without a shape means a box
  expect((await savedTrain()).couplings[0]?.tolerance).toEqual({ flex: 0.8 })
})
