import { describe, expect, test } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { exampleFile as fileOf } from '../holds/choice'
import { fileWith, holdfast } from './shell'
import { exampleFile } from './trains'
import { isWhole } from '../counts'

const document = (name: string) => fileOf(name) as TrainDocument

interface Sure {
  draws: number
  seed: number
  all?: { chance: number; low: number; high: number }
  reread?: { chance: number }
  asFound: { chance: number }
  couplings: { coupling: string; state: string; chance: number; u: { what: string; y: number }[] }[]
  bolts?: { chance: number }
  half?: number
  double?: number
  buys?: { what: string; where: string; exact: number }[]
  assumed?: { where: string; what: string; value: number | string }[]
}
interface Answer {
  sure?: Sure
  rounded?: { sure?: Sure }
}

const planned = (file: string, ...more: string[]): Answer =>
  JSON.parse(holdfast(['plan', file, '--json', ...more]).out) as Answer

describe('--sure', () => {
  test('tells the chance of the plan and of the plan as rounded, and the same bytes each time', () => {
    const first = holdfast(['plan', exampleFile('piped-compressor'), '--json', '--sure'])
    expect([first.status, first.complaints]).toEqual([0, ''])
    expect(holdfast(['plan', exampleFile('piped-compressor'), '--json', '--sure']).out).toBe(
      first.out,
    )
    const { sure, rounded } = JSON.parse(first.out) as Answer
    expect(Object.keys(sure ?? {})).toEqual([
      ...['draws', 'seed', 'all', 'reread', 'asFound', 'couplings', 'bolts', 'half', 'double'],
      ...['buys', 'assumed'],
    ])
    expect(sure).toMatchObject({ draws: 10_000, seed: 1 })
    expect(sure?.couplings).toHaveLength(8)
    const exact = sure?.buys?.map((buy) => buy.exact) ?? []
    expect(exact).toEqual([...exact].sort((a, b) => b - a))
    expect(rounded?.sure?.all?.chance).not.toBe(sure?.all?.chance)
    expect(rounded?.sure?.asFound).toEqual(sure?.asFound)
  })

  test.runIf(isWhole)('is asked for by the file as well, and left out where nobody asks', () => {
    expect(planned(exampleFile('piped-compressor')).sure).toBeUndefined()
    const train = document('piped-compressor')
    const few = { ...train, plan: { ...train.plan, sure: { draws: 500, seed: 9 } } }
    const { sure } = planned(fileWith(JSON.stringify(few)))
    expect(sure).toMatchObject({ draws: 500, seed: 9 })
    expect((sure?.all?.high ?? 0) - (sure?.all?.low ?? 0)).toBeGreaterThan(0.05)
  })

  test.runIf(isWhole)('of an impossible train tells how it stands', () => {
    const train = document('piped-compressor')
    const tight = { ...train, plan: { ...train.plan, share: 0.3 } }
    const { status, out } = holdfast(['plan', fileWith(JSON.stringify(tight)), '--json', '--sure'])
    expect(status).toBe(1)
    const { sure } = JSON.parse(out) as Answer
    expect(sure?.all).toBeUndefined()
    expect(sure?.asFound.chance).toBe(0)
  })

  test.runIf(isWhole)('stands in every row of holds, by the same draws as the plan', () => {
    const { out } = holdfast(['holds', exampleFile('piped-compressor'), '--json', '--sure'])
    const rows = JSON.parse(out) as { held: string[]; status: string; sure?: Sure }[]
    const { sure } = planned(exampleFile('piped-compressor'), '--sure')
    expect(rows).toHaveLength(8)
    for (const row of rows) expect(row.sure?.all !== undefined).toBe(row.status === 'planned')
    expect(rows[0]?.sure?.asFound).toEqual(sure?.asFound)
    expect(Math.abs((rows[0]?.sure?.all?.chance ?? 0) - (sure?.all?.chance ?? 1))).toBeLessThan(
      0.02,
    )
  })

  test.runIf(isWhole)(
    'as text: the chance, what it hangs on, what was assumed; no line over 80 characters',
    () => {
      const { out } = holdfast(['plan', exampleFile('piped-compressor'), '--sure'])
      expect(Math.max(...out.split('\n').map((line) => Array.from(line).length))).toBeLessThan(81)
      const flat = out.replace(/\s+/g, ' ')
      expect(flat).toMatch(
        /About \d+ % that every state is in at the first run, if the stated uncertainties are right; the growth of the step-up gear is what it hangs on most\./,
      )
      expect(flat).toContain('State cold start: no growth given, taken as shut-down')
      expect(flat).toContain('Not counted: roll from unequal shims')
    },
  )

  test('belongs to plan and holds', () => {
    const { status, complaints } = holdfast(['check', exampleFile('piped-compressor'), '--sure'])
    expect(status).toBe(2)
    expect(complaints).toContain('--sure: check tells no chance: it belongs to plan and holds')
  })
})
