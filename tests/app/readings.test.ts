// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { press, typeText } from './keys'
import { chooseExample, drawn, layOpen, openSheet, page, savedTrain } from './sheet'
import { isWhole } from '../counts'

const sentence = page.locator('.sentence h1')

async function open(file: string): Promise<void> {
  await openSheet()
  await chooseExample(file)
}

test('a wrong entry stays as typed and is marked; a turn that does not close says what it would do', async () => {
  await open('pump-and-motor.json')
  await layOpen('readings')
  const bottom = page.getByLabel("bottom, 6 o'clock, set 1 of motor to pump, mil")
  const asFile = await sentence.textContent()
  await bottom.fill('31 kg')
  await expect(bottom).toHaveAttribute('aria-invalid', 'true')
  await expect(bottom).toHaveValue('31 kg')
  await expect(page.locator('.cell.wrong .why')).toContainText('“kg” is no unit for this number')
  await expect(sentence).toHaveText(asFile)
  await expect(page.locator('.stale-note')).toContainText('motor to pump, set 1, bottom')
  await bottom.fill('37')
  await expect(page.locator('.stale-note')).toHaveCount(0)
  const closes = page.locator('.reading-set').first().locator('.closes')
  // 0 + 37 - (4.5 + 27) = 5.5
  await expect(closes).toContainText('differ by 5.5 mil; only 1.0 mil is allowed')
  await expect(closes).toContainText('in one reading would put the far feet of the motor')
})

test('sag is shown as the bar was read, for all sets of a bracket; a dial that reads the other way keeps the standard sign', async () => {
  await open('pump-and-motor.json')
  await layOpen('readings')
  const first = page.locator('.reading-set').first()
  await expect(first.locator('.sag')).toContainText('a stiff bar reads −4 mil at the bottom')
  const bar = first.getByRole('textbox', { name: 'what a stiff bar reads' })
  await expect(bar).toHaveValue('-4')
  await bar.fill('-3')
  await expect(first.locator('.sag details')).toContainText('with the sign turned, +1.5 mil')
  await first.getByRole('button', { name: /^Same bracket at set 2/ }).click()
  const second = page.locator('.reading-set').nth(1)
  await expect(second.getByRole('textbox', { name: 'what a stiff bar reads' })).toHaveValue('-3')

  const dial = first.getByLabel('reads minus when its stem is pushed in')
  await dial.check()
  await expect(first.getByLabel("bottom, 6 o'clock")).toHaveValue('-31')
  await first.getByLabel("bottom, 6 o'clock").fill('-30')
  await expect(first.locator('.cell-says').first()).toHaveText(
    'stem pushed in 30 mil at the bottom',
  )
  await first.getByRole('button', { name: 'turn 3 of them' }).click()
  await expect(first.getByLabel("bottom, 6 o'clock")).toHaveValue('30')
  const set = (await savedTrain()).couplings[0]?.found[0]
  expect(set).toMatchObject({
    sag: -1.5,
    readings: [
      [12, 0],
      [3, -4.5],
      [6, -30],
      [9, -27],
    ],
  })
  await expect(first.locator('.fault-line')).toContainText('is the sign right?')
  await press('Control+z')
  await expect(first.getByLabel("bottom, 6 o'clock")).toHaveValue('-30')
})

test('a set read again counts, the first is kept and asked why it does not', async () => {
  await open('pump-and-motor.json')
  await layOpen('readings')
  await page.getByRole('button', { name: /^Read it again.*set 1 of motor to pump/ }).click()
  await expect(page.locator('.reading-set')).toHaveCount(3)
  await expect(page.locator('.reading-set').first()).toHaveClass(/unused/)
  await page.getByLabel('why set 1 of motor to pump does not count').fill('bracket was loose')
  const third = page.locator('.reading-set').nth(2)
  for (const [where, value] of [
    ["top, 12 o'clock", '0'],
    ["bottom, 6 o'clock", '30'],
    ["toward the storage tank, 3 o'clock", '4'],
  ] as const)
    await third.getByLabel(where).fill(value)
  await third.getByRole('button', { name: /^not read/ }).click()
  await expect(page.locator('.stale-note')).toHaveCount(0)
  const found = (await savedTrain()).couplings[0]?.found ?? []
  expect(found[0]).toMatchObject({ use: false, why: 'bracket was loose' })
  expect(found[2]).toMatchObject({
    readings: [
      [12, 0],
      [3, 4],
      [6, 30],
    ],
  })
})

test('a tolerance comes from the catalogue with its source', async () => {
  await open('five-in-a-line.json')
  await layOpen('couplings')
  const coupling = page.locator('[data-figures="couplings"] .figure-block').first()
  await coupling.getByRole('button', { name: 'Take a published tolerance' }).click()
  await coupling.getByRole('button', { name: 'Take offset 0.0508 mm, angle 0.3 mrad' }).click()
  const { tolerance } = (await savedTrain()).couplings[0] ?? {}
  expect(tolerance).toEqual({
    offset: 0.0508,
    angle: 0.3,
    shape: 'round',
    basis:
      'City of San Diego, Clean Water Program Guideline, section 11005 Machine Alignment, November 2000: short coupling, 2 mil offset and 0.3 mil/in angle, printed for 1800 rpm (read in a copy of the source)',
  })
})

test("a maker's setting is entered as printed and stands beside growth; one of the two is used", async () => {
  await open('pump-and-motor.json')
  await layOpen('couplings')
  const figures = page.locator('[data-figures="couplings"]')
  await figures.getByText("Maker's cold setting: none given").click()
  await figures.getByRole('button', { name: 'Enter it as the maker prints it' }).click()
  await figures.getByLabel('how much higher or lower').fill('10')
  await expect(figures.locator('.asked-list')).toContainText(
    'the circulating pump 10 mil lower than the motor',
  )
  await figures.getByRole('button', { name: 'Enter this' }).click()
  await expect(figures.locator('.beside')).toContainText("the maker's cold setting asks for")
  await expect(figures.locator('.beside')).toContainText('growth asks for')
  await expect(page.locator('.setting-lines')).toHaveCount(0)
  await figures.getByLabel("the maker's setting, in every state").check()
  await expect(figures.locator('.one-of .why')).toContainText('say why')
  await figures.getByLabel("why the maker's setting is used").fill('the maker insists')
  await expect(page.locator('.stale-note')).toHaveCount(0)
  // the lines of states are drawn by growth, which is not what is judged here now
  await expect(page.locator('.setting-lines')).toHaveText(
    /^At motor to pump the maker's cold setting decides.*growth figures, which do not count there\.$/,
  )
  const { setting } = (await savedTrain()).couplings[0] ?? {}
  expect(setting).toEqual({ offset: { z: -10 }, use: true, why: 'the maker insists' })
})

test.runIf(isWhole)('growth of a state is copied scaled as one edit', async () => {
  await open('pump-and-motor.json')
  await layOpen('states')
  const figures = page.locator('[data-figures="states"]')
  await figures.getByRole('button', { name: 'Add a state' }).click()
  await typeText('Turned down')
  const last = figures.locator('.figure-block').last()
  await expect(last.locator('h3')).toHaveText('Turned down')
  await last.getByLabel('Copy from').selectOption('summer')
  await last.getByLabel('factor for growth copied to Turned down').fill('0,5')
  await last.getByRole('button', { name: 'Copy 2 machines to Turned down' }).click()
  // 12 in x 5.9e-6 per F x 25 F = 1.77 mil
  await expect(last.locator('.total').last()).toHaveText('+1.77 mil')
  await drawn()
  const train = await savedTrain()
  expect(train.states?.at(-1)).toEqual({ id: 'turned-down', name: 'Turned down' })
  expect(train.machines.map(({ growth }) => growth?.['turned-down'])).toEqual([
    [
      { at: 4, rise: 1.5, side: 0 },
      { at: 34, rise: 2, side: 0 },
    ],
    [
      {
        at: 64,
        side: 0,
        heat: { height: 12, expansion: 5.9, from: 60, to: 85, material: 'cast iron' },
      },
    ],
  ])
  await press('Control+z')
  await expect(last.locator('.total')).toHaveCount(0)
})

test('a table of readings is pasted with a preview and saved as CSV', async () => {
  await open('pump-and-motor.json')
  await layOpen('readings')
  const figures = page.locator('[data-figures="readings"]')
  await figures.getByRole('button', { name: 'Paste a table of readings' }).click()
  await figures
    .locator('textarea')
    .fill(
      'coupling\tset\t12\t3\t6\t9\nmotor to pump\t1\t0\t5\t32\t27\nmotor to pump\t9\t0\t0\t0\t0',
    )
  await expect(figures.locator('.paste-preview')).toContainText('changes set 1 of motor to pump')
  await expect(figures.locator('.paste-preview')).toContainText('the next is 3')
  await figures.getByRole('button', { name: 'Enter 1 row' }).click()
  const set = (await savedTrain()).couplings[0]?.found[0]
  expect(set).toEqual({
    kind: 'rim',
    rides: 'left',
    at: 41.5,
    sag: 2,
    readings: [
      [12, 0],
      [3, 5],
      [6, 32],
      [9, 27],
    ],
  })
})
