import { describe, expect, it } from 'vitest'
import { fourFeet, given, oneRow, pair, planOf, type Json } from './pair'

const rim = (sag?: number): Json => ({
  kind: 'rim',
  rides: 'right',
  at: 100,
  ...(sag !== undefined && { sag }),
  readings: [
    [12, 0],
    [3, 0],
    [6, 0],
    [9, 0],
  ],
})
const hole = { clearance: 2000 }
const pack = { now: 3000 }

const placesOf = (document: Json) => planOf(document).notEntered.map(({ where }) => where)

describe('what was not entered', () => {
  it('is listed with what the plan did instead', () => {
    const document = pair({
      right: {
        feet: [
          { id: '1', x: 1000, pack, hole },
          { id: '2', x: 2000 },
        ],
        growth: { hot: [{ at: 1000, rise: 10 }] },
      },
      found: [given(0, 0), rim()],
      coupling: { name: 'drive' },
      rest: { states: [{ id: 'hot', name: 'Hot' }] },
    })
    expect(planOf(document).notEntered).toEqual([
      {
        where: 'plan.shims',
        what: 'shims in the store',
        instead: 'amounts are told as worked out, not in plates',
      },
      {
        where: 'machines[1].feet[1].pack.now',
        what: 'shim pack, Pump foot 2',
        instead: 'any change taken as possible',
      },
      {
        where: 'machines[1].feet[1].hole.clearance',
        what: 'hole and bolt, Pump foot 2',
        instead: 'any slide taken as possible',
      },
      {
        where: 'machines[1].feet[0].hole.y',
        what: 'where the bolt stands in its hole, Pump foot 1',
        instead: 'taken as in the middle',
      },
      {
        where: 'plan.reserve',
        what: 'room to keep between bolt and hole',
        instead: 'taken as none',
      },
      {
        where: 'machines[0].growth.hot',
        what: 'growth of Motor in "Hot"',
        instead: 'taken as none',
      },
      {
        where: 'couplings[0].found[1].sag',
        what: expect.stringMatching(/^sag of set 2, rim of the .+ at drive$/) as string,
        instead: 'taken as none',
      },
      {
        where: 'couplings[0].axial',
        what: 'gap between the shaft ends at drive',
        instead: 'not checked',
      },
    ])
  })

  it('says where a dial just stands where its set was begun, at the flex plane', () => {
    const told = (sets: Json[]) => placesOf(pair({ found: [given(0, 0), ...sets] }))
    const at = (x: number, more: Json = {}) => ({ ...rim(), at: x, ...more })
    const planes: Json = { left: 0, right: 200 }
    for (const [rides, x] of Object.entries(planes)) {
      expect(told([at(x as number, { rides })])).toContain('couplings[0].found[1].at')
      expect(told([at((x as number) + 1, { rides })])).not.toContain('couplings[0].found[1].at')
      expect(told([at(x as number, { rides, uAt: 2 })])).not.toContain('couplings[0].found[1].at')
      expect(told([at(x as number, { rides, use: false })])).not.toContain(
        'couplings[0].found[1].at',
      )
    }
  })

  it('is nothing where everything was', () => {
    const whole = { pack, hole: { ...hole, x: 0, y: 0 } }
    const growth = { hot: [{ at: 0, rise: 0 }] }
    const document = pair({
      left: { growth },
      right: { feet: fourFeet.map((foot) => ({ ...foot, ...whole })), growth },
      found: [given(0, 0), rim(0), { kind: 'gap', diameter: 200, readings: rim()['readings'] }],
      coupling: {
        axial: {
          ...{ found: 250, want: 250, tolerance: 1 },
          stretch: [-2, 2],
          rotors: { left: { float: [-0.1, 0.1] } },
        },
      },
      rest: {
        states: [{ id: 'hot', name: 'Hot' }],
        plan: { reserve: 100, shims: { step: 50, stock: [50, 100, 200, 500] } },
      },
    })
    expect(planOf(document).notEntered).toEqual([])
  })

  it('names what decides between machines: none fixed, and the effort of a piped one', () => {
    const restraints = [{ id: 'n', x: 1000, z: 800, rise: [-5000, 5000] }]
    const told = (right: Json) =>
      planOf(pair({ left: { anchored: undefined, feet: fourFeet }, right })).notEntered.filter(
        ({ where }) =>
          /^machines\[0\]\.(held|growth\.cold)$/.test(where) || where.endsWith('.effort'),
      )
    expect(told({})).toEqual([
      { where: 'machines[0].held', what: 'which machine is fixed', instead: 'every one may move' },
      {
        where: 'machines[0].growth.cold',
        what: 'growth of every machine in "cold"',
        instead: 'taken as none: judged as the train stands shut down',
      },
    ])
    expect(told({ restraints, held: true })[0]).toEqual({
      where: 'machines[1].effort',
      what: 'effort of moving Pump, which is piped',
      instead: 'taken as none when choices are ranked',
    })
    expect(told({ restraints, held: true, effort: 400 }).map(({ where }) => where)).toEqual([
      'machines[0].growth.cold',
    ])
  })

  it('does not ask for what a body that stays, or a foot that is keyed, has no use for', () => {
    const feet = fourFeet
    const places = (right: Json) => placesOf(pair({ right: { feet, ...right } }))
    const usual = ['machines[0].growth.cold', 'couplings[0].axial']
    expect(places({ held: true })).toEqual(usual)
    expect(places({ free: { shim: false, side: false } })).toEqual(usual)
    expect(places({ free: { side: false } })).toEqual([
      'plan.shims',
      'machines[1].feet[0].pack.now',
      ...usual,
    ])
    const keyed = feet.map((foot) => ({ ...foot, free: { shim: false, side: false } }))
    expect(places({ feet: keyed })).toEqual(['plan.shims', ...usual])
  })

  it('names a single missing foot, and says "every foot" once for all', () => {
    const what = (right: Json) => planOf(pair({ right })).notEntered.map((entry) => entry.what)
    expect(what({})).toContain('shim pack, Pump every foot')
    const one = fourFeet.map((foot, i) => (i === 2 ? foot : { ...foot, pack }))
    expect(what({ feet: one })).toContain('shim pack, Pump foot 2000a')
  })
})

describe('cautions', () => {
  const cautions = (right: Json, found: [number, number], more: Json = {}) =>
    planOf(
      pair({
        right: { feet: oneRow, ...right },
        found: [given(...found)],
        rest: { plan: { share: 0.5 } },
        ...more,
      }),
    ).findings

  const restraints = [{ id: 'n', x: 1000, z: 800, rise: [-5000, 5000] }]

  it('come with a piped machine that moves more than 1 mm: 1100 low, 50 allowed', () => {
    const text = 'Pump moves 1050 µm with its piping: prove pipe strain again, flange by flange'
    expect(cautions({ restraints }, [0, -1100])).toEqual([{ where: 'machines[1]', what: text }])
    expect(cautions({ restraints }, [0, -1040])).toEqual([])
    expect(cautions({}, [0, -1100])).toEqual([])
  })

  it('come with a foot that rises more than 2 mm, not with one that is lowered', () => {
    expect(cautions({}, [0, -2100])).toEqual([
      {
        where: 'machines[1]',
        what: 'Pump rises 2050 µm: lift in stages, a block beside each jack, no hand between foot and base',
      },
    ])
    expect(cautions({}, [0, -2040])).toEqual([])
    expect(cautions({}, [0, 2100])).toEqual([])
  })

  it('come with a bolt that is left less than 0.3 mm of room by a slide', () => {
    const bolted = (clearance: number, y: number) =>
      cautions({ feet: oneRow.map((f) => ({ ...f, hole: { clearance, y } })) }, [-450, 0])
    // 400 toward 3 of 600: 200 left; of 750: 350 left; from 300 toward 9 of 500: 400 left
    expect(bolted(1200, 0).map(({ where, what }) => [where, what])).toEqual(
      ['1000a', '1000b'].map((foot, i) => [
        `machines[1].feet[${i}].hole`,
        `Pump foot ${foot} keeps only 200 µm between bolt and hole: measure it before the slide`,
      ]),
    )
    expect(bolted(1500, 0)).toEqual([])
    expect(bolted(1000, -300)).toEqual([])
  })

  it('come with a plan that uses more than 85 % of a tolerance', () => {
    const near = (share: number) =>
      cautions({}, [0, -300], { rest: { plan: { share } } }).map(({ where, what }) => [where, what])
    expect(near(0.9)).toEqual([
      ['plan.share', 'no room for error: the tightest coupling uses 90 % of its tolerance'],
    ])
    expect(near(0.84)).toEqual([])
  })

  const blue =
    'roll moves the tooth contact toward one end: have it checked with blue before it runs, by somebody who signs with a name'

  it('come with a gearbox that may be rolled, and with one that is', () => {
    const rolled = (role: string) =>
      cautions({ role, free: { side: false, roll: true } }, [90, 0]).map(({ what }) => what)
    // found 90 toward 3, 50 allowed: the axis, 400 up, must come 40 back toward 9
    expect(rolled('gearbox')).toEqual([
      `Pump may be rolled: 0.1 mrad, its feet toward 3 o'clock up, would carry its shaft 40 µm toward 9 o'clock; ${blue}`,
      `Pump is rolled by 0.100 mrad, its feet toward 3 o'clock up: that carries its shaft 40 µm toward 9 o'clock; ${blue}`,
    ])
    expect(rolled('pump')).toEqual([])
    expect(cautions({ role: 'gearbox', free: { side: false } }, [0, 0])).toEqual([])
  })

  it('say what a roll does to both shafts of a gear, each with its side', () => {
    const axis = { left: { y: 0, z: 400 }, right: { y: -300, z: 500 } }
    const what = (y: number) =>
      cautions({ role: 'gearbox', axis, free: { side: false, roll: true } }, [y, 0]).map(
        (finding) => finding.what,
      )[1]
    // 0.1 mrad: 400 up goes 40 to 9; 500 up goes 50, and 300 toward 9 of the middle goes 30 down
    expect(what(90)).toContain(
      "its feet toward 3 o'clock up: that carries its left shaft 40 µm toward 9 o'clock, its right shaft 50 µm toward 9 o'clock and 30 µm down",
    )
    expect(what(-90)).toContain(
      "its feet toward 9 o'clock up: that carries its left shaft 40 µm toward 3 o'clock, its right shaft 50 µm toward 3 o'clock and 30 µm up",
    )
  })
})
