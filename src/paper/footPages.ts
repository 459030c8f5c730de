import { footFacts, type FootFacts } from '../scene/footFacts'
import { footScales } from '../scene/footFigure'
import { fineText, toldText } from '../language/amounts'
import { kilogramsPer, massSign } from '../mechanics/units'
import { capital, inSentence, listed } from '../language/names'
import type { PlannedWithStages } from '../engine/fieldwork/answer'
import { alongOf } from '../engine/plan/moves'
import { madeOf } from '../engine/rounding/answer'
import { recipeBeside } from '../engine/fieldwork/steps/recipe'
import type { Body, Train } from '../mechanics/train'
import { columnsOf, figureWidth, footCard } from './footCards'
import { footMap } from './footMap'
import type { Drawn } from './job'
import type { Block, Chapter, PaperFootCard } from './page'
import { wideCards } from './print'
import { carriedWords, movedBodies } from './words'

/** Most cards side by side: with more, digits would be too small for gloves. */
const mostColumns = 3

/** A job whose plan moves something. */
type DrawnPlan = Drawn & { readonly answer: PlannedWithStages }

/** A page for each machine or skid that moves, in the order of the steps, its cards lying around its map as its feet lie. */
export function footPages(job: Drawn): Chapter[] {
  const { train, answer } = job
  if (answer.status !== 'planned') return []
  const facts = footFacts(train, answer)
  const plan = { ...job, answer }
  return inStepOrder(movedBodies(train, answer), job).flatMap((body) => {
    const own = facts.filter((foot) => train.bodies[foot.body] === body)
    return pagesOf(plan, body, own)
  })
}

/** Bodies as the work comes to them. */
function inStepOrder(bodies: readonly Body[], { instructions }: Drawn): Body[] {
  const first = ({ id }: Body) =>
    instructions.find(({ body }) => body === id)?.number ?? Number.MAX_SAFE_INTEGER
  return [...bodies].sort((a, b) => first(a) - first(b))
}

function pagesOf(job: DrawnPlan, body: Body, facts: readonly FootFacts[]): Chapter[] {
  const { train, answer, instructions } = job
  const packs = madeOf(answer.rounded)?.packs
  const rows = columnsOf(body)
  const parts = Math.ceil(rows.length / mostColumns)
  const columns = Math.ceil(rows.length / parts)
  const scales = footScales(facts, () => figureWidth(columns))
  const settings = {
    columns,
    scales,
    recipe: (foot: FootFacts) => {
      const pack = packs?.find((one) => one.body === body.id && one.foot === foot.name)
      return pack && recipeBeside(train, pack)
    },
    instructions,
  }
  const cards = facts.map((foot) => footCard(train, body, foot, settings))
  return Array.from({ length: parts }, (_, part) => {
    const here = cards.filter(({ column }) => Math.floor(column / columns) === part)
    const side = (row: 'far' | 'near'): Block[] => {
      const own = here.filter((card) => card.row === row).sort((a, b) => a.column - b.column)
      return own.length === 0 ? [] : cardRows(own, columns)
    }
    return {
      section: 'feet',
      title: `${body.name}: feet${parts > 1 ? `, part ${part + 1} of ${parts}` : ''}`,
      blocks: [
        ...(part === 0 ? [before(job, body)] : []),
        ...side('far'),
        {
          kind: 'figures',
          figures: [
            footMap(train, train.bodies.indexOf(body), columns <= wideCards ? 'wide' : 'narrow'),
          ],
        },
        ...side('near'),
      ],
    } satisfies Chapter
  })
}

/** Feet that share a column stand in further rows. */
function cardRows(cards: readonly PaperFootCard[], columns: number): Block[] {
  const rows: PaperFootCard[][] = []
  for (const card of cards) {
    const row = rows.find(
      (list) => list.length < columns && list.every(({ column }) => column !== card.column),
    )
    if (row) row.push(card)
    else rows.push([card])
  }
  return rows.map((row) => ({ kind: 'feet', columns, cards: row }))
}

/** What must be true before a hand is put to the machine. */
function before({ train, answer }: DrawnPlan, body: Body): Block {
  const skid = train.bodies.indexOf(body)
  const riders = train.machines.filter((machine) => machine.skid === skid)
  // what rides on the skid goes with it while that is moved, and stays while anything else is
  const held = train.bodies
    .filter((one) => one.held && !riders.includes(one))
    .map(({ name }) => inSentence(name))
  const own = carriedWords(train, answer, body)
  const tx = alongOf(answer, body.id)
  const lifts = answer.feet.some(({ body: id, shim }) => id === body.id && shim !== 0)
  return {
    kind: 'box',
    title: 'Isolated, locked, tried to start? Then:',
    items: [
      ...(lifts
        ? [
            `No hand between foot and base: slip shims with a tool, a block beside each jack. Lift no more than the shims need, and no end more than ${fineText(train.plan.stage, train.units)} ahead of the other.${massText(body, train)}`,
          ]
        : []),
      `${held.length > 0 ? `A dial on ${listed(held)} must stay at 0. ` : ''}Fingers out of bolt holes. Jackscrews back off after each move.`,
      ...(riders.length > 0
        ? [`It carries ${listed(riders.map(({ name }) => inSentence(name)))}: they move with it.`]
        : []),
      ...(body.skid === undefined
        ? []
        : [
            own === undefined
              ? `What is written here is its own move on ${inSentence(train.bodies[body.skid]?.name ?? '')}.`
              : `What is written here is its own move; it also ${own}.`,
          ]),
      ...(Math.abs(tx) > 0 && alongText(train, tx) !== '' ? [capital(alongText(train, tx))] : []),
    ],
  }
}

function massText({ mass, jack }: Body, { units }: Train): string {
  const text = (value: number) =>
    `${Math.round(value / kilogramsPer[units.length])} ${massSign[units.length]}`
  return [
    ...(mass === undefined ? [] : [` Mass ${text(mass)}.`]),
    ...(jack === undefined ? [] : [` One jack carries at most ${text(jack)}.`]),
  ].join('')
}

function alongText(train: Train, tx: number): string {
  const text = toldText(Math.abs(tx), train.units)
  return /[1-9]/.test(text)
    ? `it also moves ${text} along the train, to the ${tx > 0 ? 'right' : 'left'}.`
    : ''
}
