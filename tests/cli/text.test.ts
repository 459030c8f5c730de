import { describe, expect, test } from 'vitest'
import { mustPlan } from '../planned'
import { checkRead } from '../../src/engine/plan/checkTrain'
import type { TrainDocument } from '../../src/document/schema'
import { checkText } from '../../src/text/checkText'
import { fold, sheetWidth, table } from '../../src/text/layout'
import { planText } from '../../src/text/planText'
import { askTooMuch, example, examples, planned, reverseDial } from './trains'
import { firstOf } from '../counts'

const longName = (seed: string) =>
  `${seed} of exactly forty letters in all`.padEnd(40, 'x').slice(0, 40)
const unbroken = (seed: string) => seed.padEnd(40, 'W').slice(0, 40)

/** Every name as long as forty letters, some with no place to fold. */
function stretch(train: TrainDocument): void {
  train.sides = { three: `toward ${unbroken('river')}`, nine: longName('the gate') }
  train.machines.forEach((machine, i) => {
    machine.name = i % 2 ? unbroken(`Machine${String(i)}`) : longName(`Machine ${String(i)}`)
    machine.feet.forEach((foot, f) => {
      foot.id = unbroken(`foot${String(f)}`)
    })
  })
  train.skids?.forEach((skid) => {
    skid.name = longName('Bedplate')
  })
  train.couplings.forEach((coupling, i) => {
    coupling.name = unbroken(`Coupling${String(i)}`)
  })
  train.states?.forEach((state, i) => {
    state.name = unbroken(`State${String(i)}`)
  })
  train.name = longName('Train')
}

const tooWide = (text: string) =>
  text.split('\n').filter((line) => Array.from(line).length > sheetWidth)
const plain = (text: string) => text.replace(/\s+/g, ' ')

describe('80 columns', () => {
  test.each(firstOf(examples, 3))('%s, as it is, stretched and impossible', async (name) => {
    for (const document of [
      example(name),
      example(name, stretch),
      example(name, (train) => {
        stretch(train)
        askTooMuch(train)
      }),
    ]) {
      const { train, answer } = await planned(document)
      for (const text of [planText(train, answer), checkText(train, checkRead(train))]) {
        expect(tooWide(text)).toEqual([])
        // what people read has a true minus
        expect(text).not.toMatch(/(^|[\s(])-\d/m)
      }
    }
  })

  test('long names are folded, never cut short', async () => {
    const { train, answer } = await planned(example('skid-as-one', stretch))
    const letters = planText(train, answer).replace(/\s+/g, '')
    for (const { name } of [...train.bodies, ...train.couplings])
      expect(letters).toContain(name.replace(/\s+/g, ''))
  })

  test('folding keeps a number and its unit together, and breaks what cannot fold', () => {
    const word = unbroken('State')
    expect(fold(word, 7).join('')).toBe(word)
    expect(fold('slide 12 mm', 10)).toEqual(['slide', '12 mm'])
    expect(fold('abcdefgh', 3)).toEqual(['abc', 'def', 'gh'])
    expect(fold('', 5)).toEqual([''])
  })

  test('a table folds its widest column', () => {
    const lines = table(
      [{ head: 'foot' }, { head: 'slide' }, { head: 'pack', align: 'right' }],
      [['1', Array(30).fill('toward').join(' '), '12']],
    )
    expect(tooWide(lines.join('\n'))).toEqual([])
    expect(lines[1]).toMatch(/^ {2}1 +toward .*toward +12$/)
    expect(lines.length).toBeGreaterThan(3)
  })
})

describe('what a plan says', () => {
  test('every foot of the published pair: words, numbers, units and sides', async () => {
    const { train, answer } = await planned(reverseDial)
    const text = planText(train, answer)
    expect(text).toMatch(/^ {2}Driver is fixed: pack stays, no slide\.$/m)
    expect(text).toMatch(/^ {2}inner +put in 16\.0 mil +28\.0 mil toward 9 o'clock +not entered/m)
    expect(text).toMatch(/^ {2}outer +put in 30\.0 mil +36\.0 mil toward 9 o'clock +not entered/m)
    expect(plain(text)).toContain(
      'Leave the driver fixed. Shim 2 feet of the pump, 46.0 mil in all; slide the pump, 64.0 mil over 2 rows of feet.',
    )
    expect(plain(text)).toContain('no plan for these numbers needs less than 109.9 mil.')
    expect(text).toMatch(
      /uses (98|99|100) %\s+of\s+its\s+tolerance\s+\([^)]*\),\s+no\s+room\s+for\s+error/,
    )
  })

  test('no foot with a move shows a bare sign, and none without one shows a number', async () => {
    const { train, answer } = await planned(example('bolt-bound-gearbox'))
    const lines = planText(train, answer).split('\n')
    const feet = lines.slice(
      lines.findIndex((line) => line.startsWith('FEET')),
      lines.findIndex((line) => line.startsWith('COUPLINGS')),
    )
    const rows = feet.filter((line) => /^ {2}\d (lake|workshop)/.test(line))
    expect(rows.length).toBe(12)
    for (const row of rows) {
      expect(row).toMatch(/(put in|take out) [1-9]\d* µm|pack stays/)
      expect(row).toMatch(/[1-9]\d* µm toward the (lake|workshop)|no slide/)
      expect(row).not.toMatch(/[-+]\d/)
    }
    for (const foot of mustPlan(answer).feet) {
      const rounded = Math.round(foot.shim)
      const body = train.bodies.find(({ id }) => id === foot.body)
      if (rounded === 0 || !body) continue
      const start = feet.findIndex((line) => line.trim() === body.name)
      const row = feet.slice(start).find((line) => line.startsWith(`  ${foot.foot} `))
      expect(row).toContain(`${rounded > 0 ? 'put in' : 'take out'} ${Math.abs(rounded)} µm`)
    }
  })

  test('a machine on a skid that moves is said to go with it', async () => {
    const { train, answer } = await planned(example('skid-as-one'))
    expect(plain(planText(train, answer))).toContain(
      'Low-stage compressor is fixed: pack stays, no slide, and goes with the bedplate, the left end 44.0 mil down, 76.6 mil toward the hill and 3.9 mil to the left; the right end',
    )
  })

  test('couplings: share, value of limit, which way in words, as found with "over"', async () => {
    const { train, answer } = await planned(example('skid-as-one'))
    const text = plain(planText(train, answer))
    expect(text).toMatch(/turndown 70 % 0\.21 of 0\.30 mil\/in at the left plane, low-stage/)
    expect(text).toMatch(/as found 1344 % over: 4\.03 of 0\.30 mil\/in at the right plane, step-up/)
    expect(text).toContain('the same')
  })

  test('which way: worked by hand from the sign rules, each way round', async () => {
    // The pump stands 4 mil high and 3 mil toward 9 o'clock, and rises 0.5 mil/in to the right.
    const document = structuredClone(reverseDial) as unknown as TrainDocument
    const [joint] = document.couplings
    if (!joint) throw new Error('no coupling')
    joint.tolerance = { offset: 8, angle: 1 }
    joint.found = [{ kind: 'line', at: 3, offset: { y: -3, z: 4 }, slope: { y: 0, z: 0.5 } }]
    const say = async () => {
      const { train, answer } = await planned(document)
      return plain(planText(train, answer))
    }
    expect(await say()).toContain('50 % 4.0 of 8.0 mil offset, pump high')
    joint.tolerance = { offset: 80, angle: 1 }
    expect(await say()).toContain('50 % 0.50 of 1.00 mil/in angle, pump rising to the right')
    joint.tolerance = { offset: 10, angle: 10, shape: 'round' }
    expect(await say()).toContain("50 % 5.0 of 10.0 mil offset, pump high, toward 9 o'clock")
    // Planes at 0 and 6 with the pump 4 high at mid-span: at the left plane the angle is
    // d(6) / 6 = (4 + 1.5) / 6 = 0.92, at the right one -d(0) / 6 = -(4 - 1.5) / 6 = -0.42.
    joint.left.plane = 0
    joint.right.plane = 6
    joint.tolerance = { flex: 2 }
    expect(await say()).toContain('46 % 0.92 of 2.00 mil/in at the left plane, pump high')
    joint.found = [{ kind: 'line', at: 3, offset: { y: 0, z: 4 }, slope: { y: 0, z: -0.5 } }]
    expect(await say()).toContain('46 % 0.92 of 2.00 mil/in at the right plane, driver low')
  })

  test('expected readings stand under their set, with signs and hours', async () => {
    const { train, answer } = await planned(reverseDial)
    const text = plain(planText(train, answer))
    // In line after the move, every dial shows its sag alone: 1 at 12, -1 at 6, 0 at 3 and 9.
    expect(text).toContain("set 1, rim of the left shaft at x 0 in: 12 o'clock 0, 6 o'clock −2.0")
    expect(text).toContain("set 3, rim of the right shaft at x 6 in: 6 o'clock 0, 12 o'clock +2.0")
    expect(text).toContain('a dial reads + when its stem is pushed in')
  })

  test('what was not entered, the proof and the caution close the sheet', async () => {
    const { train, answer } = await planned(reverseDial)
    const text = plain(planText(train, answer))
    for (const { what, instead } of answer.notEntered) expect(text).toContain(`${what}; ${instead}`)
    expect(answer.notEntered.length).toBeGreaterThan(0)
    expect(text).toContain('Proven: no cheaper plan for these numbers.')
    expect(text.match(/proven/gi)).toHaveLength(1)
    expect(text).toMatch(/gap (none|(under )?0\.\d+ mil)/)
    expect(text).toMatch(/Worst violation of any limit: (none|(under )?0\.\d+ mil)/)
    expect(text.trim()).toMatch(
      /Planning aid\. Isolate, lock, try to start\. Site procedure comes first; the responsible engineer decides and signs\.$/,
    )
  })

  test('nothing is proven where nothing was planned', async () => {
    for (const document of [example('leave-it-alone'), example('piped-compressor', askTooMuch)]) {
      const { train, answer } = await planned(document)
      const text = planText(train, answer)
      expect(text).not.toMatch(/proven/i)
      expect(text).not.toContain('FEET')
      expect(text).toContain('NOT ENTERED')
    }
  })
})
