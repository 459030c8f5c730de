import { paperHtml } from '../../src/paper/html'
import type { Paper } from '../../src/paper/page'
import { inSentence } from '../../src/language/names'
import type { Train } from '../../src/mechanics/train'
import { textOf } from './names'
import { page } from './sheet'

/** A step as one face tells it. */
export interface ToldStep {
  readonly number: number
  readonly words: string
  readonly cautions: readonly string[]
  readonly stop: string
}

/** A foot as one face tells it; texts that a face does not say are empty. */
export interface ToldFoot {
  readonly name: string
  readonly shim: string
  readonly recipe: string
  readonly steps: string
}

const all = (root: ParentNode, selector: string): Element[] => [...root.querySelectorAll(selector)]
const texts = (root: ParentNode, selector: string): string[] => all(root, selector).map(textOf)
const text = (root: ParentNode, selector: string): string => texts(root, selector)[0] ?? ''

/** The order of work of a plan as plain text, on one line: folded as it is, its sentences can be looked up there. */
export function textOrder(plan: string): string {
  const [, order = ''] = plan.split('\nORDER OF WORK\n')
  const [part = ''] = order.split(/\n\n(?=[A-Z]{3,})/)
  return part.replace(/\s+/g, ' ')
}

export function paperFaces(paper: Paper): { steps: ToldStep[]; feet: ToldFoot[] } {
  const document = new DOMParser().parseFromString(paperHtml(paper), 'text/html')
  return {
    steps: wholeSteps(
      all(document, '.step').map((step) => ({
        number: Number(text(step, '.number')),
        words: text(step, '.strong'),
        cautions: texts(all(step, 'ul')[0] ?? step, 'li'),
        stop: text(step, '.stop'),
      })),
    ),
    feet: all(document, '.card').map((card) => {
      const beside = text(card, '.foot span')
      return {
        name: `${machineOver(document, card)} ${text(card, '.foot b').replace(/^Foot /, '')}`,
        shim: text(card, '.do'),
        recipe: text(card, '.recipe'),
        steps: /step[^;]*$/.exec(beside)?.[0] ?? '',
      }
    }),
  }
}

/** A step that goes on over the page has two cards and is one step. */
function wholeSteps(cards: readonly ToldStep[]): ToldStep[] {
  const out: ToldStep[] = []
  for (const card of cards) {
    const begun = out.at(-1)
    if (begun && card.words === `Step ${begun.number}, continued`)
      out[out.length - 1] = { ...begun, stop: card.stop }
    else out.push(card)
  }
  return out
}

/** Whose card it is by the last title over it: "Motor: steps 1, 2 and 3". */
function machineOver(document: Document, card: Element): string {
  const over = all(document, 'h2, .card').slice(0, all(document, 'h2, .card').indexOf(card))
  const title = over.findLast(({ tagName }) => tagName === 'H2')
  return title ? textOf(title).replace(/(: steps? [^:]*)?$/, '') : ''
}

/** The sheet that is mounted. */
export function sheetFaces(train: Train): { steps: ToldStep[]; feet: ToldFoot[] } {
  return {
    steps: all(document, '.step-list > li').map((step, i) => ({
      number: i + 1,
      words: text(step, '.step-words b:not(.over)'),
      cautions: texts(step, '.caution-line'),
      stop: text(step, '.stop-point'),
    })),
    feet: all(document, '.band-feet li.foot').flatMap((card) => {
      const asked = card.querySelector('[aria-label^="why this much"]')?.getAttribute('aria-label')
      const foot = train.bodies
        .flatMap(({ name, feet }) => feet.map(({ id }) => ({ name, id })))
        .find(({ name, id }) => asked === `why this much at ${inSentence(name)} foot ${id}?`)
      if (!foot) return []
      return [
        {
          name: `${foot.name} ${foot.id}`,
          shim: text(card, '.do'),
          recipe: text(card, '.plates'),
          steps: text(card, '.steps'),
        },
      ]
    }),
  }
}

/** A card of the face at the machine. */
export interface MachineCard extends ToldStep {
  readonly name: string
  readonly feet: readonly string[]
  /** "put in 0.35 mm", "slide 0.20 mm toward the lake". */
  readonly act: string
  readonly recipe: string
}

/** Every card of the face at the machine, gone through from first to last. */
export async function machineCards(): Promise<MachineCard[]> {
  await page.getByRole('button', { name: 'At the machine', exact: true }).click()
  await page.locator('.machine-face .where').one()
  const next = page.getByRole('button', { name: 'Next' })
  const cards = [machineCard()]
  while (await next.isEnabled()) {
    await next.click()
    cards.push(machineCard())
  }
  return cards
}

function machineCard(): MachineCard {
  const face = document.querySelector('.machine-face') ?? document
  const [, number = '', name = ''] =
    /^Step (\d+) of .* done: (.*)$/.exec(text(face, '.where')) ?? []
  const [, ids = ''] = /, (?:foot|feet) (.*)$/.exec(text(face, '.which')) ?? []
  const whole = /^Step (\d+): (.*)$/.exec(text(face, '.whole-step'))
  const [, recipe = ''] = texts(face, '.recipe')
  const parts = [
    text(face, '.verb').toLowerCase(),
    `${text(face, '.giant .digits')} ${text(face, '.giant-unit')}`,
    text(face, '.toward').replace(text(face, '.toward .seen'), ''),
  ]
  return {
    number: Number(number),
    words: whole?.[1] === number ? (whole[2] ?? '') : '',
    cautions: texts(face, '.cautions > p:not([class])').filter(
      (one) => !one.startsWith('Then the'),
    ),
    stop: text(face, '.stop-point'),
    name,
    feet: ids === '' ? [] : ids.split(' and '),
    act: ids === '' ? '' : parts.join(' ').trim(),
    recipe,
  }
}
