import { expect, test, type Locator, type Page } from '@playwright/test'
import { chooseExample, openSheet, watch } from './sheet'

// Every kind of cell that the sheet has, in a real browser: chosen by a click, typed over, edited by a second click,
// F2 or Enter, given back by Escape, walked by arrows and Tab.

/** [what it is, its place, what stands there first where nothing does, what is typed] */
const boxes = [
  ['a number of a table', 'machines[0].feet[0].pack.now', '', '2100'],
  ['a place along the train', 'machines[0].feet[0].x', '', '610'],
  ['a number among fields', 'plan.guard', '1', '2'],
  ['a reading', 'couplings[0].found[0].readings[1][1]', '', '77'],
  ['a temperature', 'states[1].temperature', '20', '-5'],
  ['a name in a table', 'machines[1].name', '', 'Expander'],
  ['a text among fields', 'site', 'East hall', 'Quay'],
  ['a text of several lines', 'note', '', 'as read'],
  ['a fact of the record', 'record.facts.tag', 'K-101', 'K-102'],
  ['a long reason', 'record.facts.acceptance', 'as agreed', 'as told'],
] as const

const cell = (page: Page, at: string) => page.locator(`[data-cell][data-at='${at}']`).first()
const chosen = (box: Locator): Promise<string> =>
  box.evaluate((el: HTMLInputElement | HTMLTextAreaElement) =>
    el.value.slice(el.selectionStart ?? 0, el.selectionEnd ?? 0),
  )
/** Where the keyboard is, as the place in the file; "" where it is in no cell. */
const here = (page: Page): Promise<string> =>
  page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset['at'] ?? '')

async function open(page: Page): Promise<void> {
  await openSheet(page)
  await chooseExample(page, 'bolt-bound-gearbox.json')
  for (const band of ['plan', 'train', 'feet', 'readings', 'states', 'record'])
    await page.locator(`.figures-button[data-enters="${band}"]`).first().click()
  await expect(cell(page, 'states[1].tolerance')).toBeVisible()
  // what few need is folded away
  await page.locator('.figures details').evaluateAll((folds) => {
    for (const fold of folds as HTMLDetailsElement[]) fold.open = true
  })
}

test(
  'every kind of box is chosen, typed over, edited, given back and walked from',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await open(page)
    const keys = page.keyboard
    for (const [what, at, first, typed] of boxes)
      await test.step(what, async () => {
        const box = cell(page, at)
        // two figures of one band take turns
        if (at === 'site') await page.locator('.figures-button[data-enters="job"]').first().click()
        if (first !== '') {
          await box.click()
          await keys.type(first)
          await page.locator('h1').first().click()
        }
        const was = await box.inputValue()
        expect(was).not.toBe('')

        // a click chooses all of it, and typing replaces it; Escape gives back
        await box.click()
        expect(await chosen(box)).toBe(was)
        await keys.type(typed)
        await expect(box).toHaveValue(typed)
        await keys.press('Escape')
        await expect(box).toHaveValue(was)
        expect(await chosen(box)).toBe(was)

        // a second click, F2 and Enter edit what stands there
        for (const edit of ['click', 'F2', 'Enter'] as const) {
          if (edit === 'click') {
            await box.click()
            expect(await chosen(box)).toBe(was)
            await box.click()
          } else await keys.press(edit)
          await keys.press('Control+End')
          await keys.type('1')
          await expect(box, edit).toHaveValue(`${was}1`)
          await keys.press('Home')
          expect(await here(page), edit).toBe(at)
          await keys.press('Escape')
          await expect(box, edit).toHaveValue(was)
        }

        // what is typed over stays when one goes on, by an arrow or by Tab, and is chosen when one comes back
        await keys.type(typed)
        await keys.press('ArrowLeft')
        const long = (await box.evaluate((el) => el.tagName)) === 'TEXTAREA'
        if (!long) {
          expect(await here(page)).not.toBe(at)
          await keys.press('ArrowRight')
          expect(await here(page)).toBe(at)
          expect(await chosen(box)).toBe(typed)
        }
        await keys.press('Tab')
        expect(await here(page)).not.toBe(at)
        await expect(box).toHaveValue(typed)
        await keys.press('Shift+Tab')
        expect(await here(page)).toBe(at)
        expect(await chosen(box)).toBe(typed)

        // one edit, taken back as one
        await keys.press('Control+z')
        await expect(box).toHaveValue(was)
      })
    expect(seen.faults).toEqual([])
  },
)

test(
  'arrows walk past lists and ticks and change neither; Space ticks',
  { tag: '@whole' },
  async ({ page }) => {
    await open(page)
    const keys = page.keyboard
    const list = cell(page, 'machines[0].role')
    const role = await list.inputValue()
    await list.focus()
    for (const [key, back] of [
      ['ArrowDown', 'ArrowUp'],
      ['ArrowLeft', 'ArrowRight'],
    ] as const) {
      await keys.press(key)
      expect(await here(page), key).not.toBe('machines[0].role')
      await keys.press(back)
      expect(await here(page), back).toBe('machines[0].role')
    }
    await expect(list).toHaveValue(role)

    const tick = cell(page, 'machines[0].free.axial')
    const before = await tick.isChecked()
    await tick.focus()
    await keys.press('ArrowRight')
    expect(await here(page)).toBe('machines[0].free.roll')
    await keys.press('ArrowLeft')
    await expect(tick).toBeFocused()
    expect(await tick.isChecked()).toBe(before)
    await keys.press('Space')
    expect(await tick.isChecked()).toBe(!before)
    await keys.press('Control+z')
    await expect(tick).toBeChecked({ checked: before })
  },
)
