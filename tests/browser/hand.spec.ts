import { expect, test, type Locator, type Page } from '@playwright/test'
import { drawn, frames, openSheet as openDrawn, watch } from './sheet'
import { isKept, openShelf, versions } from './shelfPage'

/** Opens the sheet and waits until its plan is drawn as it is carried out, in shims of the store. */
async function openSheet(page: Page): Promise<void> {
  await openDrawn(page)
  await expect(page.locator('.step-list')).toBeVisible()
  await expect(page.locator('.foot .plates').first()).toBeVisible()
}

const headline = (page: Page) => page.locator('.sentence h1')
const panel = (page: Page) => page.locator('.hand-panel')
const handle = (page: Page, name: string) =>
  page.locator('.band-rise').getByRole('slider', { name: new RegExp(`^${name}: put by hand`) })
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ })
const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ })

/** What follows a machine that is carried: couplings, gates, packs and rooms of feet. */
async function following(page: Page): Promise<Record<'couplings' | 'gates' | 'feet', string>> {
  return {
    couplings: (await page.locator('.band-couplings .state-rows').allTextContents()).join('|'),
    gates: (
      await page
        .locator('.band-rise .gate-group')
        .evaluateAll((gates) => gates.map((gate) => gate.outerHTML))
    ).join('|'),
    feet: (await page.locator('.foot').allTextContents()).join('|'),
  }
}

/** Until what has happened is drawn. */
const painted = (page: Page) => frames(page, 2)

async function middle(place: Locator): Promise<{ x: number; y: number }> {
  await place.scrollIntoViewIfNeeded()
  const box = await place.locator('.ring').boundingBox()
  if (!box) throw new Error('the handle is not drawn')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

test(
  'an end of a shaft is carried by arrow keys: everything follows, edits are named, and it is kept',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    const best = await following(page)
    const bestHeadline = await headline(page).textContent()
    await expect(panel(page)).toHaveCount(0)
    const end = handle(page, 'the motor, right end')
    await end.focus()
    const was = Number(await end.getAttribute('aria-valuenow'))
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('ArrowUp')
    await expect(end).toHaveAttribute('aria-valuenow', String(was + 20))
    await expect(end).toHaveAttribute('aria-valuetext', /µm (above|below) zero/)
    await expect(headline(page)).toHaveText(/^Put by hand: this/)
    await page.keyboard.press('Shift+ArrowUp')
    await expect(end).toHaveAttribute('aria-valuenow', String(was + 120))
    await expect(end).toBeFocused()
    // what is out of the window follows when the hand rests
    for (const what of ['couplings', 'feet', 'gates'] as const)
      await expect.poll(async () => (await following(page))[what]).not.toBe(best[what])
    const put = await following(page)
    await expect(panel(page)).toContainText(
      /The best plan costs [\d ]+\sµm: by hand it is \d+\sµm (more|less)/,
    )
    await expect(page.locator('.last-edit')).toHaveText(/put the motor by hand/)

    // keys in one go are one edit, by its name
    await expect(undo(page)).toHaveAccessibleName(/put the motor by hand/)
    await page.keyboard.press('Control+z')
    await expect(headline(page)).toHaveText(bestHeadline ?? '')
    await expect.poll(() => following(page)).toEqual(best)
    await expect(redo(page)).toHaveAccessibleName(/put the motor by hand/)
    await redo(page).click()
    await expect.poll(() => following(page)).toEqual(put)

    // the best from here leaves the motor and plans the gear; back to best leaves nothing
    await panel(page).getByRole('button', { name: 'Best from here' }).click()
    await expect(panel(page).getByRole('status')).not.toHaveText(/^(planning the others)?$/)
    await expect(panel(page).getByRole('status')).toHaveText(
      /^(The others now stand where they cost least|With these left where they are, the best reachable by the others is \d+\s%)/,
    )
    await expect(end).toHaveAttribute('aria-valuenow', String(was + 120))
    await panel(page).getByRole('button', { name: 'Back to best' }).click()
    await expect(panel(page)).toHaveCount(0)
    await expect(headline(page)).toHaveText(bestHeadline ?? '')
    await expect.poll(async () => following(page)).toEqual(best)
    await expect(undo(page)).toHaveAccessibleName(/went back to the best plan/)

    // what is put by hand is kept: after a reload, and in its version
    await end.focus()
    for (let n = 0; n < 3; n++) await page.keyboard.press('Shift+ArrowUp')
    await expect(panel(page)).toBeVisible()
    await expect.poll(() => following(page)).not.toEqual(best)
    const kept = await following(page)
    const said = await panel(page).locator('p').first().textContent()
    await isKept(page)
    await page.reload()
    await expect(panel(page).locator('p').first()).toHaveText(said ?? '')
    await expect.poll(() => following(page)).toEqual(kept)
    await panel(page).getByRole('button', { name: 'Back to best' }).click()
    await expect.poll(() => following(page)).toEqual(best)
    await isKept(page)
    await openShelf(page)
    const version = versions(page).filter({ hasText: 'put the motor by hand' }).first()
    await version.getByRole('button', { name: /^Look/ }).click()
    await expect(version.locator('tbody tr').first()).toHaveText(
      /put by hand, motor, rise\s*"\d+\.\d µm up"\s*not there/,
    )
    await version.getByRole('button', { name: /^Take back/ }).click()
    await expect.poll(() => following(page)).toEqual(kept)
    expect(seen.faults).toEqual([])
  },
)

test(
  'an end is carried by mouse and the whole machine is one edit',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    const best = await following(page)
    const end = handle(page, 'the step-up gear, right end')
    const from = await middle(end)
    const height = () =>
      end.evaluate(
        (handle) =>
          handle.getBoundingClientRect().top -
          (handle.closest('.band')?.getBoundingClientRect().top ?? NaN),
      )
    const stood = await height()
    const was = Number(await end.getAttribute('aria-valuenow'))
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    for (const by of [4, 9, 15, 22]) await page.mouse.move(from.x + by, from.y - by)
    // what it comes to is told while it is carried
    await expect(headline(page)).toHaveText(/^Put by hand/)
    expect((await following(page)).gates).not.toBe(best.gates)
    // what is out of the window follows when the hand rests ...
    await expect.poll(async () => (await following(page)).couplings).not.toBe(best.couplings)
    // ... while it moves when it is in the window, in its turn ...
    const rested = await following(page)
    await page.locator('.band-couplings').evaluate((band) => {
      band.scrollIntoView()
    })
    await painted(page)
    const cost = await panel(page).textContent()
    // more moves than there are turns, and no rest between them
    for (let n = 1; n <= 24; n++) await page.mouse.move(from.x + 22, from.y - 22 - n / 6)
    // what it costs is told wherever the page stands
    expect(await panel(page).textContent()).not.toBe(cost)
    const seen = await following(page)
    expect(seen.couplings).not.toBe(rested.couplings)
    // ... and all of it when it lets go
    await page.mouse.move(from.x + 22, from.y - 30)
    await page.mouse.up()
    for (const [what, before] of [
      ['couplings', seen],
      ['feet', rested],
    ] as const)
      await expect.poll(async () => (await following(page))[what]).not.toBe(before[what])
    expect(Number(await end.getAttribute('aria-valuenow'))).toBeGreaterThan(was)
    expect(await height()).toBeLessThan(stood)
    await page.keyboard.press('Control+z')
    await expect(panel(page)).toHaveCount(0)
    await expect.poll(() => following(page)).toEqual(best)
  },
)

test.describe('by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 1024, height: 768 } })

  test(
    'a finger carries an end and the page does not scroll under it',
    { tag: '@whole' },
    async ({ page }) => {
      await openSheet(page)
      const end = handle(page, 'the motor, right end')
      const from = await middle(end)
      const was = Number(await end.getAttribute('aria-valuenow'))
      const finger = await page.context().newCDPSession(page)
      const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', by: number) =>
        finger.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: type === 'touchEnd' ? [] : [{ x: from.x, y: from.y - by }],
        })
      await touch('touchStart', 0)
      for (const by of [6, 12, 20, 30]) await touch('touchMove', by)
      await expect(headline(page)).toHaveText(/^Put by hand/)
      // it stays under the finger, which it would not if the page scrolled along
      const carried = await end.locator('.ring').boundingBox()
      expect(Math.abs((carried?.y ?? 0) + (carried?.height ?? 0) / 2 - (from.y - 30))).toBeLessThan(
        6,
      )
      await touch('touchEnd', 30)
      expect(Number(await end.getAttribute('aria-valuenow'))).toBeGreaterThan(was)
      await expect(undo(page)).toHaveAccessibleName(/put the motor by hand/)
      // the way back is in sight on a tablet too
      await page.getByRole('button', { name: 'Back to best' }).tap()
      await drawn(page)
      await expect(panel(page)).toHaveCount(0)
    },
  )
})
