import { escape } from './escape'
import type { Block, Figure, FootCard, Page, Paper, StepCard, Table } from './page'
import { wideCards } from './print'
import { barLength } from './size'
import { pageRule, paperStyle } from './style'
import { patterns, svgOf } from './svg'

/** The work sheet as a file that needs nothing else: style and drawings inside, no scripts, no fonts to fetch. */
export const paperHtml = (paper: Paper): string =>
  '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">' +
  `<title>${escape(paper.train)}: work sheet ${escape(paper.revision)}</title>\n<style>` +
  `${pageRule(paper.size)}\nbody{margin:0}\n` +
  '@media screen{body{background:#ccc}.paper{background:none}.paper .page{background:#fff;margin:8mm auto;padding:9mm 12mm;box-sizing:content-box}}' +
  `${paperStyle(paper.size)}</style></head>\n<body>${paperBody(paper)}</body></html>\n`

/** All pages, for a document that has the style already. */
export const paperBody = (paper: Paper): string =>
  `<div class="paper">${patterns}\n${paper.pages.map((page, i) => pageOf(paper, page, i + 1)).join('\n')}\n</div>`

/** Drawn, since boxes are moved to whole pixels of the browser and come out up to 0.3 mm short. */
const bar = `<svg class="bar" width="${barLength}mm" height="2mm" viewBox="0 0 ${barLength} 2" aria-hidden="true"><path d="M.175 0V1.8H${barLength - 0.175}V0"/></svg>`

const pageOf = (paper: Paper, page: Page, number: number): string =>
  `<section class="page is-${page.section}"><header class="page-head"><h2>${escape(page.title)}</h2>` +
  `<p>${paper.notice === '' ? '' : `<b class="notice">${escape(paper.notice)}</b> `}${escape(paper.train)}</p></header>\n<div class="page-body">` +
  `${page.blocks.map(blockOf).join('\n')}</div>\n<footer class="page-foot">` +
  `<div>${bar}<p class="bar-note">this bar is ${barLength} mm long: if it is not, print at 100 %</p></div>` +
  `<div class="turn"><p><b>page ${number} of ${paper.pages.length}</b></p>` +
  `<p>revision ${escape(paper.revision)}</p><p>${escape(paper.date)}</p></div></footer></section>`

function blockOf(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h3>${escape(block.text)}${block.aside === undefined ? '' : ` <small>${escape(block.aside)}</small>`}</h3>`
    case 'text':
      return `<p class="${block.look}">${escape(block.text)}</p>`
    case 'box':
      return `<div class="box"><b class="title">${escape(block.title)}</b><ul class="plain">${items(block.items)}</ul></div>`
    case 'list':
      return `<ul class="${block.look}">${items(block.items)}</ul>`
    case 'table':
      return tableOf(block)
    case 'figures':
      return `<div class="figures">${block.figures.map(figureOf).join('')}</div>`
    case 'blanks':
      return `<div class="blanks c${block.columns}">${block.labels.map((text) => `<p>${escape(text)}</p>`).join('')}</div>`
    case 'step':
      return stepOf(block.step)
    case 'feet':
      return `<div class="feet c${block.columns}">${block.cards.map((card) => cardOf(card, block.columns)).join('')}</div>`
  }
}

const items = (list: readonly string[]): string =>
  list.map((item) => `<li>${escape(item)}</li>`).join('')

function tableOf({ columns, rows, tall }: Table): string {
  const all = columns.reduce((sum, { width }) => sum + width, 0)
  const side = (c: number) => (columns[c]?.align === 'right' ? 'right' : '')
  const heads = columns.map(({ head }, c) => `<th${classes(side(c))}>${escape(head)}</th>`)
  const body = rows.map((row) => {
    const cells = row.map((text, c) => {
      const look = [
        side(c),
        columns[c]?.strong === true ? 'strong' : '',
        text === '' ? 'blank' : '',
      ]
      return `<td${classes(...look)}>${escape(text)}</td>`
    })
    return `<tr>${cells.join('')}</tr>`
  })
  const widths = columns.map(({ width }) => `<col width="${((width / all) * 100).toFixed(2)}%">`)
  return (
    `<table${classes(tall === true ? 'tall' : '')}><colgroup>${widths.join('')}</colgroup>` +
    `<thead><tr>${heads.join('')}</tr></thead><tbody>${body.join('')}</tbody></table>`
  )
}

function classes(...names: readonly string[]): string {
  const given = names.filter((name) => name !== '')
  return given.length === 0 ? '' : ` class="${given.join(' ')}"`
}

const figureOf = (figure: Figure): string =>
  `<figure>${svgOf(figure)}${figure.caption === undefined ? '' : `<figcaption>${escape(figure.caption)}</figcaption>`}</figure>`

const line = (look: string, text: string | undefined): string =>
  text === undefined || text === '' ? '' : `<p class="${look}">${escape(text)}</p>`

/** Narrow cards have no room for a slide beside the drawing. */
function cardOf(card: FootCard, columns: number): string {
  const slide = line('do', card.slide)
  const wide = columns <= wideCards
  return (
    `<div class="card"><div class="foot"><b>${escape(card.name)}</b><span>${escape(card.place)}</span></div>` +
    line('do', card.shim) +
    `<div class="words"><div>${card.pack.map((text) => line('pack', text)).join('')}${line('recipe', card.recipe)}${wide ? slide : ''}</div>${figureOf(card.figure)}</div>` +
    (wide ? '' : slide) +
    line('toward', card.toward) +
    line('toward', card.along) +
    card.dials.map((text) => line('dial', text)).join('') +
    line('room', card.room) +
    line('bound', card.bound.join(', ')) +
    `<div class="actuals">${card.actuals.map((text) => `<p>${escape(text)}</p>`).join('')}</div></div>`
  )
}

const stepOf = (step: StepCard): string =>
  `<div class="step"><div class="number">${step.number}</div><div><p class="strong">${escape(step.words)}</p>` +
  step.breaks.map((text) => line('strong', text)).join('') +
  part('', step.cautions) +
  part('Dials, from 0', step.dials) +
  part('Then the couplings should show', step.expected) +
  (step.hold === undefined ? '' : `<p class="hold"><b>HOLD.</b> ${escape(step.hold)}</p>`) +
  '</div><div class="sign"><p>done</p><p>time</p><p>by</p></div></div>'

const part = (title: string, texts: readonly string[]): string =>
  texts.length === 0
    ? ''
    : `${title === '' ? '' : `<p class="part">${title}:</p>`}<ul class="dash">${items(texts)}</ul>`
