// @vitest-environment happy-dom
import { readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import { point, press, typeText } from './keys'
import { chooseExample, drawn, exampleText, openSheet, openText, page } from './sheet'
import { isWhole, firstOf } from '../counts'

const exampleFiles = readdirSync('examples').filter((file) => file.endsWith('.json'))

test('an example stands on the sheet at first sight', async () => {
  await openSheet()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    'Leave the air compressor fixed.',
  )
  for (const band of ['Train', 'Rise', 'Side', 'Feet', 'Couplings'])
    await expect(page.getByRole('heading', { name: band, level: 2, exact: true })).toBeShown()
})

for (const file of firstOf(exampleFiles, 2, exampleFiles.length))
  test(`${file} opens, planned and proven`, async () => {
    await openSheet()
    await chooseExample(file)
    const document = JSON.parse(exampleText(file)) as {
      machines: { name: string; feet: unknown[] }[]
      skids?: { feet: unknown[] }[]
      couplings: { name: string }[]
      states?: unknown[]
    }
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      /^(Leave .* fixed|Move .* alone|Nothing needs to move)\.$/,
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
    await expect(page.locator('.caution')).toBeShown()
  })

test('a machine is held and let go by pressing its stakes', async () => {
  await openSheet()
  await chooseExample('bolt-bound-gearbox.json')
  const headline = page.getByRole('heading', { level: 1 })
  await expect(headline).toHaveText('Leave the low-stage compressor fixed.')
  const before = await page.locator('.moves').textContent()
  // machines in train order: the turbine's stakes are the first
  await page.locator('.stakes-press').nth(1).click()
  await expect(headline).toHaveText('Nothing is fixed.')
  await page.locator('.stakes-press').nth(0).click()
  await expect(headline).toHaveText('Leave the steam turbine fixed.')
  await expect(page.locator('.moves')).not.toHaveText(before)
  await expect(page.locator('.band-name p', { hasText: 'axis of the steam turbine' })).toHaveCount(
    2,
  )
  await page.locator('.stakes-press').nth(0).click()
  await page.locator('.stakes-press').nth(1).click()
  await expect(headline).toHaveText('Leave the low-stage compressor fixed.')
  await expect(page.locator('.moves')).toHaveText(before)
})

test('a skid is held and let go like a machine', async () => {
  await openSheet()
  await chooseExample('skid-as-one.json')
  const skid = page.locator('.holds .hold', { hasText: 'Bedplate' })
  await expect(skid).toHaveAttribute('aria-pressed', 'false')
  await skid.click()
  await expect(skid).toHaveAttribute('aria-pressed', 'true')
  // everything is held now: no plan, no plan numbers, what was found stays
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/the best reachable is/)
  await expect(page.locator('.foot .do b')).toHaveCount(0)
  await expect(page.locator('.gate-group')).toHaveCount(0)
  await expect(page.locator('.coupling .over').first()).toBeShown()
})

test('an anchored machine stays, and says why', async () => {
  await openSheet()
  await chooseExample('pump-and-motor.json')
  const pump = page.locator('.holds .hold').nth(1)
  await expect(pump).toHaveAttribute('aria-disabled', 'true')
  await expect(page.locator('.holds .why')).toHaveText(/piped on both sides and dowelled/)
  await pump.click()
  await drawn()
  await expect(pump).toHaveAttribute('aria-pressed', 'true')
  await expect(page.locator('.stakes-press').nth(1)).toBeDisabled()
})

test('every share typed or dragged replans at once', async () => {
  await openSheet()
  const field = page.getByLabel('Tolerance to use at most in percent')
  await field.fill('85')
  await expect(page.locator('.proof')).toHaveText(/needs less than 1\d\d\d µm/)
  const relaxed = await page.locator('.proof').textContent()
  await field.fill('84')
  await expect(field).toHaveValue('84')
  await expect(page.locator('.key .says')).toContainText('84 %')
  await expect(page.locator('.proof')).not.toHaveText(relaxed)
  const slider = page.locator('.ledger').getByRole('slider')
  await slider.fill('83')
  await expect(field).toHaveValue('83')
  await expect(page.locator('.key .says')).toContainText('83 %')
  // under the floor there is no plan, and the sentence says what can be reached
  await field.fill('40')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    /with the air compressor fixed, the best reachable is 6[01] %/i,
  )
  await field.fill('20')
  await expect(page.getByText('from 30 to 100')).toBeShown()
  await field.blur()
  await expect(field).toHaveValue('40')
  // as in every cell what is typed replaces what stands there: 8 is 8 and no 408, and Escape gives 40 back
  await point(await field.one())
  await typeText('8')
  await expect(field).toHaveValue('8')
  await press('Escape')
  await expect(field).toHaveValue('40')
})

test('a state is looked at alone, and gates say what sets them', async () => {
  await openSheet()
  const lines = page.locator('.band-rise .chart svg > path.state')
  const every = lines.count()
  await page.getByRole('radio', { name: 'cold start' }).click()
  await expect(page.getByRole('radio', { name: 'cold start' })).toBeChecked()
  await expect(lines).toHaveCount(every / 4)
  await page.getByRole('radio').first().click()
  await expect(lines).toHaveCount(every)
  const gates = page.locator('.band-rise .gate-group')
  await gates.first().focus()
  await expect(page.locator('.key .says')).toHaveText(/^motor to gear: .* \(set by .*\)$/)
  const first = await page.locator('.key .says').textContent()
  await press('ArrowRight')
  await expect(gates.nth(1)).toBeFocused()
  await expect(page.locator('.key .says')).not.toHaveText(first)
  await press('Escape')
  await expect(page.locator('.key .says')).toContainText(
    'must pass between the limits at each coupling',
  )
})

test.runIf(isWhole)('a machine is held and let go by keys', async () => {
  await openSheet()
  await chooseExample('bolt-bound-gearbox.json')
  const turbine = page.locator('.holds .hold').nth(0)
  await turbine.focus()
  await expect(turbine).toHaveAttribute('aria-pressed', 'false')
  await press('Enter')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    /the steam turbine and the low-stage compressor fixed/i,
  )
  await expect(turbine).toBeFocused()
  await press('Space')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(
    'Leave the low-stage compressor fixed.',
  )
  await expect(turbine).toHaveAttribute('aria-pressed', 'false')
})

test('text that is no train file at all is refused with its place', async () => {
  await openSheet()
  await openText('torn.json', '{\n  "format": "holdfast-train",\n  "version": ')
  await expect(page.getByRole('alert')).toContainText('the whole file')
  await expect(page.getByRole('alert')).toContainText(/line 3/)
  // a good file puts the refusal away by itself
  await openText('good.json', exampleText('leave-it-alone.json'))
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing needs to move.')
  await expect(page.locator('.refusal')).toHaveCount(0)
})
