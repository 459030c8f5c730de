import { describe, expect, it } from 'vitest'
import { Random } from '../second/random'
import type { Body, Train } from '../second/train'
import { fineOf, original, patience, relative, seeds, small, Tally, worth } from './bench'
import { kinds, leanedOn, limitsOf } from './tightening'

interface Worth {
  cost: number
  floor: number
}

/** Infinity where nothing meets the tolerances; um. */
function worthOf(seed: number): Worth {
  const { train, answer } = original(seed)
  return { cost: (answer.cost ?? Infinity) * fineOf(train), floor: answer.floor ?? NaN }
}

/** Why the second may not come of the first by taking room away; empty when it may. */
function cheaper(before: Worth, after: Worth): string[] {
  const out: string[] = []
  if (!(after.cost >= before.cost * (1 - relative) - small.cost))
    out.push(`cost ${before.cost} fell to ${after.cost}`)
  if (!(after.floor >= before.floor * (1 - relative) - small.share))
    out.push(`floor ${before.floor} fell to ${after.floor}`)
  return out
}

const noticed = (before: Worth, after: Worth): boolean =>
  after.cost > before.cost * 1.001 + 1 || after.floor > before.floor * 1.001 + 1e-6

describe.each(kinds)('tightening a limit: %s', (kind) => {
  it(
    'never lowers the cost nor the floor, and sometimes raises them',
    () => {
      let [tried, felt] = [0, 0]
      for (const seed of seeds(30)) {
        const { train, answer } = original(seed)
        const { copy, limits } = limitsOf(train, kind)
        const leans = leanedOn(answer)
        const random = new Random(seed)
        // a limit that the cost leans on, where there is one
        const [first, ...rest] = limits.filter(({ part }) => leans.has(part))
        const [any, ...others] = limits
        const limit = first
          ? random.pick([first, ...rest])
          : any && seed % 2 === 0
            ? random.pick([any, ...others])
            : undefined
        if (!limit) continue
        limit.tighten(random.between(0.02, 0.7))
        const [before, after] = [worthOf(seed), worth(copy)]
        expect(cheaper(before, after), `seed ${seed}, ${limit.part}`).toEqual([])
        tried++
        if (noticed(before, after)) felt++
      }
      expect(tried).toBeGreaterThan(5)
      expect(felt).toBeGreaterThan(0)
    },
    patience,
  )
})

describe('holding', () => {
  it(
    'one body more is never cheaper, and its floor is never lower',
    () => {
      const tally = new Tally()
      for (const seed of seeds(30)) {
        const { train } = original(seed)
        const copy = JSON.parse(JSON.stringify(train)) as Train
        const free = [...copy.machines, ...(copy.skids ?? [])].filter(
          (body) => body.held !== true && body.anchored === undefined,
        )
        const [first, ...rest] = free
        if (!first) continue
        new Random(seed).pick<Body>([first, ...rest]).held = true
        const [before, after] = [worthOf(seed), worth(copy)]
        expect(cheaper(before, after), `seed ${seed}`).toEqual([])
        tally.add('tried')
        if (noticed(before, after)) tally.add('noticed')
      }
      expect(tally.of('tried')).toBeGreaterThan(20)
      expect(tally.of('noticed')).toBeGreaterThan(10)
    },
    patience,
  )

  it(
    'everything leaves the train as found: the floor is what stands, and nothing is planned',
    () => {
      for (const seed of seeds(30)) {
        const { train, answer } = original(seed)
        const hold = <B extends Body>(body: B): B => ({ ...body, held: true })
        const all = worth({
          ...train,
          machines: train.machines.map(hold),
          skids: train.skids?.map(hold),
        })
        const { standingShare, share } = answer
        expect(Math.abs(all.floor - standingShare)).toBeLessThan(1e-7 * standingShare + 1e-9)
        expect(all.status).toBe(standingShare > share ? 'impossible' : 'in-tolerance')
      }
    },
    patience,
  )
})
