import { tol } from '../mechanics/tolerances'
import { footFacts } from '../scene/footFacts'
import { madeOf, type PackAnswer } from '../engine/rounding/answer'
import { knownPlates } from '../engine/rounding/knownPlates'
import type { Train } from '../mechanics/train'
import { fineSign, toFine } from '../mechanics/units'
import { inSentence } from '../language/names'
import { plateDigits } from '../language/recipes'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'

/** What to have beside the machine before work begins. */
export function storesPage(job: Drawn): Chapter[] {
  const { answer } = job
  if (answer.status !== 'planned') return []
  return [
    {
      section: 'stores',
      title: 'Material list',
      blocks: [
        ...shims(job, madeOf(answer.rounded)?.packs),
        { kind: 'heading', text: 'Bolts, washers, dowels', aside: 'as the machines want them' },
        {
          kind: 'table',
          tall: true,
          columns: [
            { head: 'part', width: 3 },
            { head: 'size', width: 2 },
            { head: 'number', width: 1.2 },
            { head: 'for', width: 3 },
            { head: 'drawn from store', width: 2 },
          ],
          rows: ['bolts', 'washers', 'dowels, or reamer', 'jackscrews', ' ', ' '].map((part) => [
            part,
            '',
            '',
            '',
            '',
          ]),
        },
        ...bound(job),
      ],
    },
  ]
}

/** Plates by thickness and number, and what each is for; blank where no plates were chosen. */
const shims = (job: Drawn, packs: readonly PackAnswer[] | undefined): Block[] =>
  packs ? plates(job, packs) : changes(job)

function plates({ train }: Drawn, packs: readonly PackAnswer[]): Block[] {
  const counts = new Map<number, { count: number; feet: Set<string> }>()
  for (const { body, foot, use } of packs)
    for (const plate of use) {
      const entry = counts.get(plate) ?? { count: 0, feet: new Set() }
      entry.count++
      entry.feet.add(`${train.bodies.find(({ id }) => id === body)?.name ?? body} foot ${foot}`)
      counts.set(plate, entry)
    }
  return [
    {
      kind: 'heading',
      text: 'Shims',
      aside: `in ${fineSign[train.units.fine]}; measure each with a micrometer, figures etched on them are not enough`,
    },
    ...(counts.size === 0
      ? [
          {
            kind: 'text',
            look: 'plain',
            text: 'No plate is needed: plates only come out.',
          } as const,
        ]
      : [
          {
            kind: 'table',
            tall: true,
            columns: [
              { head: 'thickness', width: 1.5, align: 'right', strong: true },
              { head: 'number', width: 1.2, align: 'right', strong: true },
              { head: 'for', width: 7 },
              { head: 'drawn from store', width: 2 },
            ],
            rows: [...counts]
              .sort(([a], [b]) => b - a)
              .map(([plate, { count, feet }]) => [
                plateDigits(plate, train.units),
                String(count),
                [...feet].join('; '),
                '',
              ]),
          } as const,
        ]),
    ...comeOut(train, packs),
    {
      kind: 'text',
      look: 'small',
      text: 'No thin plate at the top or the bottom of a pack. What comes out of packs goes back to the store, measured.',
    },
  ]
}

/** Packs that get lower or are made anew: what is in the hand afterwards. */
function comeOut(train: Train, packs: readonly PackAnswer[]): Block[] {
  const rows = packs.flatMap(({ body, foot, change, packAfter, out }) => {
    if (out.length === 0) return []
    const of = train.bodies.find(({ id }) => id === body)
    const taken = out.reduce((sum, plate) => sum + plate, 0)
    const whole = packAfter !== undefined && Math.abs(packAfter - change - taken) < tol.packOut
    const at = of?.feet.find(({ id }) => id === foot)
    const named = at && knownPlates(at)
    const digits = (plate: number) => plateDigits(plate, train.units)
    return [
      [
        of?.name ?? body,
        foot,
        digits(taken),
        whole ? 'the whole pack' : 'of the pack',
        named ? out.map(digits).join(' + ') : '',
      ],
    ]
  })
  if (rows.length === 0) return []
  return [
    { kind: 'heading', text: 'Comes out', aside: `in ${fineSign[train.units.fine]}` },
    {
      kind: 'table',
      tall: true,
      columns: [
        { head: 'machine', width: 3.4 },
        { head: 'foot', width: 2.2 },
        { head: 'to come out', width: 1.8, align: 'right', strong: true },
        { head: 'of what', width: 2 },
        { head: 'plates, each by micrometer', width: 4 },
      ],
      rows,
    },
  ]
}

/** Changes of packs as they are: no plates were chosen. */
function changes({ train, answer }: Drawn): Block[] {
  const facts = footFacts(train, answer).filter(({ shim }) => shim?.amount)
  const { units } = train
  return [
    { kind: 'heading', text: 'Shims', aside: `in ${fineSign[units.fine]}` },
    {
      kind: 'table',
      tall: true,
      columns: [
        { head: 'machine', width: 3 },
        { head: 'foot', width: 2 },
        { head: 'to go in', width: 1.6, align: 'right', strong: true },
        { head: 'to come out', width: 1.6, align: 'right', strong: true },
        { head: 'plates, each by micrometer', width: 5 },
      ],
      rows: facts.map(({ body, name, shim }) => [
        inSentence(train.bodies[body]?.name ?? '').replace(/^the /, ''),
        name,
        shim?.word === 'put in' ? (shim.amount?.digits ?? '') : ' ',
        shim?.word === 'take out' ? (shim.amount?.digits ?? '') : ' ',
        '',
      ]),
    },
    ...(train.plan.shims
      ? [
          {
            kind: 'text',
            look: 'small',
            text: `In store: ${train.plan.shims.stock.map((t) => Number(toFine(t, units).toPrecision(6))).join(', ')} ${fineSign[units.fine]}; at most ${train.plan.shims.most} plates in a pack.`,
          } as const,
        ]
      : [
          {
            kind: 'text',
            look: 'small',
            text: 'Thicknesses in store were not entered, so no plates are chosen here. Leave no thin plate at top or bottom of a pack.',
          } as const,
        ]),
  ]
}

/** Feet at the edge of their holes: what to have ready if the measured room is less than the file says. */
function bound({ train, answer }: Drawn): Block[] {
  const feet = footFacts(train, answer).filter(({ bound }) => bound.length > 0)
  if (feet.length === 0) return []
  return [
    { kind: 'heading', text: 'At a limit', aside: 'measure first: there is no room beyond these' },
    {
      kind: 'list',
      look: 'dash',
      items: feet.map(
        ({ body, name, bound }) =>
          `Foot ${name} of ${inSentence(train.bodies[body]?.name ?? '')}: ${bound.join(', ')}.`,
      ),
    },
  ]
}
