// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { longTrain } from '../holds/longTrain'
import { press } from './keys'
import { textOf } from './names'
import type { Place } from './place'
import { chooseExample, drawn, exampleText, openSheet, openText, page } from './sheet'
import { answering } from './workers'

const gearTrain = 'bolt-bound-gearbox.json'
const headline = page.locator('.sentence h1')
const choice = (title: string) =>
  page
    .locator('.hold-choice')
    .within(title, (all) =>
      all.filter((one) =>
        [...one.querySelectorAll('.title')].some((said) => textOf(said) === title),
      ),
    )
const adopt = (title: string) => choice(title).locator('.adopt')
const listed = () => expect(page.locator('.progress')).toHaveText(/^all \d+ choices solved/)
const point = page.locator('.margin input[type=range]')

/** Where the slider begins. */
const leastOf = async (slider: Place) => (await slider.one()).getAttribute('min') ?? ''

/** The example with the gear held in place of the low stage, which is impossible. */
function gearHeld(): string {
  const document = JSON.parse(exampleText(gearTrain)) as {
    machines: { id: string; held?: boolean }[]
  }
  for (const machine of document.machines) machine.held = machine.id === 'gear'
  return JSON.stringify(document)
}

async function openImpossible(): Promise<void> {
  answering('reasons')
  await openSheet()
  await openText('gear held.json', gearHeld())
  await expect(headline).toHaveText(/^Holding the step-up gear, no move reaches less than/)
  await expect(page.locator('.remedy').first()).toHaveCount(1)
}

test('choices are ranked in two numbers, and one is adopted by mouse', async () => {
  answering('study')
  const told: string[] = []
  // while there is no curve yet none is called the one before
  new MutationObserver(() => {
    const margin = document.querySelector('.margin')
    if (margin?.querySelector('.curve-wait')) told.push(margin.className, textOf(margin))
  }).observe(document, { subtree: true, childList: true })
  await openSheet()
  await chooseExample(gearTrain)
  await listed()
  expect(told.join('\n')).toContain('working out the curve')
  expect(told.filter((text) => /stale|the curve before/.test(text))).toEqual([])
  const titles = page.locator('.choices > .choice-list .title')
  await expect(titles.first()).toHaveText('Hold the low-stage compressor')
  await expect(choice('Hold the low-stage compressor').locator('.cost')).toHaveText(
    /^\s*2702 \+ 300/,
  )
  await expect(page.locator('.choices')).toContainText('by moves and effort, µm')
  // what holding the high stage lacks, and where
  await expect(choice('Hold the high-stage compressor')).toContainText('no plan')
  await expect(choice('Hold the high-stage compressor')).toContainText(/lacks \d+ µm/)
  await adopt('Hold the steam turbine').click()
  await expect(headline).toHaveText('Hold the steam turbine.')
  await listed()
  await expect(page.locator('.adopt[aria-current]')).toHaveCount(1)
  await expect(adopt('Hold the steam turbine')).toHaveAttribute('aria-current', 'true')
  await expect(page.locator('.holds .hold').nth(0)).toHaveAttribute('aria-pressed', 'true')
  await expect(page.locator('.holds .hold').nth(1)).toHaveAttribute('aria-pressed', 'false')
})

test('beyond 12 machines the plan comes at once, and the list says that it is not complete', async () => {
  answering('study')
  await openSheet()
  await openText('long.json', JSON.stringify(longTrain(14)))
  await expect(page.locator('.train-name')).toHaveText('14 machines in a line')
  await expect(headline).toHaveText(/^Hold /)
  await expect(page.locator('.progress')).toHaveText(
    /^\s*\d+ choices? so far, of too many to solve them all/,
  )
  await expect(page.locator('.hold-choice.current')).toHaveCount(1)
  await page.getByRole('button', { name: 'Stop here' }).click()
  await expect(page.locator('.progress')).toHaveText(/stopped after .*; the list is not complete/)
})

test('the point says what margin costs', async () => {
  answering('study')
  await openSheet()
  await chooseExample(gearTrain)
  await expect(page.locator('.curve canvas')).toBeShown()
  await point.fill('71')
  await expect(point).toHaveAttribute('aria-valuetext', /^71 %, 26\d\d µm of moves$/)
  await expect(page.locator('.says[aria-live]')).toContainText('71 %')
  await point.fill('100')
  await expect(point).toHaveAttribute('aria-valuetext', /^100 %, .*; no room for error$/)
  await expect(page.locator('.says[aria-live]')).toContainText('100 %')
  await point.fill(await leastOf(point))
  await expect(point).toHaveAttribute('aria-valuetext', /no plan: under the floor of 63 %$/)
  await expect(headline).toHaveText(/no move reaches less than 63 %/)
  // why the floor is where it is, and the corners in digits
  await expect(page.locator('.floor-reason')).toContainText('no shim can close that')
  await page.getByText('corners of the curve').click()
  await expect(page.locator('.corners tbody tr').first()).toContainText('63.3 %')
})

test('what binds is told with its price', async () => {
  await openSheet()
  await chooseExample('base-bound-motor.json')
  const limits = page.locator('.bindings li')
  await expect(limits.first()).toHaveText(/^(each|the next) \S+ mrad more tolerance .* saves/)
  await expect(limits.filter({ hasText: 'less pack allowed under foot' }).first()).toHaveText(
    /^each \S+ µm less pack allowed under foot .* saves \S+ µm of moves, up to \S+ µm$/,
  )
})

test('a conflict is told and marked, and a remedy is tried and put back by keys', async () => {
  await openImpossible()
  await expect(page.locator('.conflict-sentence')).toContainText('70 % was asked for')
  const members = await page.locator('.members li').count()
  expect(members).toBeGreaterThan(1)
  await expect(page.locator('.coupling.conflict h3')).toHaveText('low stage to gear')
  await expect(page.locator('.coupling .conflict-word')).toHaveText(['in conflict'])
  await expect(page.locator('.foot.conflict .conflict-word').first()).toHaveText('in conflict')
  await expect(page.locator('.conflict-mark').first()).toHaveCount(1)
  const remedy = page.locator('.remedy').first()
  await expect(remedy).toContainText('must agree')
  await expect(remedy).toContainText('common practice, no source')
  await remedy.getByRole('button').focus()
  await press('Enter')
  const rows = page.locator('.trial tbody tr')
  await expect(rows.nth(0)).toHaveText(/status\s*no plan\s*a plan/)
  await expect(rows.nth(1)).toHaveText(/moves\s*none\s*\d+ µm/)
  await expect(headline).toHaveText('Hold the low-stage compressor.')
  await expect(page.getByRole('heading', { name: 'A copy is on the sheet' })).toBeFocused()
  await expect(page.locator('.conflict-mark')).toHaveCount(0)
  await page.getByRole('button', { name: 'Back to the train as it is' }).press('Enter')
  await expect(headline).toHaveText(/^Holding the step-up gear, no move/)
  await expect(page.locator('.trial')).toHaveCount(0)
  // what was found before is still known
  await expect(page.locator('.remedy').first()).toBeShown()
})

test('a remedy is tried by mouse and kept', async () => {
  await openImpossible()
  await page
    .locator('.remedy')
    .nth(1)
    .getByRole('button', { name: /^try on a copy/ })
    .click()
  await expect(page.locator('.trial')).toContainText('the copy')
  await expect(headline).toHaveText('Hold the steam turbine.')
  await page.getByRole('button', { name: 'Keep this change' }).click()
  await expect(page.locator('.trial')).toHaveCount(0)
  await expect(headline).toHaveText('Hold the steam turbine.')
  await expect(page.locator('.holds .hold').nth(0)).toHaveAttribute('aria-pressed', 'true')
})

test('a foot says why it moves this much', async () => {
  answering('why')
  await openSheet()
  await chooseExample(gearTrain)
  const ask = page.getByRole('button', { name: 'why this much at the step-up gear foot 1 lake?' })
  await ask.click()
  await expect(page.locator('.why-foot')).toContainText('What holds it there')
  await expect(page.locator('.why-foot')).toContainText('Step-up gear foot 1 lake')
  await expect(ask).toHaveAttribute('aria-expanded', 'true')
  await ask.press('Enter')
  await expect(page.locator('.why-foot')).toHaveCount(0)
  await ask.press('Enter')
  await expect(page.locator('.why-foot')).toContainText('What holds it there')
  // an answer about another plan is not left standing
  await page.getByLabel('Share in percent').fill('80')
  await expect(page.locator('.why-foot')).toHaveCount(0)
})
