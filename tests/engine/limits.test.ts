import { describe, expect, it } from 'vitest'
import {
  close,
  at,
  fourFeet,
  given,
  oneRow,
  pair,
  planOf,
  twoFeet,
  type Json,
  type Pair,
} from './pair'

/** B on one row of two feet, so that it only rises and slides: a hand can see what must move. */
const simple = (foot: Json, found: [y: number, z: number], more: Pair = {}) =>
  planOf(
    pair({
      ...more,
      right: { feet: oneRow.map((f) => ({ ...f, ...foot })), ...more.right },
      found: [given(...found)],
    }),
  )

const rises = (answer: ReturnType<typeof planOf>) =>
  (answer.feet ?? []).map(({ shim }) => Math.round(shim * 100) / 100)
const slides = (answer: ReturnType<typeof planOf>) =>
  (answer.feet ?? []).map(({ side }) => Math.round(side * 100) / 100)

describe('a train that may move freely', () => {
  it('is raised until its offset is within tolerance: 300 low, 100 allowed, two feet', () => {
    const answer = simple({}, [0, -300])
    expect(answer.status).toBe('planned')
    expect(rises(answer)).toEqual([200, 200])
    expect(answer.cost).toBeCloseTo(400, 3)
    expect(answer.floor).toBeCloseTo(0, 6)
    expect(answer.worstShare).toBeCloseTo(1, 5)
  })

  it('slides each row of feet once: 300 to one side is 200 for its one row', () => {
    const answer = simple({}, [-300, 0])
    expect(slides(answer)).toEqual([200, 200])
    expect(answer.total).toEqual({ shim: 0, side: close(200, 3), axial: 0 })
    expect(answer.cost).toBeCloseTo(200, 3)
  })

  it('counts moves by their weights and its own', () => {
    const answer = simple({}, [-300, -300], {
      right: { weight: 3 },
      rest: { plan: { weights: { shim: 2, side: 0.5 } } },
    })
    // 3 * (2 * 400 + 0.5 * 200)
    expect(answer.cost).toBeCloseTo(2700, 2)
    expect(answer.total).toMatchObject({
      shim: close(400, 3),
      side: close(200, 3),
    })
  })
})

describe('packs', () => {
  const pack = (now: number, min?: number, max?: number) => ({ pack: { now, min, max } })

  it('end at their limits: 200 up is allowed to 700, and no floor below what is left', () => {
    expect(at(simple(pack(500, 0, 700), [0, -300]).feet, 0).packAfter).toBeCloseTo(700, 2)
    const short = simple(pack(500, 0, 650), [0, -300])
    expect(short.status).toBe('impossible')
    expect(short.floor).toBeCloseTo(1.5, 6) // 150 stay
  })

  it('may not be thinner than nothing where no minimum is given', () => {
    expect(simple(pack(200), [0, 300]).status).toBe('planned')
    const thin = simple(pack(150), [0, 300])
    expect(thin.status).toBe('impossible')
    expect(thin.floor).toBeCloseTo(1.5, 6)
  })

  it('under their minimum already may stay or grow, and the answer says so', () => {
    const finding = {
      where: 'machines[1].feet[0].pack',
      what: 'pack of Pump foot 1000a is 500 µm, already under its minimum 800 µm: nothing may come out',
    }
    const low = simple(pack(500, 800), [0, -300])
    expect(rises(low)).toEqual([200, 200])
    expect(at(low.feet, 0).packAfter).toBeCloseTo(700, 2) // still under 800
    expect(low.findings).toContainEqual(finding)
    const high = simple(pack(500, 800), [0, 300])
    expect(high.status).toBe('impossible')
    expect(high.floor).toBeCloseTo(3, 6)
    expect(high.findings).toContainEqual(finding)
  })

  it('over their maximum already may stay or shrink', () => {
    expect(rises(simple(pack(900, 0, 600), [0, 300]))).toEqual([-200, -200])
    const low = simple(pack(900, 0, 600), [0, -300])
    expect(low.status).toBe('impossible')
    expect(low.findings.map(({ what }) => what)).toEqual(
      ['1000a', '1000b'].map(
        (foot) =>
          `pack of Pump foot ${foot} is 900 µm, already over its maximum 600 µm: nothing may be added`,
      ),
    )
  })

  it('at a limit are no finding', () => {
    expect(simple(pack(500, 500, 500), [0, -300]).findings).toEqual([])
  })
})

describe('lift', () => {
  it('is the most a foot may rise; lowering is another matter', () => {
    expect(rises(simple({ lift: 200 }, [0, -300]))).toEqual([200, 200])
    const short = simple({ lift: 150 }, [0, -300])
    expect(short.status).toBe('impossible')
    expect(short.floor).toBeCloseTo(1.5, 6)
    expect(rises(simple({ lift: 0 }, [0, 300]))).toEqual([-200, -200])
  })

  it('passed already means no higher, and the answer says so', () => {
    expect(rises(simple({ lift: -50 }, [0, 300]))).toEqual([-200, -200])
    const low = simple({ lift: -50 }, [0, -300])
    expect(low.status).toBe('impossible')
    expect(low.floor).toBeCloseTo(3, 6)
    expect(at(low.findings, 0)).toEqual({
      where: 'machines[1].feet[0].lift',
      what: 'Pump foot 1000a already stands 50 µm above its highest: it may not rise',
    })
  })
})

describe('bolts in holes', () => {
  const hole = (clearance: number, y = 0, x = 0) => ({ hole: { clearance, x, y } })

  it('may travel half the clearance', () => {
    const answer = simple(hole(400), [-300, 0])
    expect(slides(answer)).toEqual([200, 200])
    // the hole centre goes 200 toward 3 from the bolt, so the bolt stands 200 toward 9 in it
    expect(at(answer.feet, 0).boltAt).toEqual({
      x: 0,
      y: close(-200, 2),
      room: close(0, 2),
    })
    const short = simple(hole(300), [-300, 0])
    expect(short.status).toBe('impossible')
    expect(short.floor).toBeCloseTo(1.5, 5)
  })

  it('start where they stand: 50 toward 3 leaves 150 that way and 250 the other', () => {
    expect(simple(hole(400, 50), [-250, 0]).status).toBe('planned')
    expect(simple(hole(400, 50), [-251, 0]).status).toBe('impossible')
    expect(simple(hole(400, 50), [350, 0]).status).toBe('planned')
    expect(simple(hole(400, 50), [351, 0]).status).toBe('impossible')
  })

  it('are round: 120 along the train leaves 160 across of 200', () => {
    expect(simple(hole(400, 0, 120), [-260, 0]).status).toBe('planned')
    expect(simple(hole(400, 0, 120), [-261, 0]).status).toBe('impossible')
    expect(at(simple(hole(400, 0, 120), [-260, 0]).feet, 0).boltAt).toEqual({
      x: -120,
      y: close(-160, 2),
      room: close(0, 2),
    })
  })

  it('keep the room that is reserved', () => {
    const rest = { plan: { reserve: 80 } }
    expect(simple(hole(560), [-300, 0], { rest }).status).toBe('planned')
    expect(simple(hole(558), [-300, 0], { rest }).status).toBe('impossible')
  })

  it('that touch already may stay, move along the circle they stand on, and away', () => {
    // 150 toward 3 in a hole that allows 100: no further that way, 300 the other
    const away = simple(hole(200, 150), [400, 0])
    expect(slides(away)).toEqual([-300, -300])
    expect(away.findings).toContainEqual({
      where: 'machines[1].feet[0].hole',
      what: 'bolt of Pump foot 1000a already touches its hole: it may stay there and move away, no further',
    })
    expect(simple(hole(200, 150), [401, 0]).status).toBe('impossible')
    const toward = simple(hole(200, 150), [-300, 0])
    expect(toward.status).toBe('impossible')
    expect(toward.floor).toBeCloseTo(3, 5)
  })

  it('that stand within the reserve may stay, and the answer says so', () => {
    const rest = { plan: { reserve: 100 } }
    // 120 of 200: 80 left where 100 should be; the circle is the one of 120
    const away = simple(hole(400, 120), [340, 0], { rest })
    expect(slides(away)).toEqual([-240, -240])
    expect(away.findings).toContainEqual({
      where: 'machines[1].feet[1].hole',
      what: 'bolt of Pump foot 1000b has 80 µm of room, less than the 100 µm to keep: it may stay there and move away, no further',
    })
    expect(simple(hole(400, 120), [-101, 0], { rest }).status).toBe('impossible')
    expect(simple(hole(400, 100), [-300, 0], { rest }).findings).toEqual([])
  })

  it('feel a yaw along the train where feet stand off the middle', () => {
    // 0.5 mrad has to come off: rows go 250 apart either way, and feet 300 off the middle 150 along
    const yawed = (clearance: number) =>
      planOf(
        pair({
          right: { feet: fourFeet.map((foot) => ({ ...foot, ...hole(clearance) })) },
          found: [given(0, 0, 0.501, 0)],
          coupling: { tolerance: { angle: 0.001 } },
        }),
      )
    // 2 * hypot(250, 150) = 583.1
    expect(yawed(584).status).toBe('planned')
    expect(yawed(582).status).toBe('impossible')
    const { axial, side } = at(yawed(584).feet, 0)
    expect(Math.abs(axial)).toBeCloseTo(150, 1)
    expect(Math.abs(Math.abs(side) - 250)).toBeLessThan(1)
  })
})

describe('tilt and restraints', () => {
  it('limit the pitch: 0.3 of 0.5 mrad may come off', () => {
    const pitched = (tilt: number) =>
      planOf(
        pair({
          right: { tilt },
          found: [given(0, 0, 0, 0.5)],
          coupling: { tolerance: { angle: 0.2 } },
        }),
      )
    const answer = pitched(0.3)
    expect(answer.status).toBe('planned')
    expect(at(answer.bodies, 1).move.sz).toBeCloseTo(-0.3, 5)
    const short = pitched(0.25)
    expect(short.status).toBe('impossible')
    expect(short.floor).toBeCloseTo(0.25 / 0.2, 6)
  })

  it('limit how far a nozzle is carried, each way apart', () => {
    const piped = (way: string, range: [number, number], found: [number, number]) =>
      simple({}, found, { right: { restraints: [{ id: 'n', x: 1000, z: 800, [way]: range }] } })
    expect(piped('rise', [0, 200], [0, -300]).status).toBe('planned')
    expect(piped('rise', [-500, 199], [0, -300]).status).toBe('impossible')
    expect(piped('rise', [-200, 0], [0, 300]).status).toBe('planned')
    expect(piped('side', [-200, 0], [300, 0]).status).toBe('planned')
    expect(piped('side', [-199, 500], [300, 0]).status).toBe('impossible')
  })

  it('count the height of the nozzle: a roll of 0.1 mrad carries it 80 um at 800 mm', () => {
    // B lies 140 to 9 o'clock; only a roll of -0.1 brings the axis at 400 mm 40 toward 3
    const rolled = (range: [number, number]) =>
      planOf(
        pair({
          right: {
            feet: oneRow,
            free: { side: false, roll: true },
            restraints: [{ id: 'n', x: 1000, z: 800, side: range }],
          },
          found: [given(-140, 0)],
        }),
      )
    expect(at(rolled([-80.01, 80.01]).bodies, 1).move.roll).toBeCloseTo(-0.1, 5)
    expect(rolled([-79, 79]).status).toBe('impossible')
  })
})

describe('what a body is free to do', () => {
  // B is 100 low; the offset may be 10
  const low = (right: Json) =>
    planOf(pair({ right, found: [given(0, -100)], coupling: { tolerance: { offset: 10 } } }))

  it('without keys the near row alone rises: 90 / 1.9 at two feet', () => {
    const answer = low({})
    expect(rises(answer)).toEqual([47.37, 47.37, 0, 0])
    expect(answer.cost).toBeCloseTo(94.7368, 3)
  })

  it('a foot that cannot be shimmed is a pivot: the far row goes 90 / 0.9 down', () => {
    const feet = fourFeet.map((foot, i) => (i === 0 ? { ...foot, free: { shim: false } } : foot))
    const answer = low({ feet })
    expect(rises(answer)).toEqual([0, 0, -100, -100])
    expect(answer.cost).toBeCloseTo(200, 3)
  })

  it('a foot that cannot slide is one sideways', () => {
    const side = (feet: readonly Json[]) =>
      planOf(
        pair({
          right: { feet },
          found: [given(-100, 0)],
          coupling: { tolerance: { offset: 10 } },
        }),
      )
    expect(slides(side(fourFeet))).toEqual([47.37, 47.37, 0, 0])
    const keyed = side(fourFeet.map((f, i) => (i === 1 ? { ...f, free: { side: false } } : f)))
    expect(slides(keyed)).toEqual([0, 0, -100, -100])
    expect(keyed.total?.side).toBeCloseTo(100, 3)
  })

  it('two rows of keyed feet stay', () => {
    const feet = fourFeet.map((f, i) => (i % 2 === 0 ? { ...f, free: { shim: false } } : f))
    const answer = low({ feet })
    expect(answer.status).toBe('impossible')
    expect(answer.floor).toBeCloseTo(10, 6)
  })

  it('a body on one row of feet neither pitches nor yaws', () => {
    const answer = (right: Json) =>
      planOf(
        pair({
          right,
          found: [given(0, 0, 0.5, 0.5)],
          coupling: { tolerance: { angle: 0.1 } },
        }),
      )
    expect(answer({}).status).toBe('planned')
    expect(answer({ feet: oneRow }).status).toBe('impossible')
    expect(answer({ feet: oneRow }).floor).toBeCloseTo(5, 9)
  })

  // B is 50 toward 3, 10 allowed; nothing may slide: roll +0.1 carries the axis at 400 mm 40 back
  const rolled = (right: Json) =>
    planOf(
      pair({
        right: { ...right, free: { side: false, roll: true, ...(right['free'] as Json) } },
        found: [given(50, 0)],
        coupling: { tolerance: { offset: 10 } },
      }),
    )

  it('a body that may roll does so by shims at either side: 30 um at feet 300 mm out', () => {
    const answer = rolled({})
    expect(answer.status).toBe('planned')
    expect(at(answer.bodies, 1).move.roll).toBeCloseTo(0.1, 5)
    // each row may be raised besides, one foot the more and the other the less, at the same cost
    const [a = NaN, b = NaN, c = NaN, d = NaN] = rises(answer)
    expect([a - b, c - d]).toEqual([close(60, 2), close(60, 2)])
    expect(answer.cost).toBeCloseTo(120, 3)
  })

  it('it rolls only with feet at two y, with shims free, and when it may', () => {
    expect(rolled({ feet: twoFeet }).status).toBe('impossible')
    expect(rolled({ free: { shim: false } }).status).toBe('impossible')
    expect(rolled({ free: { roll: false } }).status).toBe('impossible')
    expect(rolled({ feet: [...twoFeet, { id: 'w', x: 2000, y: 200 }] }).status).toBe('planned')
  })

  it('what is not freed stays: shim, side, axial', () => {
    expect(low({ free: { shim: false } }).status).toBe('impossible')
    const aside = (free: Json) => simple({}, [-300, 0], { right: { free } })
    expect(aside({ side: false }).status).toBe('impossible')
    expect(aside({ shim: false }).status).toBe('planned')
    const apart = (free: Json) =>
      simple({}, [0, 0], {
        right: { free },
        coupling: { axial: { found: 251, want: 250, tolerance: 0.5 } },
      })
    expect(apart({}).status).toBe('impossible') // axial is not free unless said
    expect(apart({ axial: true }).total?.axial).toBeCloseTo(500, 3)
  })

  it('what is held stays', () => {
    const answer = low({ held: true })
    expect(answer.status).toBe('impossible')
    expect(answer.held).toEqual(['A', 'B'])
    expect(answer.floor).toBeCloseTo(10, 9)
  })
})

describe('standing still', () => {
  const share = (z: number, allowed: number) =>
    simple({}, [0, z], { rest: { plan: { share: allowed } } }).status

  it('is the answer up to the share itself, and half a millionth beyond it for rounding', () => {
    expect(share(70, 0.7)).toBe('in-tolerance')
    expect(share(70.00004, 0.7)).toBe('in-tolerance')
    expect(share(70.001, 0.7)).toBe('planned')
    expect(share(-100, 1)).toBe('in-tolerance')
  })

  it('costs nothing and moves nothing, whatever limits are broken', () => {
    const answer = simple({ pack: { now: 10, min: 500 }, hole: { clearance: 10, x: 50 } }, [0, 50])
    expect(answer.status).toBe('in-tolerance')
    expect(answer.cost).toBe(0)
    expect(answer.total).toEqual({ shim: 0, side: 0, axial: 0 })
    expect(answer.binding).toEqual([])
    expect(answer.proof).toMatchObject({ bound: 0, gap: 0, worstViolation: 0 })
    expect(answer.findings).toHaveLength(4)
  })

  it('is possible with any limit broken, so the floor never lies above what stands', () => {
    const answer = simple({ pack: { now: 10, min: 500, max: 600 }, lift: -5 }, [0, 300])
    expect(answer.floor).toBeCloseTo(3, 9)
    expect(answer.standingShare).toBeCloseTo(3, 9)
  })
})
