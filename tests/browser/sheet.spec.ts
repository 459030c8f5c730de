import { expect, test } from '@playwright/test'
import {
  chooseExample,
  drawn,
  dropText,
  exampleFiles,
  exampleText,
  openSheet,
  openText,
  watch,
} from './sheet'

test('an example stands on the sheet at first sight', async ({ page }) => {
  const seen = watch(page)
  await openSheet(page)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Hold the air compressor.')
  for (const band of ['Train', 'Rise', 'Side', 'Feet', 'Couplings'])
    await expect(page.getByRole('heading', { name: band, level: 2, exact: true })).toBeVisible()
  expect(seen.faults).toEqual([])
})

for (const file of exampleFiles)
  test(`${file} opens, planned and proven`, async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await chooseExample(page, file)
    const document = JSON.parse(exampleText(file)) as {
      machines: { name: string; feet: unknown[] }[]
      skids?: { feet: unknown[] }[]
      couplings: { name: string }[]
      states?: unknown[]
    }
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      /^(Hold .*|Nothing needs to move)\.$/,
    )
    await expect(page.locator('.heads h3')).toHaveText(document.machines.map(({ name }) => name))
    const feet = [...document.machines, ...(document.skids ?? [])].flatMap((body) => body.feet)
    await expect(page.locator('.foot')).toHaveCount(feet.length)
    await expect(page.locator('.coupling h3')).toHaveText(
      document.couplings.map(({ name }) => name),
    )
    await expect(page.locator('.state-rows li')).toHaveCount(
      document.couplings.length * (document.states?.length ?? 1),
    )
    await expect(page.locator('.caution')).toBeVisible()
    expect(seen.faults).toEqual([])
  })

test('a machine is held and let go by pressing its stakes', async ({ page }) => {
  const seen = watch(page)
  await openSheet(page)
  await chooseExample(page, 'bolt-bound-gearbox.json')
  const headline = page.getByRole('heading', { level: 1 })
  await expect(headline).toHaveText('Hold the low-stage compressor.')
  const before = await page.locator('.moves').textContent()
  // machines in train order: the turbine's stakes are the first
  await page.locator('.stakes-press').nth(1).click()
  await expect(headline).toHaveText('Nothing is held.')
  await page.locator('.stakes-press').nth(0).click()
  await expect(headline).toHaveText('Hold the steam turbine.')
  await expect(page.locator('.moves')).not.toHaveText(before ?? '')
  await expect(page.locator('.band-name p', { hasText: 'axis of the steam turbine' })).toHaveCount(
    2,
  )
  await page.locator('.stakes-press').nth(0).click()
  await page.locator('.stakes-press').nth(1).click()
  await expect(headline).toHaveText('Hold the low-stage compressor.')
  await expect(page.locator('.moves')).toHaveText(before ?? '')
  expect(seen.faults).toEqual([])
})

test('a machine is held and let go by keys', async ({ page }) => {
  await openSheet(page)
  await chooseExample(page, 'bolt-bound-gearbox.json')
  const turbine = page.locator('.holds .hold').nth(0)
  await turbine.focus()
  await expect(turbine).toHaveAttribute('aria-pressed', 'false')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    /Hold(ing)? the steam turbine and the low-stage compressor/i,
  )
  await expect(turbine).toBeFocused()
  await page.keyboard.press('Space')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Hold the low-stage compressor.')
  await expect(turbine).toHaveAttribute('aria-pressed', 'false')
})

test('a skid is held and let go like a machine', async ({ page }) => {
  await openSheet(page)
  await chooseExample(page, 'skid-as-one.json')
  const skid = page.locator('.holds .hold', { hasText: 'Bedplate' })
  await expect(skid).toHaveAttribute('aria-pressed', 'false')
  await skid.click()
  await expect(skid).toHaveAttribute('aria-pressed', 'true')
  // everything is held now: no plan, no plan numbers, what was found stays
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/no move reaches less than/)
  await expect(page.locator('.foot .do b')).toHaveCount(0)
  await expect(page.locator('.gate-group')).toHaveCount(0)
  await expect(page.locator('.coupling .over').first()).toBeVisible()
})

test('an anchored machine stays, and says why', async ({ page }) => {
  await openSheet(page)
  await chooseExample(page, 'pump-and-motor.json')
  const pump = page.locator('.holds .hold').nth(1)
  await expect(pump).toHaveAttribute('aria-disabled', 'true')
  await expect(page.locator('.holds .why')).toHaveText(/piped on both sides and dowelled/)
  await pump.click({ force: true })
  await drawn(page)
  await expect(pump).toHaveAttribute('aria-pressed', 'true')
  await expect(page.locator('.stakes-press').nth(1)).toBeDisabled()
})

test('every share typed or stepped replans at once', async ({ page }) => {
  await openSheet(page)
  const field = page.getByLabel('Share in percent')
  await field.fill('85')
  await expect(page.locator('.proof')).toHaveText(/needs less than 1\d\d\d µm/)
  const relaxed = await page.locator('.proof').textContent()
  await field.press('ArrowDown')
  await expect(field).toHaveValue('84')
  await expect(page.locator('.key .says')).toContainText('84 %')
  await expect(page.locator('.proof')).not.toHaveText(relaxed ?? '')
  const slider = page.locator('.ledger').getByRole('slider')
  await slider.press('ArrowLeft')
  await expect(field).toHaveValue('83')
  await expect(page.locator('.key .says')).toContainText('83 %')
  // under the floor there is no plan, and the sentence says what can be reached
  await field.fill('40')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    /^Holding the air compressor, no move reaches less than 60 %/,
  )
  await field.fill('20')
  await expect(page.getByText('from 30 to 100')).toBeVisible()
  await field.blur()
  await expect(field).toHaveValue('40')
})

test('many changes in a row end with the plan of the last one', async ({ page }) => {
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
  await expect(page.getByLabel('Share in percent')).toHaveValue('85')
  await expect(page.locator('.key .says')).toContainText('85 %')
  // plans of other shares may have been made ahead; that of another hold has to be worked out
  await page.locator('.holds .hold').first().press('Enter')
  await drawn(page)
  const said = await page.evaluate(() => (window as unknown as { said: string[] }).said)
  expect(said.join()).toContain('working out the new plan; what you see is the one before')
  expect(seen.faults).toEqual([])
})

test('a dropped file is opened; a bad one is refused, and the sheet stays', async ({ page }) => {
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
  await page.getByLabel('Share in percent').fill('90')
  await expect(page.locator('.key .says')).toContainText('90 %')
  await note.getByRole('button', { name: 'Put it away' }).click()
  await expect(note).toHaveCount(0)
  expect(seen.faults).toEqual([])
})

test('text that is no train file at all is refused with its place', async ({ page }) => {
  await openSheet(page)
  await openText(page, 'torn.json', '{\n  "format": "holdfast-train",\n  "version": ')
  await expect(page.getByRole('alert')).toContainText('the whole file')
  await expect(page.getByRole('alert')).toContainText(/line 3/)
  // a good file puts the refusal away by itself
  await openText(page, 'good.json', exampleText('leave-it-alone.json'))
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing needs to move.')
  await expect(page.getByRole('alert')).toHaveCount(0)
})

test('a state is looked at alone, and gates say what sets them', async ({ page }) => {
  await openSheet(page)
  const lines = page.locator('.band-rise .chart svg > path.state')
  const every = await lines.count()
  const states = page.getByRole('radio')
  await states.first().focus()
  await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('radio', { name: 'cold start' })).toBeChecked()
  await expect(lines).toHaveCount(every / 4)
  await page.keyboard.press('ArrowLeft')
  await expect(lines).toHaveCount(every)
  const gates = page.locator('.band-rise .gate-group')
  await gates.first().focus()
  await expect(page.locator('.key .says')).toHaveText(/^motor to gear: .* \(set by .*\)$/)
  const first = await page.locator('.key .says').textContent()
  await page.keyboard.press('ArrowRight')
  await expect(gates.nth(1)).toBeFocused()
  await expect(page.locator('.key .says')).not.toHaveText(first ?? '')
  await page.keyboard.press('Escape')
  await expect(page.locator('.key .says')).toContainText('Posts are gates')
})

test('night and day are switched, and kept', async ({ page }) => {
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
