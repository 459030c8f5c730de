import { withUnitsKept } from '../language/firmSpaces'
import { harmless } from '../language/harmless'
import { attribute, markup, type Markup } from './markup'
import {
  besideName,
  printNames,
  type Block,
  type Figure,
  type PaperFootCard,
  type Page,
  type Paper,
  type StepCard,
  type Table,
} from './page'
import { wideCards } from './print'
import { barLength } from './size'
import { stepColumns, type StepRun } from './stepRuns'
import { pageRule, paperStyle } from './style'
import { patterns, svgOf } from './svg'

/** The work sheet as a file that needs nothing else: style and drawings inside, no scripts, no fonts to fetch. */
export function paperHtml(paper: Paper): string {
  const title = markup`<title>${paper.train}: work sheet ${paper.revision}</title>`
  const head = markup`<meta charset="utf-8">${title}\n<style>${styleOf(paper)}</style>`
  const body = markup`<body>${bodyOf(paper)}</body>`
  return toPrint(markup`<!doctype html>\n<html lang="en"><head>${head}</head>\n${body}</html>\n`)
}

/** All pages, for a document that has the style already. */
export const paperBody = (paper: Paper): string => toPrint(bodyOf(paper))

/** No line ends between a number and its unit, nor within a foot's name such as "1-far". */
const toPrint = (made: Markup): string =>
  harmless(String(made))
    .replace(/>[^<]+/g, (text) => withUnitsKept(text))
    .split(noTags)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(/>[^<]+/g, footNamesKept)))
    .join('')

/** Parts of a file in which no tag may stand: they are left as they are. */
const noTags = /(<svg\b[^]*?<\/svg>|<style>[^]*?<\/style>|<title>[^]*?<\/title>)/g

/** The hyphen of "1-far" stays one, so that the name can be searched for. */
const footNamesKept = (text: string): string =>
  text.replace(/\b\d{1,2}-[A-Za-z]\w*/g, '<span class="firm">$&</span>')

/** The style of a file of its own, with a desk under the pages on the screen; a style sheet knows no escapes. */
const styleOf = (paper: Paper): Markup =>
  markup.raw`${pageRule(paper.size)}\nbody{margin:0}\n${desk}${paperStyle(paper.size)}`
const desk =
  '@media screen{body{background:#ccc}.paper{background:none}.paper .page{background:#fff;margin:8mm auto;padding:9mm 12mm;box-sizing:content-box}}'

const bodyOf = (paper: Paper): Markup =>
  markup`<div class="paper">${patterns}\n${lines(paper.pages.map((page, i) => pageOf(paper, page, i + 1)))}\n</div>`

/** Each on a line of its own. */
const lines = (parts: readonly Markup[]): Markup[] =>
  parts.map((part, i) => (i === 0 ? part : markup`\n${part}`))

/** Drawn, since boxes are moved to whole pixels of the browser and come out up to 0.3 mm short. */
const bar = markup`<svg class="bar" width="${barLength}mm" height="2mm" viewBox="0 0 ${barLength} 2" aria-hidden="true"><path d="M.175 0V1.8H${barLength - 0.175}V0"/></svg>`

function pageOf(paper: Paper, page: Page, number: number): Markup {
  const notice = paper.notice === '' ? '' : markup`<b class="notice">${paper.notice}</b> `
  const head = markup`<h2>${page.title}</h2><p>${notice}${paper.train}</p>`
  const scale = markup`${bar}<p class="bar-note">this bar is ${barLength} mm long: if it is not, print at 100 %</p>`
  const turn = [
    markup`<p><b>${printNames[paper.print]}, page ${number} of ${paper.pages.length}</b></p>`,
    markup`<p>revision ${paper.revision}, ${paper.date}</p>`,
  ]
  return markup`<section class="page is-${page.section}">${lines([
    markup`<header class="page-head">${head}</header>`,
    markup`<div class="page-body">${lines(page.blocks.map(blockOf))}</div>`,
    markup`<footer class="page-foot"><div>${scale}</div><div class="turn">${turn}</div></footer>`,
  ])}</section>`
}

function blockOf(block: Block): Markup {
  switch (block.kind) {
    case 'title':
      return markup`<h2 class="title">${block.text}</h2>`
    case 'heading': {
      const aside = block.aside === undefined ? '' : markup` <small>${block.aside}</small>`
      return markup`<h3>${block.text}${aside}</h3>`
    }
    case 'text':
      return markup`<p class="${block.look}">${block.text}</p>`
    case 'box':
      return markup`<div class="box"><b class="title">${block.title}</b>${list('plain', block.items)}</div>`
    case 'list':
      return list(block.look, block.items)
    case 'table':
      return tableOf(block)
    case 'figures':
      return markup`<div class="figures">${block.figures.map(figureOf)}</div>`
    case 'blanks':
      return markup`<div class="blanks c${block.columns}">${block.labels.map(plain)}</div>`
    case 'boxes': {
      const boxes = block.boxes.map(
        ({ label, value }) => markup`<div><p>${label}</p>${line('value', value)}</div>`,
      )
      return markup`<div class="boxes c${block.columns}">${boxes}</div>`
    }
    case 'code': {
      const letters = block.groups.map((part, i) =>
        i === 0 ? markup`${part}` : markup`<br>${part}`,
      )
      return markup`<div class="code">${svgOf(block.figure)}<b>${letters}</b></div>`
    }
    case 'step':
      return stepOf(block.step)
    case 'beside': {
      const all = block.parts.reduce((sum, { width }) => sum + width, 0)
      const parts = block.parts.map(
        ({ width, blocks }) =>
          markup`<div class="part w${Math.round((width / all) * 24)}">${blocks.map(blockOf)}</div>`,
      )
      return markup`<div class="beside">${parts}</div>`
    }
    case 'feet':
      return markup`<div class="feet c${block.columns}">${block.cards.map((card) => cardOf(card, block.columns))}</div>`
  }
}

const plain = (text: string): Markup => markup`<p>${text}</p>`

const list = (look: string, items: readonly string[]): Markup =>
  markup`<ul class="${look}">${items.map((item) => markup`<li>${item}</li>`)}</ul>`

function tableOf({ columns, rows, tall }: Table): Markup {
  const all = columns.reduce((sum, { width }) => sum + width, 0)
  const side = (c: number) => (columns[c]?.align === 'right' ? 'right' : '')
  const heads = columns.map(({ head }, c) => markup`<th${classes(side(c))}>${head}</th>`)
  const body = rows.map((row) => {
    const cells = row.map((text, c) => {
      const look = [
        side(c),
        columns[c]?.strong === true ? 'strong' : '',
        text === '' ? 'blank' : '',
      ]
      return markup`<td${classes(...look)}>${text}</td>`
    })
    return markup`<tr>${cells}</tr>`
  })
  const widths = columns.map(
    ({ width }) => markup`<col width="${((width / all) * 100).toFixed(2)}%">`,
  )
  return markup`<table${classes(tall === true ? 'tall' : '')}>${[
    markup`<colgroup>${widths}</colgroup>`,
    markup`<thead><tr>${heads}</tr></thead><tbody>${body}</tbody>`,
  ]}</table>`
}

const classes = (...names: readonly string[]): Markup =>
  attribute('class', names.filter((name) => name !== '').join(' '))

function figureOf(figure: Figure): Markup {
  const { caption } = figure
  const under = caption === undefined ? '' : markup`<figcaption>${caption}</figcaption>`
  return markup`<figure>${svgOf(figure)}${under}</figure>`
}

const line = (look: string, text: string | undefined): Markup =>
  text === undefined || text === '' ? markup`` : markup`<p class="${look}">${text}</p>`

/** Words at the left, pack and hole drawn at the right of them; a narrow card has its slide under the drawing. */
function cardOf(card: PaperFootCard, columns: number): Markup {
  const wide = columns <= wideCards
  const slide = [line('do', card.slide), line('toward', card.toward), line('toward', card.along)]
  const words = [line('do', card.shim), line('pack', card.pack), line('recipe', card.recipe)]
  const room = line('room', card.room)
  return markup`<div class="card">${[
    markup`<div class="foot"><b>${card.name}</b><span>${besideName(card)}</span></div>`,
    markup`<div class="words"><div>${wide ? [...words, ...slide] : words}</div><div class="drawn">${figureOf(card.figure)}${wide ? room : ''}</div></div>`,
    wide ? '' : markup`${[...slide, room]}`,
    line('bound', card.bound.join(', ')),
    markup`<div class="actuals">${card.actuals.map(plain)}</div>`,
  ]}</div>`
}

function stepOf(step: StepCard): Markup {
  const { stop, over } = step
  const words = [
    markup`<p class="strong">${step.words}</p>`,
    step.breaks.map((text) => line('strong', text)),
    runsOf(step),
    stop === undefined ? '' : markup`<p class="stop"><b>STOP POINT.</b> ${stop}</p>`,
    line('strong', over),
  ]
  return markup`<div class="step"><div class="sign"><b class="number">${step.number}</b>${step.sign.map(plain)}</div><div>${words}</div></div>`
}

/** Small print of a step, what is done beside what is seen; one stack alone stands by itself. */
function runsOf(step: StepCard): Markup | string {
  const columns = stepColumns(step).map(
    ({ width, cautions, runs }) =>
      [
        width,
        markup`${cautions.length === 0 ? '' : list('dash', cautions)}${runs.map(runOf)}`,
      ] as const,
  )
  if (columns.length < 2) return columns[0]?.[1] ?? ''
  const parts = columns.map(
    ([width, made]) => markup`<div class="part w${2 * width}">${made}</div>`,
  )
  return markup`<div class="beside">${parts}</div>`
}

const runOf = ({ title, text, lines: each }: StepRun): Markup =>
  markup`<p class="run"><b>${title}</b> ${text}${each.map((one) => markup`<br>${one}`)}</p>`
