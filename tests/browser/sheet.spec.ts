import { expect, test } from '@playwright/test'
import { chooseExample, drawn, dropText, exampleText, openSheet, watch } from './sheet'

// what every example says on the sheet is asked in tests/app, how it is laid out in look.spec.ts
test(
  'an example stands on the sheet at first sight, and another opens',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      'Leave the air compressor fixed.',
    )
    for (const band of ['Train', 'Rise', 'Side', 'Feet', 'Couplings'])
      await expect(page.getByRole('heading', { name: band, level: 2, exact: true })).toBeVisible()
    await chooseExample(page, 'bolt-bound-gearbox.json')
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      'Leave the low-stage compressor fixed.',
    )
    await expect(page.locator('.caution')).toBeVisible()
    expect(seen.faults).toEqual([])
  },
)

test(
  'many changes in a row end with the plan of the last one',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    // what the status says while plans are under way
    await page.evaluate(() => {
      const said: string[] = []
      Object.assign(window, { said })
      const status = document.querySelector('.status')
      if (status)
        new MutationObserver(() => said.push(status.textContent)).observe(status, {
          childList: true,
          subtree: true,
          characterData: true,
        })
    })
    // the point of the curve takes the place of a plain slider once the curve is there
    await expect(page.locator('.curve canvas')).toBeVisible()
    const slider = page.locator('.ledger').getByRole('slider')
    await slider.focus()
    for (let i = 0; i < 15; i++) await page.keyboard.press('ArrowRight')
    await drawn(page)
    await expect(page.getByLabel('Tolerance to use at most in percent')).toHaveValue('85')
    await expect(page.locator('.key .says')).toContainText('85 %')
    // plans of other shares may have been made ahead; that of another hold has to be worked out
    await page.locator('.holds .hold').first().press('Enter')
    await drawn(page)
    const said = await page.evaluate(() => (window as unknown as { said: string[] }).said)
    expect(said.join()).toContain('working out the new plan; what you see is the one before')
    expect(seen.faults).toEqual([])
  },
)

test(
  'a dropped file is opened; a bad one is refused, and the sheet stays',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await dropText(page, 'mine.json', exampleText('pump-and-motor.json'))
    await expect(page.locator('.train-name')).toHaveText('Hot water circulating pump')
    const bad = JSON.parse(exampleText('pump-and-motor.json')) as {
      machines: { feet: { x: unknown }[] }[]
      couplings: { tolerance: { flex: number } }[]
    }
    const foot = bad.machines[0]?.feet[0]
    const coupling = bad.couplings[0]
    if (!foot || !coupling) throw new Error('the example lacks parts')
    foot.x = 'four'
    coupling.tolerance.flex = -1
    await dropText(page, 'bad.json', JSON.stringify(bad))
    const note = page.getByRole('alert')
    await expect(note.getByRole('heading')).toHaveText('bad.json was not opened')
    await expect(note.locator('code')).toHaveText([
      'machines[0].feet[0].x',
      'couplings[0].tolerance.flex',
    ])
    await expect(note).toContainText('four')
    await note.getByText('Look at the text').click()
    await expect(note.locator('pre')).toContainText('"four"')
    // the last good sheet is still there, and can still be worked with
    await expect(page.locator('.train-name')).toHaveText('Hot water circulating pump')
    await expect(page.locator('.foot')).toHaveCount(8)
    await page.getByLabel('Tolerance to use at most in percent').fill('90')
    await expect(page.locator('.key .says')).toContainText('90 %')
    await note.getByRole('button', { name: 'Put it away' }).click()
    await expect(note).toHaveCount(0)
    expect(seen.faults).toEqual([])
  },
)

test('night and day are switched, and kept', { tag: '@whole' }, async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' })
  await openSheet(page)
  const paper = () =>
    page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor)
  expect(await paper()).toBe('rgb(18, 24, 31)')
  await page.getByRole('button', { name: 'Day colours' }).click()
  expect(await paper()).toBe('rgb(247, 244, 236)')
  await page.reload()
  await drawn(page)
  expect(await paper()).toBe('rgb(247, 244, 236)')
})
