// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { drawn, exampleText, layOpen, openSheet, openText, page } from './sheet'
import { answering } from './workers'
import type { TrainDocument } from '../../src/document/schema'
import { isWhole } from '../counts'

const band = page.locator('.band-ready')
const sentence = page.locator('.ready-sentence')
const steps = page.locator('.step-list > li')
const does = page.locator('.step-list .step-words b')

async function open(document: unknown): Promise<void> {
  answering('work')
  await openSheet()
  await openText('pump.json', JSON.stringify(document))
  await expect(page.locator('.train-name')).toHaveText('Hot water circulating pump')
  await drawn()
  await expect(page.locator('.step-list')).toBeShown()
}

test.runIf(isWhole)(
  'signs are confirmed by name, asked again when a reading changes, and turned over',
  async () => {
    await open(JSON.parse(exampleText('pump-and-motor.json')))
    const check = page.locator('.sign-check')
    const says = check.locator('.says')
    await expect(says).toHaveText(/at the right plane the circulating pump is 16\.6 mil HIGHER/)
    await expect(sentence).toHaveText(/signs of the readings not confirmed \(motor to pump\)/)
    const by = page.getByLabel('Your name, for what you confirm or accept without')
    await by.fill('R. Jones')
    await check.getByRole('button', { name: 'Yes, so it is' }).click()
    await expect(check).toHaveClass(/confirmed/)
    await expect(check).toContainText('confirmed by R. Jones')
    await expect(sentence).not.toHaveText(/signs/)

    // other readings mean something else: what was confirmed is said, and asked again
    await layOpen('readings')
    const bottom = page.getByLabel("bottom, 6 o'clock, set 1 of motor to pump, mil")
    await bottom.fill('33')
    await expect(check).not.toHaveClass(/confirmed/)
    await expect(check).toContainText(/Confirmed before was: .*16\.6 mil HIGHER/)
    await expect(sentence).toHaveText(/signs of the readings not confirmed/)
    await bottom.fill('31')
    await expect(check).toHaveClass(/confirmed/)
    await check.getByRole('button', { name: 'take it back' }).click()
    await expect(check).not.toHaveClass(/confirmed/)

    // a dial that reads the other way: its set is turned over, and what it says with it
    const alone = check.locator('ul li').first()
    await expect(alone).toHaveText(/HIGHER/)
    const before = await alone.textContent()
    await check.getByRole('button', { name: 'No, a dial reads the other way' }).click()
    await check.getByRole('button', { name: /^turn over set 1/ }).click()
    await expect(bottom).toHaveValue('-31')
    await expect(alone).toHaveText(/LOWER/)
    await expect(page.locator('.last-edit')).toHaveText(/turned over the readings of motor to pump/)
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(bottom).toHaveValue('31')
    await expect(alone).toHaveText(before)
  },
)

test('what is not measured is accepted without by name and reason, and then the sheet says ready', async () => {
  await open(JSON.parse(exampleText('pump-and-motor.json')))
  await expect(sentence).toHaveText(/^Not ready: /)
  await expect(page.locator('.sentence')).toContainText('Not ready: ')
  await page.getByRole('button', { name: /^go without ?: soft foot, Motor$/ }).click()
  const form = page.locator('form.waive')
  // neither without a reason nor without a name
  await expect(form.getByRole('button', { name: /^Accept without it/ })).toBeDisabled()
  await form.getByLabel('Why can the work go on without it?').fill('measured in spring')
  await expect(form.getByRole('button', { name: /^Accept without it/ })).toHaveText(
    'Accept without it (your name is missing above)',
  )
  await expect(form.getByRole('button', { name: /^Accept without it/ })).toBeDisabled()
  await page.getByLabel('Your name, for what you confirm or accept without').fill('R. Jones')
  await form.getByRole('button', { name: 'Accept without it as R. Jones' }).click()
  await expect(band).toContainText('By R. Jones: measured in spring')
  await expect(form).toHaveCount(0)
  await expect(sentence).toHaveText(/soft foot not measured \(the circulating pump\)/)

  for (const [what, why] of [
    ['soft foot, Circulating pump', 'grouted, never loosened'],
    ['pipe strain, motor to pump', 'flanges were not opened'],
  ] as const) {
    await page.getByRole('button', { name: new RegExp(`^go without ?: ${what}$`) }).click()
    // pasted over two lines, it is one text; a second line is no answer to Enter
    await form
      .getByLabel('Why can the work go on without it?')
      .fill(` ${why.replace(', ', ',\n')} `)
    await form.getByLabel('Why can the work go on without it?').press('Enter')
    await expect(band).toContainText(`By R. Jones: ${why}`)
  }
  await expect(sentence).toHaveText(/^Not ready: signs of the readings not confirmed/)
  await page.getByRole('button', { name: /^Yes, so it is/ }).click()
  await expect(sentence).toHaveText(/^Ready/)
  await expect(page.locator('.sentence')).not.toContainText('Not ready')
  await page.getByRole('button', { name: /^take that back of pipe strain/ }).click()
  await expect(sentence).toHaveText(/^Not ready: pipe strain not measured/)
})

test.runIf(isWhole)(
  'steps are put in another order; what that breaks is said; the usual order comes back',
  async () => {
    // hole radius 10 at feet 2, 8.8 aside: 6.4 along the train fits only once the slide has been made
    const document = JSON.parse(exampleText('pump-and-motor.json')) as {
      machines: { free?: unknown; feet: { hole: unknown }[] }[]
      couplings: { axial?: unknown }[]
    }
    const [motor] = document.machines
    const [coupling] = document.couplings
    if (!motor || !coupling) throw new Error('the example lacks parts')
    motor.free = { axial: true }
    for (const foot of motor.feet.slice(2)) foot.hole = { clearance: 20, y: -8.8 }
    coupling.axial = { found: 0.25, want: 0.258, tolerance: 0.001 }
    await open(document)
    await expect(does).toHaveText([
      /^Shim the motor/,
      /^Slide the motor/,
      /along the train/,
      /^Tighten/,
    ])
    const passed = steps.locator('.over').filter({ hasText: 'LIMIT PASSED' })
    await expect(passed).toHaveCount(0)
    await expect(steps.nth(0).getByRole('button', { name: /^earlier/ })).toBeDisabled()
    await expect(steps.nth(2).getByRole('button', { name: /^later/ })).toBeDisabled()

    await steps
      .nth(2)
      .getByRole('button', { name: /^earlier/ })
      .click()
    await expect(does.nth(1)).toHaveText(/along the train/)
    await expect(page.locator('.band-order')).toContainText('Somebody chose this order.')
    // told once, at the step that does it; above the list stands how many there are
    await expect(passed).toHaveText([/foot 2 road.*mil/, /foot 2 tank.*mil/])
    await expect(passed.first()).toContainText('The order that the rules give keeps it')
    const order = page.locator('.band-order .order > p[role=status]')
    await expect(order).toContainText('2 limits are passed on the way: see the steps.')

    // later again: the order of the rules, chosen or not, breaks nothing
    await steps
      .nth(1)
      .getByRole('button', { name: /^later/ })
      .click()
    await expect(does.nth(2)).toHaveText(/along the train/)
    await expect(passed).toHaveCount(0)

    await steps
      .nth(0)
      .getByRole('button', { name: /^later/ })
      .click()
    await expect(does.nth(0)).toHaveText(/^Slide the motor/)
    await page.getByRole('button', { name: 'take the usual order again' }).click()
    await expect(does).toHaveText([
      /^Shim the motor/,
      /^Slide the motor/,
      /along the train/,
      /^Tighten/,
    ])
    await expect(page.locator('.band-order')).not.toContainText('Somebody chose this order.')
  },
)

test.runIf(isWhole)(
  'with a soft foot every figure is provisional, on the sheet and at the machine',
  async () => {
    const document = JSON.parse(exampleText('pump-and-motor.json')) as {
      machines: { feet: { soft?: number }[] }[]
    }
    // the feet of a diagonal stand 12 mil off the others' plane
    document.machines[0]?.feet.forEach((foot, i) => {
      foot.soft = i === 0 || i === 3 ? 12 : 0
    })
    await open(document)
    await expect(page.locator('.sentence')).toContainText(
      'Every figure of this plan is provisional',
    )
    for (const id of ['rise', 'side', 'feet', 'couplings'])
      await expect(page.locator(`section.band-${id} .band-name`)).toContainText('provisional')
    await expect(page.locator('section.band-train .band-name')).not.toContainText('provisional')
    // what a step has in hand is no class: one that takes a soft foot away would be laid out as a foot's card, line on line
    await expect(page.locator('.step-list > li.step')).not.toHaveCount(0)
    await expect(page.locator('.step-list > li.foot')).toHaveCount(0)
    const words = page.locator('.step .step-words').allTextContents()
    const [first = '', ...rest] = words.map((text) => text.trim())
    expect(first).not.toMatch(/^provisional/)
    expect(rest.length).toBeGreaterThan(1)
    expect(rest.filter((text) => !/^(provisional: |.*plane)/.test(text))).toEqual([])

    await page.getByRole('button', { name: 'At the machine' }).click()
    const face = page.locator('.machine-face')
    await expect(face).toContainText(/ 0 of \d+ steps done: /)
    await expect(face).not.toContainText('Provisional')
    const next = page.getByRole('button', { name: 'Next' })
    while (await next.isEnabled()) await next.click()
    await expect(face).toContainText('Provisional: read the couplings anew')
  },
)

test.runIf(isWhole)(
  'at the machine a train that needs no move is still told not to be ready, with what is wrong',
  async () => {
    const document = JSON.parse(exampleText('leave-it-alone.json')) as TrainDocument
    const [set] = document.couplings[0]?.found ?? []
    if (!set || !('readings' in set)) throw new Error('no dials')
    set.readings = set.readings.map(([hour, value]) => [hour, hour === 6 ? value + 80 : value])
    answering('work')
    await openSheet()
    await openText('still.json', JSON.stringify(document))
    await expect(page.locator('.train-name')).toHaveText('Water injection train')
    await drawn()
    await page.getByRole('button', { name: 'At the machine', exact: true }).click()
    const says = page.locator('.machine-face .nothing')
    await expect(says).toContainText('nothing needs to move')
    await expect(says).toContainText('Not ready: ')
    await expect(says).toContainText('dial sum checks that fail (main pump to gear)')
  },
)

test.runIf(isWhole)(
  'a page is written by what is known of the train as it stands, however early its button was pressed',
  async () => {
    answering('work')
    await openSheet()
    const sound = JSON.parse(exampleText('leave-it-alone.json')) as TrainDocument
    await openText('sound.json', JSON.stringify(sound))
    await expect(page.locator('.train-name')).toHaveText(sound.name)
    const record = page.locator('.band-record')
    const nothing = record.getByRole('button', { name: 'Write down: nothing needs to move' })
    await expect(nothing).toHaveCount(1)
    await expect(sentence).toHaveText(/^Not ready: /)
    // the first page changes the sheet, and whether work may begin is worked out anew meanwhile
    await record.getByRole('button', { name: 'Write down as found' }).click()
    await nothing.click()
    const refusal = record.getByRole('alert')
    await expect(refusal).toContainText('Not written down: 9 things are open.')
    await expect(refusal).toContainText('Soft foot of Main pump is not measured.')
    await expect(record.locator('.pages li')).toHaveCount(1)
  },
)
