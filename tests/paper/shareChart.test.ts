import { expect, test } from 'vitest'
import { shareCharts } from '../../src/paper/shareChart'
import type { CouplingFacts } from '../../src/scene/couplingFacts'

const use = (share: number) => ({
  share,
  percent: `${Math.round(share * 100)} %`,
  over: share > 1,
  value: '',
  which: '',
  shown: '',
})
const facts: CouplingFacts[] = [
  {
    coupling: 0,
    name: 'motor to gear',
    limits: '',
    apart: [],
    rows: [
      { state: 0, name: 'cold', after: use(0.35), asFound: use(1.04), moved: true, binds: false },
      { state: 1, name: 'hot', after: use(0.7), asFound: use(5.5), moved: true, binds: true },
    ],
  },
  {
    coupling: 1,
    name: 'gear to pump',
    limits: '',
    apart: [],
    rows: [{ state: 0, name: 'cold', asFound: use(1.2), moved: false, binds: false }],
  },
]

test('every state of every coupling is drawn on one scale, found and planned in order of their shares', () => {
  const figures = shareCharts(facts, 0.7).flatMap((block) =>
    block.kind === 'figures' ? block.figures : [],
  )
  expect(figures).toHaveLength(2)
  const texts = (f: number) =>
    figures[f]?.marks.flatMap((mark) => (mark.kind === 'label' ? [mark.text] : [])) ?? []
  expect(texts(0)).toEqual(expect.arrayContaining(['motor to gear', 'cold', '35 %', 'hot', '70 %']))
  expect(texts(1)).toContain('120 % OVER')
  // the scale goes to the worst of the whole train, on both drawings
  for (const f of [0, 1])
    expect(texts(f)).toEqual(expect.arrayContaining(['0 %', '100 %', '550 %']))
  const circles = figures[0]?.marks.flatMap((mark) =>
    mark.kind === 'circle' && mark.look === 'after' ? [mark.x] : [],
  )
  const bars = figures[0]?.marks.flatMap((mark) =>
    mark.kind === 'path' && mark.look === 'solid' ? [Number(/L([\d.]+) /.exec(mark.d)?.[1])] : [],
  )
  const asked = figures[0]?.marks.flatMap((mark) =>
    mark.kind === 'path' && mark.look === 'edge' ? [Number(/M([\d.]+) /.exec(mark.d)?.[1])] : [],
  )
  const [cold = NaN, hot = NaN] = bars ?? []
  // 35 % ends half way to the 70 % that were asked for, where the other bar ends
  expect(hot).toBeCloseTo(asked?.[0] ?? NaN, 1)
  const [from = NaN] = /M([\d.]+) /
    .exec(
      figures[0]?.marks.flatMap((m) => (m.kind === 'path' && m.look === 'solid' ? [m.d] : []))[0] ??
        '',
    )
    ?.slice(1)
    .map(Number) ?? [NaN]
  expect(cold - from).toBeCloseTo((hot - from) / 2, 0)
  expect(circles).toHaveLength(2)
  expect(circles?.[1] ?? 0).toBeGreaterThan(circles?.[0] ?? Infinity)
  expect(circles?.[0] ?? 0).toBeGreaterThan(hot)
})
