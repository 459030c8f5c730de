import { describe, expect, test } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { exampleFile as document } from '../holds/choice'
import { fileWith, holdfast } from './shell'
import { exampleFile } from './trains'

interface Row {
  held: string[]
  disturbed: string[]
  status: string
  cost?: number
  costWithEffort?: number
  floor: number
  binding?: unknown[]
}

describe('holds', () => {
  test('--json prints one row for each choice, best first, and nothing else', () => {
    const { status, out, complaints } = holdfast([
      'holds',
      exampleFile('piped-compressor'),
      '--json',
    ])
    expect([status, complaints]).toEqual([0, ''])
    const rows = JSON.parse(out) as Row[]
    expect(rows).toHaveLength(8)
    expect(Object.keys(rows[0] ?? {}).slice(0, 9)).toEqual([
      ...['held', 'disturbed', 'status', 'cost', 'costWithEffort', 'floor', 'total'],
      ...['worstShare', 'binding'],
    ])
    expect(rows[0]?.held).toEqual(['compressor'])
    expect(rows[0]?.binding?.length).toBeGreaterThan(0)
    const impossible = rows.filter((row) => row.status === 'impossible')
    expect(impossible).toHaveLength(4)
    for (const row of impossible) expect(row.cost).toBeUndefined()
  })

  test('prints the same choices as text: moves and effort apart, what is held now marked, why each loses', () => {
    const { status, out } = holdfast(['holds', exampleFile('bolt-bound-gearbox')])
    expect(status).toBe(0)
    expect(Math.max(...out.split('\n').map((line) => Array.from(line).length))).toBeLessThan(81)
    expect(out).toMatch(/1 {2}the low-stage compressor {2,}2702 µm +300 µm +64 % +3 {2}now\n/)
    expect(out).toMatch(/3 {2}nothing +2177 µm +1100 µm +64 % +4\n/)
    const flat = out.replace(/\s+/g, ' ')
    expect(flat).toContain('CHOICES: ranked by moves plus the effort of the machines disturbed')
    expect(flat).toContain(
      'with the step-up gear fixed, low stage to gear (turndown) comes to 372 % of its tolerance at best',
    )
    expect(flat).toContain('and 10 choices that fix more than one of these.')
  })

  test('folds what is beaten, and what has the same plan', () => {
    const beaten = holdfast(['holds', exampleFile('five-in-a-line')]).out.replace(/\s+/g, ' ')
    expect(beaten).toContain('BEATEN: 4 more, each no better on any count than a choice above it')
    const same = holdfast(['holds', exampleFile('leave-it-alone')]).out.replace(/\s+/g, ' ')
    expect(same).toContain('The tolerances ask for no move, whatever is fixed.')
    expect(same).toContain('the same plan as 15 other choices')
  })

  test('exit 1 where no choice can be planned, and the choices are printed all the same', () => {
    const train = document('base-bound-motor') as TrainDocument
    const strict = { ...train, plan: { ...train.plan, share: 0.3 } }
    const ended = holdfast(['holds', fileWith(JSON.stringify(strict)), '--json'])
    expect(ended.status).toBe(1)
    const rows = JSON.parse(ended.out) as Row[]
    expect(rows).toHaveLength(16)
    expect(rows.every((row) => row.status === 'impossible' && row.floor > 0.3)).toBe(true)
    const text = holdfast(['holds', fileWith(JSON.stringify(strict))])
    expect(text.status).toBe(1)
    expect(text.out).toContain('No choice of fixed machines reaches 30 % of tolerance.')
  })

  test('exit 2 for a file that is no train', () => {
    const ended = holdfast(['holds', fileWith('{}'), '--json'])
    expect(ended.status).toBe(2)
    expect(Object.keys(JSON.parse(ended.out) as object)).toEqual(['refused'])
  })
})
