import { bestShareText, fineAmount } from '../language/roundedAmounts'
import { sideNoun, towardSide } from '../language/sides'
import { caution } from '../text/remarksText'
import { capital } from '../language/names'
import { sourceMark, sourceSaid } from '../language/growthSourceWords'
import { fineText, lengthText, toldText } from '../language/amounts'
import type { GrowthPoint, Train } from '../mechanics/train'
import { comparedSources } from '../mechanics/uncertainty/growthSources'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { sureBlocks } from './sureBlocks'
import { surveyBlocks } from './surveyBlocks'
import { sentence } from './words'

/** What the plan stands on: everything not entered, growth as entered, what to look at twice, the proof. */
export function assumptionsPage(job: Drawn): Chapter {
  const { train, answer, document } = job
  return {
    section: 'assumptions',
    title: 'What this stands on',
    blocks: [
      { kind: 'heading', text: 'Not entered', aside: 'and what was done instead' },
      {
        kind: 'list',
        look: 'dash',
        items:
          answer.notEntered.length === 0
            ? ['Nothing was missing.']
            : answer.notEntered.map(({ what, instead }) =>
                sentence(`${capital(what)}: ${instead}`),
              ),
      },
      { kind: 'heading', text: 'Worth another look' },
      {
        kind: 'list',
        look: 'dash',
        items:
          answer.findings.length === 0
            ? ['Nothing stood out.']
            : answer.findings.map(({ what }) => sentence(capital(what))),
      },
      ...growthTable(train),
      ...sourcesList(train),
      ...surveyBlocks(train),
      ...feetTable(train),
      ...sureBlocks(train, job.plan),
      { kind: 'heading', text: 'What is proven' },
      { kind: 'list', look: 'dash', items: proofItems(train, answer) },
      ...(document.note === undefined
        ? []
        : ([
            { kind: 'heading', text: 'Note in the file' },
            ...document.note
              .split(/\n+/)
              .map((text) => ({ kind: 'text', look: 'plain', text }) as const),
          ] as const)),
      {
        kind: 'box',
        title: 'Planning aid',
        items: [
          caution,
          'It does arithmetic. It replaces no isolation, lifting, hot-work or confined-space procedure, no permit, no maker\u2019s manual.',
        ],
      },
    ],
  }
}

function growthTable(train: Train): Block[] {
  const { units } = train
  const part = (value: number | undefined, ways: readonly [string, string]) =>
    value === undefined || value === 0
      ? []
      : [`${fineText(Math.abs(value), units)} ${value > 0 ? ways[0] : ways[1]}`]
  const words = (point: GrowthPoint): string => {
    const parts = [
      ...part(point.rise, ['up', 'down']),
      ...part(point.side, [towardSide(train, 1), towardSide(train, -1)]),
      ...part(point.axial, ['to the right', 'to the left']),
    ]
    const mark = sourceMark(point.source)
    return `${parts.length === 0 ? 'none' : parts.join(', ')}${mark === '' ? '' : ` (${mark})`}`
  }
  const place = ({ at, axis }: GrowthPoint) =>
    `at ${lengthText(at, units)}${axis === 'both' ? '' : `, ${axis} axis`}`
  const states = fours(
    train.states.filter(({ id }) =>
      train.machines.some(
        ({ growth, growthBetween }) => (growth.get(id) ?? []).length > 0 || growthBetween.has(id),
      ),
    ),
  )
  return states.flatMap((some, i): Block[] => [
    {
      kind: 'heading',
      text: `Growth as entered${i === 0 ? '' : ', more states'}`,
      aside: 'how the axis moves from the shut-down position',
    },
    {
      kind: 'table',
      columns: [
        { head: 'machine', width: 2.6 },
        { head: 'at x', width: 2.2 },
        ...some.map(({ name }) => ({ head: name, width: 2.6 })),
      ],
      rows: train.machines.flatMap((machine) => {
        const points = some.map(({ id }) => machine.growth.get(id) ?? [])
        const places = [...new Set(points.flat().map(place))]
        return places.map((where) => [
          machine.name,
          where.replace(/^at /, ''),
          ...points.map((own, s) => {
            const here = own.filter((one) => place(one) === where).map(words)
            if (here.length > 0) return here.join('; ')
            return machine.growthBetween.has(some[s]?.id ?? '') ? 'between two states' : '-'
          }),
        ])
      }),
    },
  ])
}

/** Sources that do not count, beside those that do. */
function sourcesList(train: Train): Block[] {
  const compared = comparedSources(train)
  if (compared.length === 0) return []
  return [
    {
      kind: 'heading',
      text: 'Growth by other sources',
      aside: 'which do not count; u is a standard uncertainty',
    },
    {
      kind: 'list',
      look: 'dash',
      items: compared.map((one) => sentence(capital(sourceSaid(train, one)))),
    },
  ]
}

/** So many states stand beside each other in one table. */
const fours = <Entry>(entries: readonly Entry[]): (readonly Entry[])[] =>
  entries.flatMap((_, i) => (i % 4 === 0 ? [entries.slice(i, i + 4)] : []))

function feetTable(train: Train): Block[] {
  const { units } = train
  return [
    {
      kind: 'heading',
      text: 'Feet as entered',
      aside: 'places along the train, packs and play of bolts now',
    },
    {
      kind: 'table',
      columns: [
        { head: 'machine', width: 2.8 },
        { head: 'foot', width: 2.3 },
        { head: 'x', width: 2.1, align: 'right' },
        { head: 'beside the middle line', width: 3.5 },
        { head: 'pack now', width: 2, align: 'right' },
        { head: 'least', width: 1.8, align: 'right' },
        { head: 'most', width: 2, align: 'right' },
        { head: 'bolt play across', width: 2, align: 'right' },
      ],
      rows: train.bodies.flatMap((body) =>
        body.feet.map(({ id, x, y, pack, hole }) => [
          body.name,
          id,
          lengthText(x, units),
          y === 0 ? 'on it' : `${lengthText(Math.abs(y), units)}, ${sideNoun(train, y)}`,
          pack ? fineText(pack.now, units) : 'not entered',
          pack ? fineText(pack.min, units) : '-',
          pack?.max === undefined ? '-' : fineText(pack.max, units),
          hole ? fineText(hole.clearance, units) : 'not entered',
        ]),
      ),
    },
  ]
}

/** "Proven" is said of one thing alone: that no plan for these numbers costs less. */
function proofItems(train: Train, answer: PlanAnswer): string[] {
  const { status, floor } = answer
  return [
    ...(answer.status === 'planned'
      ? [
          `Proven: no cheaper plan for these numbers. This one costs ${toldText(answer.cost, train.units)}; none costs less than ${fineAmount(answer.proof.bound, 'down', train)}.`,
          `Every limit and every coupling in every state was measured again on the moved machines by other code.`,
        ]
      : []),
    ...(status === 'in-tolerance'
      ? ['Every coupling was measured again in every state, with nothing moved.']
      : []),
    ...(floor === null
      ? []
      : [
          `The best reachable by any allowed move, with the same machines fixed, is ${bestShareText(floor, train.plan.share)} of tolerance.`,
        ]),
    'It is as good as the numbers that went in: readings, distances, growth.',
  ]
}
