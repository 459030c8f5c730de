import { describe, expect, it } from 'vitest'
import { baseFeet, baseWords } from '../../src/engine/fieldwork/ready/base'
import { baseShape } from '../../src/mechanics/baseShape'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { checkText } from '../../src/text/checkText'
import type { Body, Train } from '../../src/mechanics/train'
import { at, trainOf } from '../engine/pair'
import { fourFeet, given, twoMachines } from '../second/pairs'

/** Feet in the order 1000 toward 3, 1000 toward 9, 2000 toward 3, 2000 toward 9; 300 mm each side. */
const with_ = (
  plates: readonly (number | undefined)[],
  more: readonly object[] = [],
): { train: Train; body: Body } => {
  const feet = fourFeet().map((foot, i) => ({
    ...foot,
    ...(plates[i] !== undefined && { soleplate: plates[i] }),
    ...more[i],
  }))
  const train = trainOf(twoMachines({ offset: 100 }, [given(0, 0)], { feet }))
  return { train, body: at(train.machines, 1) }
}
const gaps = ({ body }: { body: Body }) => baseFeet(body).map(({ base }) => base)

describe('the base under a machine', () => {
  it('a corner 100 um high rocks the others: 100 um at both feet beside it, none at the corner across, by hand', () => {
    // the plane of three corners a, b, c at the fourth of a rectangle is b + c - a
    const base = with_([100, 0, 0, 0])
    expect(gaps(base).map((gap) => Math.round(gap * 1e6) / 1e6)).toEqual([0, 100, 100, 0])
  })

  it('slopes are told and are no twist: 0.2 mm a metre to the right, 0.1 mm a metre toward 3', () => {
    const base = with_([30, -30, 230, 170])
    expect(gaps(base).every((gap) => gap < 1e-6)).toBe(true)
    const shape = baseShape(base.body)
    if (!shape || 'lacks' in shape) throw new Error('not told')
    expect(shape.along).toBeCloseTo(0.2, 9)
    expect(shape.across).toBeCloseTo(0.1, 9)
    expect(baseWords(base.train, base.body).join(' ')).toContain('rises 0.20 mrad to the right')
    expect(baseWords(base.train, base.body).join(' ')).toContain('on one plane')
  })

  it('packs make up for plates', () => {
    const pack = (now: number) => ({ pack: { now } })
    const base = with_([100, 0, 0, 0], [pack(900), pack(1000), pack(1000), pack(1000)])
    expect(gaps(base).every((gap) => gap < 1e-6)).toBe(true)
  })

  it('parts a soft foot into base and machine', () => {
    // the base makes 100 at both; 150 and 100 were read: 200 of 250
    const soft = [0, 150, 100, 0].map((value) => ({ soft: value }))
    const { train, body } = with_([100, 0, 0, 0], soft)
    const words = baseWords(train, body).join(' ')
    expect(words).toContain('the base makes 80 % of the gaps that were read')
    expect(words).toContain('50 µm more at foot 1000b than the base makes')
    expect(words).not.toContain('less at foot')
    const stiff = with_(
      [100, 0, 0, 0],
      [0, 20, 100, 0].map((value) => ({ soft: value })),
    )
    expect(baseWords(stiff.train, stiff.body).join(' ')).toContain(
      '80 µm less at foot 1000b than the base would make',
    )
  })

  it('says what lacks, and nothing where nothing was measured', () => {
    const part = with_([100, undefined, 0, 0])
    expect(baseWords(part.train, part.body).join(' ')).toContain('not entered at foot 1000b')
    expect(gaps(part)).toEqual([])
    const none = with_([])
    expect(baseWords(none.train, none.body)).toEqual([])
    expect(checkText(none.train, checkRead(none.train))).not.toContain('BASE')
    const all = with_([100, 0, 0, 0])
    expect(checkText(all.train, checkRead(all.train))).toContain('BASE')
  })
})
