import { footFacts, type FootFacts } from '../scene/footFacts'
import { footScales } from '../scene/footFigure'
import { toldText } from '../language/amounts'
import { capital, inSentence, listed } from '../language/names'
import type { PlannedWithStages } from '../engine/fieldwork/answer'
import { alongOf, movedBodies } from '../engine/plan/moves'
import { madeOf } from '../engine/rounding/answer'
import { stepNumbers } from '../engine/fieldwork/steps/atFoot'
import { recipeBeside } from '../engine/fieldwork/steps/recipe'
import type { Body, Train } from '../mechanics/train'
import { columnsOf, figureWidth, footCard } from './footCards'
import { footMap } from './footMap'
import type { Drawn } from './job'
import type { Block, Chapter, PaperFootCard } from './page'
import { wideCards } from './print'
import { stepBlocks } from './stepCards'
import { carriedWords } from './words'

/** Most cards side by side: with more, digits would be too small for gloves. */
const mostColumns = 3

/** A job whose plan moves something. */
type DrawnPlan = Drawn & { readonly answer: PlannedWithStages }

/**
 * For each machine or skid that moves, or has soft feet to see to, in the order of the steps: its cards, lying around its
 * map as its feet lie, and then its steps.
 */
export function machinePages(job: Drawn): Chapter[] {
  const { train, answer } = job
  if (answer.status !== 'planned') return []
  const facts = footFacts(train, answer)
  const plan = { ...job, answer }
  const moved = movedBodies(train, answer)
  const worked = train.bodies.filter(
    (body) => moved.includes(body) || job.instructions.some((one) => one.body === body.id),
  )
  return inStepOrder(worked, job).map((body) => {
    const own = facts.filter((foot) => train.bodies[foot.body] === body)
    const steps = job.instructions.filter((one) => one.body === body.id)
    return {
      section: 'machine',
      title: [body.name, stepNumbers(steps)].filter((part) => part !== '').join(': '),
      whole: true,
      blocks: [
        ...(moved.includes(body) ? cardBlocks(plan, body, own) : []),
        ...stepBlocks(job, body.id),
      ],
    }
  })
}

/** Bodies as the work comes to them. */
function inStepOrder(bodies: readonly Body[], { instructions }: Drawn): Body[] {
  const first = ({ id }: Body) =>
    instructions.find(({ body }) => body === id)?.number ?? Number.MAX_SAFE_INTEGER
  return [...bodies].sort((a, b) => first(a) - first(b))
}

/** The feet as they lie: three columns at most beside each other, the far side above the map. */
function cardBlocks(job: DrawnPlan, body: Body, facts: readonly FootFacts[]): Block[] {
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
  return Array.from({ length: parts }, (_, part) => part).flatMap((part) => {
    const here = cards.filter(({ column }) => Math.floor(column / columns) === part)
    const side = (row: 'far' | 'near'): Block[] => {
      const own = here.filter((card) => card.row === row).sort((a, b) => a.column - b.column)
      return own.length === 0 ? [] : cardRows(own, columns)
    }
    const map = footMap(train, train.bodies.indexOf(body), columns <= wideCards ? 'wide' : 'narrow')
    return [
      ...(part === 0 ? before(job, body) : []),
      ...(parts > 1
        ? [{ kind: 'heading', text: `Feet, part ${part + 1} of ${parts}` } as const]
        : []),
      ...side('far'),
      { kind: 'figures', figures: [map] } as const,
      ...side('near'),
    ]
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

/** What goes with it, or it with: cautions of the acts stand in its steps. */
function before({ train, answer }: DrawnPlan, body: Body): Block[] {
  const carried = train.machines.filter(({ skid }) => skid === train.bodies.indexOf(body))
  const own = carriedWords(train, answer, body)
  const along = alongText(train, alongOf(answer, body.id))
  const lines = [
    ...(carried.length > 0
      ? [`It carries ${listed(carried.map(({ name }) => inSentence(name)))}: they move with it.`]
      : []),
    ...(body.skid === undefined
      ? []
      : [
          own === undefined
            ? `What is written here is its own move on ${inSentence(train.bodies[body.skid]?.name ?? '')}.`
            : `What is written here is its own move; it also ${own}.`,
        ]),
    ...(along === '' ? [] : [capital(along)]),
  ]
  return lines.length === 0 ? [] : [{ kind: 'text', look: 'strong', text: lines.join(' ') }]
}

function alongText(train: Train, tx: number): string {
  const text = toldText(Math.abs(tx), train.units)
  return /[1-9]/.test(text)
    ? `it also moves ${text} along the train, to the ${tx > 0 ? 'right' : 'left'}.`
    : ''
}
