import { AxeBuilder } from '@axe-core/playwright'
import { expect, test, type Page } from '@playwright/test'
import { chooseExample, drawn, exampleText, openSheet, openText, worked } from './sheet'

/** Bolts without room: the gear in the middle is held and cannot be. */
function impossible(): string {
  const train = JSON.parse(exampleText('bolt-bound-gearbox.json')) as {
    machines: { id: string; held?: boolean }[]
  }
  for (const machine of train.machines) machine.held = machine.id === 'gear'
  return JSON.stringify(train)
}

const long = process.env['HOLDFAST_LONG'] === '1'

/**
 * Every rule by day; at night the colours alone, since nothing else differs there. In the usual run what differs from the
 * states before is read by day, in the long one the whole page each time, at night too.
 */
async function axe(page: Page, what: string, ...parts: readonly string[]): Promise<void> {
  const found: string[] = []
  const whole = long || parts.length === 0
  for (const colorScheme of whole ? (['light', 'dark'] as const) : (['light'] as const)) {
    await page.emulateMedia({ colorScheme })
    const builder = (whole ? ['html'] : parts).reduce(
      (all, part) => all.include(part),
      new AxeBuilder({ page }),
    )
    const { violations } = await (
      colorScheme === 'light' ? builder : builder.withRules(['color-contrast'])
    ).analyze()
    for (const { id, nodes } of violations)
      found.push(`${colorScheme}, ${id}: ${nodes.map((n) => n.html).join(' | ')}`)
  }
  if (whole) await page.emulateMedia({ colorScheme: 'light' })
  expect.soft(found, what).toEqual([])
}

async function layAllOpen(page: Page): Promise<number> {
  const buttons = page.locator('.figures-button[aria-expanded=false]')
  let opened = 0
  for (; (await buttons.count()) > 0; opened++) await buttons.first().click()
  return opened
}

/** Folds the figures of every band away, but for some: what is open is read again by every look. */
async function layAllAway(page: Page, but = ''): Promise<void> {
  const kept = but === '' ? '' : `:not([data-enters="${but}"])`
  const buttons = page.locator(`.figures-button[aria-expanded=true]${kept}`)
  while ((await buttons.count()) > 0) await buttons.first().click()
}

/** Opens what stands folded in the figures: more columns, folds, pictures, catalogues, a table to be pasted. */
async function unfold(page: Page): Promise<void> {
  const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click()
  const more = page.locator('[data-more][aria-pressed=false]')
  while ((await more.count()) > 0) await more.first().click()
  await press(/^Hole of /)
  await press(/^Take a published tolerance/)
  await page.locator('.figures details').evaluateAll((folds) => {
    for (const fold of folds) (fold as HTMLDetailsElement).open = true
  })
  await press('Add a flange')
  await press('Enter it as the maker prints it')
  await press('Paste a table of feet')
  const table = page.getByLabel('Paste cells from a spreadsheet', { exact: false }).first()
  await table.fill('Machine\tFoot\tShims [mm]\nMotor\t1\tmany\n')
  await expect(page.locator('.paste-preview')).toBeVisible()
}

test(
  'axe finds nothing on any state of the sheet, by day and night',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await chooseExample(page, 'pump-and-motor.json')
    await worked(page)
    await axe(page, 'a plan, before moving and order of work')
    const handle = page.locator('.band-rise .handle').first()
    await handle.focus()
    await page.keyboard.press('ArrowUp')
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Put by hand')
    await axe(page, 'machines put by hand', '.sentence', '.band-rise')
    await page.keyboard.press('Control+z')
    await drawn(page)
    expect(await layAllOpen(page)).toBeGreaterThan(5)
    await unfold(page)
    await axe(page, 'the figures of every band, unfolded', '.figures')
    await layAllAway(page, 'feet')
    const number = page.locator('[data-figures=feet] .cell.number input').first()
    await number.fill('1,2,3')
    await expect(page.locator('.cell.wrong').first()).toBeVisible()
    await expect(page.locator('.page.stale')).toBeVisible()
    await axe(page, 'a wrong entry, and a plan that is stale', '.sentence', '[data-figures=feet]')
    await layAllAway(page)
    await page.getByRole('button', { name: 'Shelf', exact: true }).click()
    await expect(page.locator('.shelf-panel')).toBeVisible()
    await page.locator('.versions').getByRole('button', { name: /^Look/ }).first().click()
    await axe(page, 'the shelf with versions and what differs', '.shelf-panel')
    const other = exampleText('pump-and-motor.json').replace('"share": 0.7', '"share": 0.8')
    await openText(page, 'motor.json', other)
    await expect(page.locator('.shelf-note summary')).toBeVisible()
    await axe(page, 'a file whose job is on the shelf with other contents', '.shelf-note')
    await page.getByRole('button', { name: 'Shelf', exact: true }).click()
    await openText(page, 'bad.json', '{"format":"holdfast-train"}')
    await expect(page.getByRole('alert')).toBeVisible()
    await page.getByText('Look at the text').click()
    await axe(page, 'a file that is refused, and its text', '[role=alert]')
    await chooseExample(page, 'leave-it-alone.json')
    await worked(page)
    await axe(page, 'a train that may stay as it is', '.sentence')
    await openText(page, 'impossible.json', impossible())
    await expect(page.locator('.remedy').first()).toBeVisible()
    await axe(page, 'a conflict with its remedies', '.sentence', '.ledger')
    await page.locator('.remedy .tool').first().click()
    await drawn(page)
    await axe(page, 'a remedy tried on a copy', '.sentence', '.trial')
    await page.getByRole('button', { name: 'New train' }).click()
    await layAllOpen(page)
    await axe(page, 'a new train')
  },
)

test('axe finds nothing at the machine, by day and night', { tag: '@whole' }, async ({ page }) => {
  await openSheet(page)
  await chooseExample(page, 'pump-and-motor.json')
  await worked(page)
  await page.getByRole('button', { name: 'At the machine' }).click()
  const card = page.locator('.machine-face')
  await expect(card).toBeVisible()
  await axe(page, 'the first card')
  const next = page.getByRole('button', { name: /^next/i })
  const seen = new Set<string>()
  for (let i = 0; i < 12 && (await next.isEnabled()); i++) {
    await next.click()
    const kind = (await card.locator('.digits').count()) > 0 ? 'a foot' : 'readings'
    if (!seen.has(kind)) await axe(page, `a card of ${kind}`)
    seen.add(kind)
  }
  expect([...seen].sort()).toEqual(['a foot', 'readings'])
})

test('whatever takes the focus by the Tab key shows it', { tag: '@whole' }, async ({ page }) => {
  await openSheet(page)
  await chooseExample(page, 'pump-and-motor.json')
  await worked(page)
  await layAllOpen(page)
  await page.getByRole('button', { name: 'Shelf', exact: true }).focus()
  const unseen: string[] = []
  let stops = 0
  for (; stops < 700; stops++) {
    await page.keyboard.press('Tab')
    const told = await page.evaluate(() => {
      const element = document.activeElement
      if (!element || element === document.body) return undefined
      /** An outline or border that the same thing, or what stands for it, has only in focus. */
      const ringed = (one: Element | null | undefined): boolean => {
        if (!one) return false
        const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(one)
        return (
          outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2 && !/, 0\)$/.test(outlineColor)
        )
      }
      const stands = [element, element.nextElementSibling, element.closest('label, .tool, .box')]
      const press = element.querySelector('.press')
      const drawn = press !== null && parseFloat(getComputedStyle(press).strokeWidth) >= 2
      const name = element.getAttribute('aria-label') ?? element.textContent.trim()
      return {
        shown: stands.some(ringed) || drawn,
        name: `${element.className} ${name}`.slice(0, 80),
      }
    })
    if (!told) break
    if (!told.shown) unseen.push(told.name)
  }
  expect(stops).toBeGreaterThan(60)
  expect([...new Set(unseen)]).toEqual([])
})

test(
  'by touch on a tablet every target of the sheet is 48 px',
  { tag: '@whole' },
  async ({ browser, baseURL }) => {
    const context = await browser.newContext({
      viewport: { width: 1024, height: 768 },
      hasTouch: true,
      ...(baseURL !== undefined && { baseURL }),
    })
    const page = await context.newPage()
    await openSheet(page)
    expect(await page.evaluate(() => matchMedia('(pointer: coarse)').matches)).toBe(true)
    await chooseExample(page, 'pump-and-motor.json')
    await worked(page)
    await layAllOpen(page)
    expect(await small(page)).toEqual([])

    // an entry that is no value, the shelf, a file that is refused, one that is on the shelf
    await page.locator('[data-figures=feet] .cell.number input').first().fill('1,2,3')
    await expect(page.locator('.stale-note')).toContainText('1,2,3')
    await page.getByRole('button', { name: 'Shelf', exact: true }).tap()
    await page.locator('.versions').getByRole('button', { name: /^Look/ }).first().tap()
    const other = exampleText('pump-and-motor.json').replace('"share": 0.7', '"share": 0.8')
    await openText(page, 'motor.json', other)
    await expect(page.locator('.shelf-note summary')).toBeVisible()
    await openText(page, 'torn.json', '{ "format": ')
    await expect(page.locator('.refusal')).toBeVisible()
    expect(await small(page)).toEqual([])
    await page.getByRole('button', { name: 'New train' }).tap()
    await expect(page.locator('.stale-note button')).toHaveText(/^Add the machines/)
    expect(await small(page)).toEqual([])
    await context.close()
  },
)

/** What may be pressed on the page and is smaller than a finger. */
async function small(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll('button, select, summary, input, textarea, [role=button]'),
    ].flatMap((target) => {
      if (target.getAttribute('aria-hidden') === 'true' || !target.checkVisibility()) return []
      // what is pressed is the label where the box itself is small or unseen
      const press = target.querySelector('.press')
      const around = press ? parseFloat(getComputedStyle(press).strokeWidth) : 0
      const pressed = [target, target.closest('label')].flatMap((one) =>
        one ? [one.getBoundingClientRect()] : [],
      )
      if (pressed.some(({ height, width }) => height >= 47.5 && width + around >= 47.5)) return []
      const [box] = pressed
      const name = target.getAttribute('aria-label') ?? target.textContent.trim()
      return [
        `${target.tagName} .${target.getAttribute('class') ?? ''} ${name.slice(0, 30)} ${Math.round(box?.width ?? 0)} x ${Math.round(box?.height ?? 0)}`,
      ]
    }),
  )
}
