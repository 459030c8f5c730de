// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { press } from './keys'
import { chooseExample, openSheet, page } from './sheet'
import { answering } from './workers'
import { isWhole } from '../counts'

const headline = page.locator('.sentence h1')
const panel = page.locator('.hand-panel')
const handle = (name: string) =>
  page.locator('.band-rise').getByRole('slider', { name: new RegExp(`^${name}: put by hand`) })
const undo = page.getByRole('button', { name: /^Undo/ })

test.runIf(isWhole)('the best from here plans the others where it can', async () => {
  answering('work', 'from here')
  await openSheet()
  await expect(page.locator('.foot .plates').first()).toBeShown()
  const end = handle('the motor, left end')
  await end.focus()
  await press('ArrowUp')
  await expect(headline).toHaveText(/^Put by hand/)
  await panel.getByRole('button', { name: 'Best from here' }).click()
  await expect(panel.getByRole('status')).toHaveText(
    'The others now stand where they cost least with yours left as they are.',
  )
  await expect(headline).toHaveText('Put by hand: this holds.')
  await expect(panel).toContainText(/by hand it is [\d.]+ µm more/)
  await expect(undo).toHaveName(/planned the others from here/)
})

test('held machines have no handles', async () => {
  await openSheet()
  await chooseExample('pump-and-motor.json')
  await expect(page.locator('.band-rise .handle')).toHaveCount(3)
  const names = page
    .locator('.band-rise .handle')
    .all()
    .map((one) => one.getAttribute('aria-label') ?? '')
  expect(names.join()).toMatch(/the motor, left end/)
  expect(names.join()).not.toMatch(/pump/)
})
