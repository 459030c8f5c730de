import { tol } from '../mechanics/tolerances'
import { madeOf, type PackAnswer } from '../engine/rounding/answer'
import { knownPlates } from '../engine/rounding/knownPlates'
import type { Train } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import { plateDigits } from '../language/recipes'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'

/** What to have beside the machine before work begins, where plates were chosen. */
export function materialsPage(job: Drawn): Chapter[] {
  const { answer } = job
  if (answer.status !== 'planned') return []
  const packs = madeOf(answer.rounded)?.packs
  return [
    {
      section: 'materials',
      title: 'Material list',
      blocks: [
        ...(packs ? plates(job, packs) : noPlates(job)),
        {
          kind: 'blanks',
          columns: 3,
          labels: ['bolts and washers', 'dowels, or reamer', 'jackscrews'],
        },
      ],
    },
  ]
}

/** Whether plates were chosen, which are fetched before anything is moved. */
export const hasPlates = ({ answer }: Drawn): boolean =>
  answer.status === 'planned' && madeOf(answer.rounded)?.packs !== undefined

/** No plates were chosen: what is in store, and where the amounts stand. */
function noPlates({ train }: Drawn): Block[] {
  const { shims } = train.plan
  const unit = fineSign[train.units.fine]
  const store = shims
    ? `In store: ${shims.stock.map((t) => plateDigits(t, train.units)).join(', ')} ${unit}; at most ${shims.most} plates in a pack.`
    : 'Thicknesses in store were not entered, so no plates are chosen here.'
  return [
    {
      kind: 'text',
      look: 'plain',
      text: `${store} Shims by page 1, each plate by micrometer; no thin plate at top or bottom of a pack.`,
    },
  ]
}

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
