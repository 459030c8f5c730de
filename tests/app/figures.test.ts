// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { isWhole } from '../counts'
import { press, typeText } from './keys'
import { chooseExample, drawn, handedOver, openSheet, page, savedTrain } from './sheet'

const gearTrain = 'bolt-bound-gearbox.json'
const lay = (band: string) => page.locator(`.figures-button[data-enters="${band}"]`).click()
const cell = (at: string) => page.locator(`input[data-at="${at}"]`)
const headline = page.getByRole('heading', { level: 1 })

async function open(...bands: readonly string[]): Promise<void> {
  await openSheet()
  await chooseExample(gearTrain)
  for (const band of bands) await lay(band)
}

test('a wrong entry stays as typed, marked; the last good plan stays and is called old', async () => {
  await open('feet')
  const before = await page.locator('.moves').textContent()
  const x = cell('machines[0].feet[0].x')
  await x.fill('12 and a bit')
  await x.blur()
  await expect(x).toHaveValue('12 and a bit')
  await expect(x).toHaveAttribute('aria-invalid', 'true')
  await expect(page.locator('.stale-note')).toContainText('The plan below is of the numbers before')
  await expect(page.locator('.moves')).toHaveText(before)
  await expect(page.locator('.page')).toHaveClass(/stale/)
  await expect(page.locator('.foot').first()).toBeShown()
  // its place is said in words, and a press goes there, however far it is folded away
  const note = page.locator('.stale-note')
  await lay('feet')
  await note.getByRole('button', { name: 'Steam turbine, foot 1 lake, x', exact: true }).click()
  await expect(x).toBeFocused()
  await lay('train')
  await page
    .locator('[data-figures="train"]')
    .getByRole('button', { name: /^More columns: speed/ })
    .click()
  await page.getByLabel('mass of Step-up gear').fill('heavy')
  await lay('train')
  await note.getByRole('button', { name: 'Step-up gear, mass', exact: true }).click()
  await expect(page.getByLabel('mass of Step-up gear')).toBeFocused()
  await note.getByRole('button', { name: /^Take it back.*Step-up gear, mass/ }).click()
  await expect(page.getByLabel('mass of Step-up gear')).not.toHaveValue('heavy')
  await expect(note.getByRole('listitem')).toHaveCount(1)
  await press('Control+z')
  await press('Control+z')
  await expect(note.getByRole('listitem')).toHaveCount(1)
  // it goes with its machine when that is moved in the train
  await page.getByRole('button', { name: 'Move Steam turbine right in the train' }).click()
  await expect(cell('machines[1].feet[0].x')).toHaveValue('12 and a bit')
  await press('Control+z')
  await press('Control+z')
  await expect(x).toHaveValue('0')
  await expect(page.locator('.stale-note')).toHaveCount(0)
})

test.runIf(isWhole)(
  'machines are added, moved and removed with their couplings, by keys',
  async () => {
    await open('train')
    const names = () =>
      page
        .locator('[data-figures="train"] tbody th[scope=row] input')
        .all()
        .map((input) => (input as HTMLInputElement).value)
        .slice(0, 5)
    const add = page.getByRole('button', { name: 'Add a machine right of High-stage compressor' })
    await add.focus()
    await press('Enter')
    await expect(page.locator('.last-edit')).toHaveText('added a machine at the right end')
    const name = cell('machines[4].name')
    await expect(name).toBeFocused()
    await typeText('Pump')
    await expect(page.locator('.stale-note')).toContainText('How high does the shaft of Pump stand')
    expect(names()).toEqual([
      'Steam turbine',
      'Low-stage compressor',
      'Step-up gear',
      'High-stage compressor',
      'Pump',
    ])
    await page.getByRole('button', { name: 'Move Pump left in the train' }).focus()
    await press('Enter')
    expect(names()[3]).toBe('Pump')
    await page.getByRole('button', { name: 'Remove Pump' }).focus()
    await press('Enter')
    await expect(page.locator('.last-edit')).toContainText('removed the pump and the readings of')
    for (let i = 0; i < 4; i++) await press('Control+z')
    await drawn()
    await expect(headline).toHaveText('Leave the low-stage compressor fixed.')
    await expect(page.locator('.stale-note')).toHaveCount(0)
  },
)

test.runIf(isWhole)('a gear whose roll is freed says what it does to both shafts', async () => {
  await open('train')
  const roll = page.getByRole('checkbox', { name: 'Step-up gear may roll' })
  await roll.focus()
  await press('Space')
  for (const where of ['.cell-says', '.roll-note'])
    await expect(page.locator(`[data-figures="train"] ${where}`).first()).toHaveText(
      /both its shafts.*Ask for a tooth contact check of the step-up gear/,
    )
})

test.runIf(isWhole)('a skid, a nozzle and what a machine may do are entered', async () => {
  await open('train')
  await page.getByRole('button', { name: 'Add a skid under the machines' }).click()
  await typeText('Baseplate')
  await page.getByRole('checkbox', { name: 'Baseplate carries Step-up gear' }).check()
  await expect(page.locator('.last-edit')).toHaveText(/^set the step-up gear on /)
  await press('Control+z')
  await press('Control+z')
  await press('Control+z')
  const low = page.getByLabel('point inlet flange of the low-stage compressor, sideways, low end')
  await low.fill('-200')
  await expect(page.locator('[data-figures="train"] .cell-says').last()).toHaveText(
    'point inlet flange of the low-stage compressor, sideways: up to 200 µm toward the workshop',
  )
  await low.fill('')
  const note = page.locator('.stale-note')
  await expect(note).toContainText(
    'Low-stage compressor, point inlet flange, sideways, low end: the low end is missing: give it',
  )
  await note
    .getByRole('button', { name: 'Low-stage compressor, point inlet flange, sideways, low end' })
    .click()
  await expect(low).toBeFocused()
  // a number that begins with its sign is no number yet after the first key
  await typeText('-')
  await expect(page.locator('.point-table .cell.wrong .why').first()).toBeShown()
  await typeText('300')
  await expect(note).toHaveCount(0)
  await expect(low).toHaveValue('-300')
  await press('Escape')
  await expect(low).toHaveValue('')
  await expect(note).toContainText('the low end is missing')
})

test.runIf(isWhole)('units are switched for the whole job and back', async () => {
  await open('job', 'feet')
  const x = cell('machines[3].feet[2].x')
  await expect(x).toHaveValue('10700')
  await page.getByLabel('lengths and heights in').selectOption('in')
  await expect(x).toHaveValue('421.2598425')
  await page.getByLabel('lengths and heights in').selectOption('mm')
  await expect(x).toHaveValue('10700')
  await page.getByLabel('the end from which clock faces are seen').selectOption('left')
  await expect(page.locator('.clock-picture figcaption')).toContainText('Seen from the left end')
})

test.runIf(isWhole)('feet are added in a row, filled down, and removed', async () => {
  await open('feet')
  await page.getByLabel('x of new feet of the steam turbine, mm').fill('1100')
  await press('Enter')
  await expect(page.locator('.last-edit')).toHaveText(
    'added a row of two feet of the steam turbine',
  )
  await expect(cell('machines[0].feet[4].y')).toHaveValue('700')
  await expect(cell('machines[0].feet[5].y')).toHaveValue('-700')
  await cell('machines[0].feet[4].pack.now').focus()
  await press('Control+d')
  await expect(cell('machines[0].feet[4].pack.now')).toHaveValue('2000')
  await page
    .getByRole('button', { name: 'of the steam turbine foot 3 workshop the same as foot 3 lake' })
    .click()
  await expect(cell('machines[0].feet[5].pack.now')).toHaveValue('2000')
  await page.getByRole('button', { name: 'Remove the steam turbine foot 3 workshop' }).click()
  await expect(page.locator('[data-body="turbine"] .foot-row')).toHaveCount(5)
})

test.runIf(isWhole)(
  'plates of a pack are entered in one line; what is none stays as typed, marked',
  async () => {
    await open('feet')
    await page.getByRole('button', { name: /^More columns: plates/ }).click()
    const plates = page.getByLabel('plates in the pack now, the steam turbine foot 1 lake, µm')
    await plates.fill('1500, thick')
    await plates.blur()
    await expect(plates).toHaveValue('1500, thick')
    await expect(plates).toHaveAttribute('aria-invalid', 'true')
    await plates.fill('1500, 2 x 250')
    await plates.blur()
    await expect(plates).not.toHaveAttribute('aria-invalid', 'true')
    expect((await savedTrain()).machines[0]?.feet[0]?.pack?.plates).toEqual([1500, 250, 250])
    await press('Control+z')
    await expect(plates).toHaveValue('1500, thick')
    await press('Control+z')
    await expect(plates).toHaveValue('')
  },
)

test('a table from a spreadsheet is looked at, corrected and entered as one edit', async () => {
  await open('feet')
  await page.getByRole('button', { name: 'Paste a table of feet' }).click()
  await page
    .getByLabel('Paste cells from a spreadsheet', { exact: false })
    .fill('Machine\tFoot\tShims [mm]\tcol\nStep-up gear\t1 lake\t5,2\t4\n\t1 workshop\tmany\t4\n')
  const does = page.locator('.paste-preview .does')
  await expect(does).toHaveText([
    'headings',
    'changes Step-up gear foot 1 lake: pack now',
    /not entered: pack now: .*many/,
  ])
  await page.getByLabel('column 4, headed col: what it is').selectOption('hole.clearance')
  await expect(does.nth(1)).toHaveText('changes Step-up gear foot 1 lake: pack now, clearance')
  await page.getByRole('button', { name: 'Enter 1 row' }).click()
  await expect(cell('machines[2].feet[0].pack.now')).toHaveValue('5200')
  await expect(cell('machines[2].feet[0].hole.clearance')).toHaveValue('4')
  await press('Control+z')
  await expect(cell('machines[2].feet[0].pack.now')).toHaveValue('5100')
  await expect(cell('machines[2].feet[0].hole.clearance')).toHaveValue('4200')
  await page.getByRole('button', { name: 'Save the feet as CSV' }).click()
  await expect
    .poll(() => handedOver.map(({ name }) => name))
    .toEqual(['synthesis-gas-train-feet.csv'])
})

test.runIf(isWhole)(
  'several tables pasted at once go where their headings say, or where somebody says',
  async () => {
    await open('job')
    await page.getByRole('button', { name: 'Paste tables of the whole job' }).click()
    await page
      .getByLabel('Paste cells from a spreadsheet', { exact: false })
      .fill(
        'state\tload\nspring\t60 %\n\nmachine\tx\nStep-up gear\t6950\n\nmachine\tfoot\tpack now\nStep-up gear\t1 lake\t5200\nnobody\t1\t5\n',
      )
    const what = page.getByLabel('a table of', { exact: false })
    await expect(what).toHaveCount(3)
    const does = page.locator('.paste-preview .does')
    await expect(does.nth(1)).toHaveText('adds spring: load')
    await expect(does.nth(6)).toHaveText(/not entered: no machine or skid is called “nobody”/)
    await expect(page.locator('.paste-preview').nth(1)).toContainText('say what it is')
    await expect(page.getByRole('button', { name: 'Enter 2 rows' })).toHaveCount(1)
    await what.nth(1).selectOption('feet')
    await expect(does.nth(3)).toHaveText('adds Step-up gear foot 3 workshop: x')
    await page.getByRole('button', { name: 'Enter 3 rows' }).click()
    const { machines, states = [] } = await savedTrain()
    expect(states.at(-1)).toEqual({ id: 'spring', name: 'spring', load: 60 })
    expect(machines[2]?.feet.map(({ x }) => x)).toEqual([6900, 6900, 7900, 7900, 6950])
    expect(machines[2]?.feet[0]?.pack?.now).toBe(5200)
    // all of it is one edit
    await press('Control+z')
    expect((await savedTrain()).states).toHaveLength(states.length - 1)
  },
)

test.runIf(isWhole)(
  'a table pasted into a cell is looked at as one; a single value is the cell’s own',
  async () => {
    await open('feet')
    const foot = document.querySelector<HTMLInputElement>(
      '[data-at="machines[2].feet[0].pack.now"]',
    )
    if (!foot) throw new Error('no cell')
    const paste = (text: string): boolean => {
      const event = new Event('paste', { bubbles: true, cancelable: true })
      // whether the cell is left to take it
      return foot.dispatchEvent(Object.assign(event, { clipboardData: { getData: () => text } }))
    }
    expect(paste('5.2 mm\n')).toBe(true)
    await expect(page.locator('.paste-room')).toHaveCount(0)
    expect(paste('Machine\tFoot\tShims [mm]\nStep-up gear\t1 lake\t5.2\n')).toBe(false)
    const enter = page.getByRole('button', { name: 'Enter 1 row' })
    await expect(enter).toBeFocused()
    await enter.click()
    await expect(cell('machines[2].feet[0].pack.now')).toHaveValue('5200')
    await expect(page.getByRole('button', { name: 'Paste a table of feet' })).toBeFocused()
  },
)

test.runIf(isWhole)(
  'asks what is piped, heavy or doweled as a machine is drawn, and enters it as effort',
  async () => {
    await open('train')
    const asked = page.locator('.effort-question')
    // of the gear nothing was said
    await expect(asked.getByRole('listitem')).toHaveCount(1)
    await page.getByRole('button', { name: 'Add a machine at the right end' }).click()
    await expect(asked.getByRole('listitem')).toHaveCount(2)
    await asked.getByLabel('piped, machine 5').check()
    await asked.getByLabel('heavy, machine 5').check()
    await asked
      .getByRole('button', { name: 'enter: counts like 700 µm of moves, machine 5' })
      .click()
    await expect(asked.getByRole('listitem')).toHaveCount(1)
    const { machines } = await savedTrain()
    expect(machines[4]).toMatchObject({ effort: 700 })
  },
)
