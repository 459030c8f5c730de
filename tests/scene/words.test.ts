import { describe, expect, it } from 'vitest'
import { couplingFacts } from '../../src/scene/couplingFacts'
import { footFacts } from '../../src/scene/footFacts'
import { readingTables } from '../../src/scene/readingTable'
import { upThePage } from '../../src/language/sides'
import { draw, example, pair } from './trains'

describe('what a foot says', () => {
  it('adds and removes by word, slides by number and side, never by sign', async () => {
    // the pump stands 100 low and 120 toward the lake; 70 um are allowed at its plane, 200 mm before
    // its first feet. Turned about its second feet it needs 30 / 1.2 up and 50 / 1.2 aside at the first
    const { train, answer } = await draw(pair({ z: -100, y: 120 }))
    const feet = footFacts(train, answer)
    const pump = feet.filter(({ body }) => body === 1)
    expect(feet.filter(({ body }) => body === 0).every(({ held, shim }) => held && !shim)).toBe(
      true,
    )
    expect(pump.slice(2).map(({ shim, slide }) => [shim?.word, slide?.words])).toEqual(
      Array(2).fill(['pack stays', 'no slide']),
    )
    for (const foot of pump.slice(0, 2)) {
      expect(foot.shim).toEqual({ word: 'put in', amount: { digits: '25', unit: 'µm' } })
      expect(foot.slide).toEqual({ words: 'toward the yard', amount: { digits: '42', unit: 'µm' } })
      expect(foot.pack).toMatchObject({ now: 1000, min: 100 })
      expect(foot.pack?.after).toBeCloseTo(1025, 2)
      // the hole went 41.7 toward the yard, so the bolt is nearer to its lake side; turning carried it
      // 12.5 along the train as well: 1000 - hypot(41.67, 12.5) = 956.50
      expect(foot.hole?.room.digits).toMatch(/^95[67]$/)
      expect(foot.hole?.where).toBe('lake side')
      expect(foot.bound).toEqual([])
    }
  })

  it('says that nothing is to be done in words', async () => {
    const { train, answer } = await draw(pair({}))
    const pump = footFacts(train, answer).filter(({ body }) => body === 1)
    expect(pump.map(({ shim }) => shim?.word)).toEqual(Array(4).fill('pack stays'))
    expect(pump.map(({ slide }) => slide?.words)).toEqual(Array(4).fill('no slide'))
    expect(pump.map(({ hole }) => hole?.where)).toEqual(Array(4).fill('all round'))
  })

  it('says base-bound and bolt-bound where a limit binds', async () => {
    const base = await draw(example('base-bound-motor.json'))
    const bound = footFacts(base.train, base.answer).flatMap(({ key, bound: b }) =>
      b.map((w) => `${key}: ${w}`),
    )
    expect(bound).toEqual(['motor 2 boiler: base-bound'])
    // 60 must go at the plane; the holes of the first feet give 50, those of the second have room left
    const narrow = pair({ y: 130 })
    narrow.machines[1]?.feet.forEach((foot) => (foot.hole = { clearance: 100 }))
    const bolt = await draw(narrow)
    expect(bolt.answer.status).toBe('planned')
    const words = footFacts(bolt.train, bolt.answer).map(({ bound: b }) => b.join())
    expect(words.slice(0, 4)).toEqual(['', '', '', ''])
    expect(words.slice(4)).toEqual(['bolt-bound', 'bolt-bound', '', ''])
  })

  it('draws nothing that was not entered', async () => {
    const bare = pair({})
    bare.machines[1]?.feet.forEach((foot) => {
      delete foot.pack
      delete foot.hole
    })
    const { train, answer } = await draw(bare)
    const [held, , , , moving] = footFacts(train, answer)
    expect(held).toHaveProperty('pack')
    expect(held).toHaveProperty('hole')
    expect(moving).not.toHaveProperty('pack')
    expect(moving).not.toHaveProperty('hole')
  })
})

describe('what a coupling says', () => {
  it('says share, value of limit, which machine stands which way, and as found beside it', async () => {
    const { train, answer, figures } = await draw(pair({ z: -100, y: 120 }))
    const [row] = couplingFacts(train, answer, figures)[0]?.rows ?? []
    expect(row?.name).toBe('cold')
    expect(row?.binds).toBe(true)
    expect(row?.after).toMatchObject({ percent: '70 %', over: false })
    expect(row?.after?.value).toBe('0.35 of 0.50 mrad at the left plane')
    expect(row?.after?.which).toBe('the pump low, toward the lake')
    // 120 um over 200 mm are 0.6 mrad; box: the larger of the two ways
    expect(row?.asFound).toMatchObject({ percent: '120 %', over: true })
    expect(row?.asFound.value).toBe('0.60 of 0.50 mrad at the left plane')
  })

  it('speaks of the left machine at the right plane', async () => {
    // the pump rises along x so that its axis extended to the left plane lies 40 - 100 * 0.5 = -10
    // and 90 high at its own plane; lean the other way and the right plane is the worse one
    const { train, answer, figures } = await draw(pair({ z: 20, sz: -0.4 }))
    const [row] = couplingFacts(train, answer, figures)[0]?.rows ?? []
    // extended to the left plane: 20 + 40 = 60 high, so the motor stands 60 low of it
    expect(row?.after?.value).toBe('0.30 of 0.50 mrad at the right plane')
    expect(row?.after?.which).toBe('the motor low')
    expect(row?.moved).toBe(false)
  })

  it('says where the faces stand open', async () => {
    const { train, answer, figures } = await draw(
      pair({ sz: 0.3, sy: 0.3 }, { coupling: { tolerance: { angle: 1 } } }),
    )
    const [row] = couplingFacts(train, answer, figures)[0]?.rows ?? []
    // rising along x the right shaft closes the gap at the top
    expect(row?.after?.which).toBe('open at the bottom and toward the yard')
  })
})

describe('the table of readings', () => {
  it('shows readings as typed, the sides by name, further hours, sag and closure', async () => {
    const { train } = await draw(example('five-in-a-line.json'))
    const coupling = train.couplings[3]
    if (!coupling) throw new Error('no coupling')
    const [table] = readingTables(train, coupling)
    expect(table?.unit).toBe('mm')
    expect(table?.columns).toEqual([
      'rim of the high-stage compressor, at 8735 mm',
      'rim of the low-stage compressor, at 8265 mm',
    ])
    expect(table?.rows.slice(0, 5)).toEqual([
      { label: 'top', cells: ['0', '0'] },
      { label: 'turbine hall', cells: ['\u22120.64', '+0.49'] },
      { label: 'bottom', cells: ['\u22120.51', '+0.25'] },
      { label: 'river', cells: ['+0.13', '\u22120.24'] },
      { label: 'at 1:30', cells: ['', '+0.3'] },
    ])
    expect(table?.rows.slice(-2)).toEqual([
      { label: 'sag', cells: ['+0.06', '+0.06'] },
      { label: 'dial sum check', cells: ['0', '0'] },
    ])
  })

  it('puts what was given as a line into words', async () => {
    const { train } = await draw(pair({ z: -40, y: 30, sy: -0.2 }))
    const coupling = train.couplings[0]
    if (!coupling) throw new Error('no coupling')
    expect(readingTables(train, coupling)).toEqual([
      {
        unit: '',
        columns: ['right shaft against left, at 1300 mm'],
        rows: [
          { label: 'rise', cells: ['40 µm low'] },
          { label: 'side', cells: ['30 µm toward the lake'] },
          { label: 'slope up', cells: ['0'] },
          { label: 'slope aside', cells: ['0.2 mrad toward the yard'] },
        ],
      },
    ])
  })
})

describe('up the page', () => {
  it("is 3 o'clock when the clock is seen from the right end, 9 o'clock from the left", async () => {
    const right = await draw(pair({}))
    const left = await draw(pair({}, { top: { clock: { seenFrom: 'left' } } }))
    // seen from the left end one looks along +x: 3 o'clock is at one's right hand, down the page
    expect([upThePage(right.train), upThePage(left.train)]).toEqual([1, -1])
  })
})
