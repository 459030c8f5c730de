import { paperBody } from '../../paper/html'
import type { Paper } from '../../paper/page'
import { pageRule, paperStyle } from '../../paper/style'

const mark = 'prints-paper'
let host: HTMLElement | undefined
let rule: CSSStyleSheet | undefined

/**
 * Puts a work sheet where print finds it and the screen does not. It stands in a shadow of its own,
 * so that neither the page's styles reach it nor its own the page; the styles are handed over as
 * objects, since the content rules allow no style inside the page.
 */
export function putPaper(paper: Paper): void {
  takePaper()
  host = document.createElement('div')
  host.className = 'printed-paper'
  const root = host.attachShadow({ mode: 'open' })
  root.innerHTML = paperBody(paper)
  const style = new CSSStyleSheet()
  style.replaceSync(paperStyle(paper.size))
  root.adoptedStyleSheets = [style]
  rule = new CSSStyleSheet()
  rule.replaceSync(pageRule(paper.size))
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rule]
  document.body.append(host)
  document.documentElement.classList.add(mark)
}

/** Whether paper stands there: somebody asked for this print. */
export const paperStands = (): boolean => host !== undefined

/** Takes it away again: the next print is of what stands then. */
export function takePaper(): void {
  host?.remove()
  host = undefined
  document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== rule)
  rule = undefined
  document.documentElement.classList.remove(mark)
}
