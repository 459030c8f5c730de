import { describe, expect, it } from 'vitest'
import { instructionsOf } from '../../src/engine/fieldwork/steps/instructions'
import { bodyCarried } from '../../src/engine/fieldwork/steps/carried'
import { displayedPlan } from '../../src/engine/fieldwork/displayed'
import { motionsFrom } from '../../src/engine/fieldwork/steps/pose'
import { noMotion } from '../../src/mechanics/motion'
import { footFacts } from '../../src/scene/footFacts'
import { planText } from '../../src/text/planText'
import { mustPlan } from '../planned'
import { at, trainOf } from '../engine/pair'
import { blocksOf, exampleOf, made } from '../paper/sheets'
import { skidPair } from './skidPair'

interface FileBody {
  id: string
  name: string
  feet: { id: string; x: number; y: number }[]
}

const file = exampleOf('skid-as-one') as unknown as { machines: FileBody[]; skids: FileBody[] }
const { train, answer: all, paper } = await made(file)
const answer = mustPlan(all)
const steps = answer.steps?.steps ?? []
const mil = 25.4
const riders = ['low-stage', 'high-stage']
const skid = at(file.skids, 0)

/**
 * What the skid's own feet are told, carried on along the straight line through them: a plate does not bend, so what
 * stands on it between two of its feet goes by as much of both as it stands near to them (lever, textbook).
 */
function onTheLine(told: ReadonlyMap<string, number>, x: number): number {
  const rows = skid.feet.map((foot) => ({ x: foot.x, value: told.get(foot.id) ?? 0 }))
  const [first, last] = [at(rows, 0), rows.at(-1) ?? at(rows, 0)]
  return first.value + ((last.value - first.value) * (x - first.x)) / (last.x - first.x)
}

describe('what rides on a skid that moves', () => {
  it('has the coupling within the skid judged, whatever the skid has still to do, and not the one beside it', () => {
    const judge = steps.find(({ id }) => id === 'bedplate:vertical')?.judge ?? []
    const within = ({ left, right }: (typeof train.couplings)[number]) =>
      [left, right].every((m) => train.machines[m]?.skid !== undefined)
    for (const { coupling, judge: said } of judge) {
      const of = train.couplings.find(({ id }) => id === coupling)
      expect(said, coupling).toBe(of && within(of) ? 'good to judge' : 'not yet')
    }
    expect(new Set(judge.map(({ judge: said }) => said)).size).toBe(2)
  })

  const kinds = [
    ['vertical', 'shim'],
    ['lateral', 'side'],
  ] as const
  it.each(kinds)('is watched by dials that show how far it goes with it, %s', (kind, way) => {
    const step = steps.find(({ id }) => id === `bedplate:${kind}`)
    if (!step) throw new Error(`the bedplate makes no ${kind} move`)
    const told = new Map(step.feet.map((foot) => [foot.foot, foot[way] ?? 0]))
    for (const id of riders) {
      const machine = file.machines.find((one) => one.id === id)
      const mine = step.dials.filter(({ where }) =>
        where.includes(`of the ${machine?.name.toLowerCase() ?? ''}`),
      )
      expect(mine).toHaveLength(2)
      for (const dial of mine) {
        const foot = machine?.feet.find((one) => dial.where.includes(`foot ${one.id} of`))
        // packs of whole plates stand up to half a mil off the plane
        expect(Math.abs(dial.shows - onTheLine(told, foot?.x ?? 0))).toBeLessThan(0.5 * mil)
        expect(dial.shows / Math.abs(dial.shows)).toBe(way === 'shim' ? -1 : 1)
        expect(dial.foot).toBeUndefined()
        expect(dial.where).toMatch(/^on the ground, .*which goes with the bedplate/)
      }
    }
    const still = step.dials.filter(({ where }) => where.includes('must stay'))
    expect(still.map(({ where }) => / of ([^:,]*): must stay/.exec(where)?.[1])).toEqual([
      'Step-up gear',
    ])
  })

  it('is told so in the words of the step, with amount, side and unit', () => {
    const lines = instructionsOf(train, { steps }).flatMap(({ dials }) => dials)
    const told = lines.filter((line) =>
      /^On the ground, stem down on foot 1 hill of the low-stage compressor, which goes with the bedplate: −44\.\d mil, good from −4\d\.\d mil to −4\d\.\d mil; foot 2 hill: −29\.\d mil, good from −30\.\d mil to −28\.\d mil; foot 1 hill of the high-stage compressor: −21\.\d mil, .*; foot 2 hill: −9\.\d mil, .* \(\+ is up\)\.$/.test(
        line,
      ),
    )
    expect(told, lines.join('\n')).toHaveLength(1)
    expect(lines.filter((line) => /must stay at 0/.test(line) && /stage/.test(line))).toEqual([])
  })

  it('is said to stay nowhere on paper: the front page tells how far it goes', () => {
    const plan = displayedPlan(answer)
    const motions = motionsFrom(train, plan.bodies)
    const words = riders.map((id) =>
      bodyCarried(
        train,
        motions,
        train.bodies.findIndex((body) => body.id === id),
      ),
    )
    for (const told of words) {
      expect(told).toMatch(
        /^goes with the bedplate, the left end [\d.]+ mil down, [\d.]+ mil toward the hill and [\d.]+ mil to the left; the right end [\d.]+ mil down/,
      )
      expect(JSON.stringify(paper.pages)).toContain(told)
      expect(planText(train, answer).replace(/\s+/g, ' ')).toContain(told)
    }
    const items = blocksOf(paper).flatMap((block) =>
      block.kind === 'list' || block.kind === 'box' ? [...block.items] : [],
    )
    const staying = items.filter((item) => item.includes('must stay at 0'))
    expect(staying.length).toBeGreaterThan(0)
    for (const item of staying)
      if (/-stage/.test(item)) expect(item).toMatch(/stands on the skid must stay at 0/)
  })

  it('is told foot by foot on the cards of the sheet', () => {
    const facts = footFacts(train, displayedPlan(answer)).filter(({ body }) => body === 2)
    expect(facts).toHaveLength(4)
    for (const { carried } of facts)
      expect(carried).toMatch(
        /^goes with the bedplate, [\d.]+ mil down, [\d.]+ mil toward the hill and/,
      )
    const rest = footFacts(train, displayedPlan(answer)).filter(({ body }) => body < 2)
    expect(rest.flatMap(({ carried }) => carried ?? [])).toEqual([])
  })

  it('goes as the skid rises and turns, on either side, and not at all where the skid stays', () => {
    const pair = trainOf(skidPair())
    const moved = (move: object) =>
      bodyCarried(
        pair,
        pair.bodies.map((_, b) => (b === 2 ? { ...noMotion, ...move } : noMotion)),
        1,
      )
    expect(moved({})).toBeUndefined()
    expect(moved({ tz: 300 })).toBe('goes with the bedplate, 300 µm up')
    // the middle of the skid's feet is at x 1500, so the pump's feet at 1000 and 2000 go 100 um either way; they stand
    // 500 mm above the skid's, so a slope of 0.2 mrad carries them 100 um to the left
    expect(moved({ sz: 0.2, ty: -40 })).toBe(
      "goes with the bedplate, the left end 100 µm down, 40 µm toward 9 o'clock and 100 µm to the left; the right end 100 µm up, 40 µm toward 9 o'clock and 100 µm to the left",
    )
  })
})
