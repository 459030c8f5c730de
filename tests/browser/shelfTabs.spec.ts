import { readFileSync } from 'node:fs'
import { expect, test, type CDPSession, type Page } from '@playwright/test'
import { exampleText, openText } from './sheet'
import {
  isKept,
  jobs,
  keepShare,
  kept,
  notes,
  openPage,
  openShelf,
  ready,
  share,
  versions,
} from './shelfPage'

const hold = (page: Page, n: number) => page.locator('.holds .hold').nth(n)

test(
  'two tabs on one job see each other, and the idle one follows',
  { tag: '@whole' },
  async ({ page, context }) => {
    await openPage(page)
    await keepShare(page, 81)
    const other = await context.newPage()
    await openPage(other)
    await expect(share(other)).toHaveValue('81')
    await expect(page.locator('.also')).toHaveText('also in another tab')
    await expect(other.locator('.also')).toHaveText('also in another tab')
    await keepShare(other, 82)
    await expect(share(page)).toHaveValue('82')
    await expect(notes(page)).toContainText('Another tab changed this job at')
    await expect(notes(page)).toContainText('changed the tolerance to use')
    // following is no change of its own: nothing goes back and forth
    await openShelf(page)
    await expect(versions(page).first()).toContainText('changed the tolerance to use')
    await expect(notes(other)).toHaveCount(0)
    await keepShare(page, 83)
    await expect(share(other)).toHaveValue('83')
    await other.close()
    await expect(page.locator('.also')).toHaveCount(0)
    await expect(jobs(page)).toHaveCount(1)
  },
)

test('two tabs that change one job at the same time keep both', async ({ page, context }) => {
  await deafenable(page)
  await openPage(page)
  await keepShare(page, 81)
  const other = await context.newPage()
  await openPage(other)
  await expect(share(other)).toHaveValue('81')
  await stopHearing(page)
  await keepShare(other, 85)
  await hold(page, 0).click()
  await expect(notes(page).locator('h2')).toHaveText(
    'Blast air train was changed in another tab at the same time; both are kept',
  )
  await isKept(page)
  // each tab has what was typed in it
  await expect(share(page)).toHaveValue('81')
  await expect(hold(page, 0)).toHaveAttribute('aria-pressed', 'true')
  await expect(share(other)).toHaveValue('85')
  await expect(hold(other, 0)).toHaveAttribute('aria-pressed', 'false')
  await openShelf(page)
  await expect(jobs(page)).toHaveCount(2)
  await expect(jobs(page).first()).toContainText(/\(other tab, \d\d:\d\d:\d\d\)/)
  // from now on they are two jobs
  await keepShare(page, 82)
  await keepShare(other, 86)
  await page.reload()
  await ready(page)
  await expect(share(page)).toHaveValue('82')
  await openShelf(page)
  await jobs(page)
    .filter({ hasNotText: 'other tab' })
    .getByRole('button', { name: /^Open/ })
    .click()
  await expect(share(page)).toHaveValue('86')
})

/** The page no longer hears what other pages say, as one that was asleep. */
async function stopHearing(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.dispatchEvent(new Event('deafen'))
  })
}

/** Pages of this test can be made deaf to the others. */
async function deafenable(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const Heard = window.BroadcastChannel
    window.BroadcastChannel = class extends Heard {
      constructor(name: string) {
        super(name)
        window.addEventListener('deafen', () => {
          this.onmessage = null
        })
      }
    }
  })
}

/** Lets the origin have no more room than this (bytes); 0: as much as the browser gives. */
async function giveRoom(session: CDPSession, bytes: number): Promise<void> {
  await session.send('Storage.overrideQuotaForOrigin', {
    origin: new URL(test.info().project.use.baseURL ?? '').origin,
    ...(bytes > 0 && { quotaSize: bytes }),
  })
}

test(
  'a full disk is said loudly, work goes on, and it is kept when there is room',
  { tag: '@whole' },
  async ({ page, context }) => {
    await openPage(page)
    const session = await context.newCDPSession(page)
    await giveRoom(session, 1)
    await share(page).fill('82')
    await expect(page.getByRole('alert')).toContainText('This job cannot be kept here')
    await expect(page.getByRole('alert')).toContainText('the disk is full')
    await expect(kept(page)).toHaveText('cannot be kept')
    await share(page).fill('83')
    await ready(page)
    await expect(kept(page)).toHaveText('cannot be kept')
    const download = page.waitForEvent('download')
    await page.evaluate(() => {
      Object.assign(window, { showSaveFilePicker: undefined })
    })
    await page.getByRole('button', { name: 'Save a file now' }).click()
    const { plan } = JSON.parse(readFileSync(await (await download).path(), 'utf8')) as {
      plan: { share: number }
    }
    expect(plan.share).toBe(0.83)
    const again = page.getByRole('button', { name: 'Try again now' })
    await expect(again).toBeVisible()
    await giveRoom(session, 0)
    // the sheet tries again by itself too, and may have been there before the press
    await again.evaluateAll((there) => {
      for (const button of there) (button as HTMLButtonElement).click()
    })
    await isKept(page)
    await expect(page.getByRole('alert')).toHaveCount(0)
    await page.reload()
    await ready(page)
    await expect(share(page)).toHaveValue('83')
  },
)

test(
  'where the browser keeps nothing, files are opened and saved all the same',
  { tag: '@whole' },
  async ({ page }) => {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('switched off', 'SecurityError')
      }
    })
    await openPage(page)
    await share(page).fill('82')
    await expect(page.getByRole('alert').first()).toContainText('storage is switched off')
    await openText(page, 'pump.json', exampleText('pump-and-motor.json'))
    await expect(page.locator('.train-name')).not.toHaveText('Blast air train')
    await ready(page)
  },
)
