import { expect, test } from '@playwright/test'
import { paperHtml } from '../../src/paper/html'
import { pageHeight } from '../../src/paper/size'
import { exampleNames, exampleOf, made } from '../paper/sheets'

/** What is wrong with a page laid out as for print; empty when nothing is. */
interface Laid {
  readonly title: string
  readonly height: number
  readonly bar: number
  readonly faults: readonly string[]
}

const long = process.env['HOLDFAST_LONG'] === '1'
/** Every example at full count; else those that show packs, an impossible hold made possible, and nothing to move. */
const names = {
  a4: long
    ? exampleNames
    : exampleNames.filter((name) => /piped-compressor|five-in-a-line|leave-it-alone/.test(name)),
  // the same pages, a little wider and lower: the longest of them at usual count
  letter: long ? exampleNames : ['five-in-a-line'],
}

// one after the other in one process, which plans each example once
test.describe.configure({ mode: 'default' })

for (const size of ['a4', 'letter'] as const)
  for (const print of ['crew', 'office'] as const)
    test(`for the ${print} on ${size} nothing runs over, touches or is cut`, async ({ page }) => {
      await page.emulateMedia({ media: 'print' })
      await page.setViewportSize({ width: 718, height: 1000 })
      for (const name of names[size]) {
        const { paper } = await made(exampleOf(name), size, print)
        await page.setContent(paperHtml(paper))
        const pages = await page.evaluate(layout)
        expect(pages.length, name).toBe(paper.pages.length)
        for (const { title, height, bar, faults } of pages) {
          const at = `${name}, ${title}`
          expect
            .soft(height, `${at}: one sheet of paper`)
            .toBeLessThanOrEqual(pageHeight(size) + 0.3)
          expect.soft(Math.abs(bar - 100), `${at}: the bar`).toBeLessThan(0.05)
          expect.soft(faults, at).toEqual([])
        }
      }
    })

test('printed, the bar is 100 mm and every page is one sheet', async ({ page }) => {
  const { paper } = await made(exampleOf('five-in-a-line'), 'letter')
  await page.setContent(paperHtml(paper))
  const bytes = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
  expect((bytes.match(/\/Type\s*\/Page\b/g) ?? []).length).toBe(paper.pages.length)
  // 8.5 in is 612 points
  expect(bytes).toMatch(/\/MediaBox\s*\[0 0 61[12](\.\d+)? 79[12]/)
})

/** Runs in the page: sizes in mm, and what runs out of its box or into its neighbour. */
function layout(): Laid[] {
  const mm = (px: number) => (px / 96) * 25.4
  const over = (box: DOMRect, inside: DOMRect) =>
    box.left < inside.left - 1 ||
    box.right > inside.right + 1 ||
    box.top < inside.top - 1 ||
    box.bottom > inside.bottom + 1
  return [...document.querySelectorAll('.page')].map((sheet) => {
    const faults: string[] = []
    const box = sheet.getBoundingClientRect()
    const title = sheet.querySelector('h2')?.textContent ?? ''
    for (const element of sheet.querySelectorAll('p, td, th, li, svg, svg text, b'))
      if (over(element.getBoundingClientRect(), box))
        faults.push(`off the page: ${element.textContent.slice(0, 60)}`)
    for (const element of sheet.querySelectorAll('td, th, .card, .box, .actuals p, .step'))
      if (element.scrollWidth > element.clientWidth + 1)
        faults.push(`too wide: ${element.textContent.slice(0, 60)}`)
    const blocks = [...sheet.querySelectorAll('.page-body > *, .part > *')]
    const foot = sheet.querySelector('.page-foot')?.getBoundingClientRect()
    blocks.forEach((block, i) => {
      const following = blocks[i + 1]
      // stacks beside each other begin anew, and what lies in one is no neighbour of it
      if (
        following &&
        (block.contains(following) || following.parentElement !== block.parentElement)
      )
        return
      const next = following?.getBoundingClientRect() ?? foot
      if (next && block.getBoundingClientRect().bottom > next.top + 1)
        faults.push(`into the next: ${block.textContent.slice(0, 60)}`)
    })
    const labels = [...sheet.querySelectorAll('figure')].flatMap((figure) => {
      const texts = [...figure.querySelectorAll('text')].map((text) => ({
        text: text.textContent,
        at: text.getBoundingClientRect(),
      }))
      return texts.flatMap((a, i) =>
        texts
          .slice(i + 1)
          .filter(
            (b) =>
              Math.min(a.at.right, b.at.right) - Math.max(a.at.left, b.at.left) > 1 &&
              Math.min(a.at.bottom, b.at.bottom) - Math.max(a.at.top, b.at.top) > 4,
          )
          .map((b) => `labels over each other: ${a.text} and ${b.text}`),
      )
    })
    const bar = sheet.querySelector('.bar')?.getBoundingClientRect().width ?? 0
    return { title, height: mm(box.height), bar: mm(bar), faults: [...faults, ...labels] }
  })
}
