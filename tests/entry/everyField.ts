import { readFileSync } from 'node:fs'
import type { FootDocument, TrainDocument } from '../../src/document/schema'

/**
 * A sound train in which every number of the train file is given at least once, its open parts apart.
 * A field that is new in the schema is to be added here: the test of quantities asks for it.
 */
export function everyField(): TrainDocument {
  const document = JSON.parse(readFileSync('shared/refused/sound.json', 'utf8')) as TrainDocument
  const [motor] = document.machines
  const [skid] = document.skids ?? []
  const [coupling, other] = document.couplings
  if (!motor || !skid || !coupling || !other) throw new Error('the sound train has lost its parts')
  const foot: Partial<FootDocument> = {
    lift: 900,
    soft: 13,
    soleplate: -40,
    gaps: [11, 12, 13, 14],
    torque: { value: 360, pattern: 'crosswise' },
  }
  const body = { weight: 2, effort: 30, tilt: 3, mass: 800, jack: 400, level: 0.3 }
  const room = (by: number): [number, number] => [-by, by]
  for (const whole of [motor, skid]) {
    Object.assign(whole, body)
    Object.assign(whole.feet[0] ?? {}, foot)
    Object.assign(whole.feet[0] ?? {}, {
      pack: { now: 3000, min: 500, max: 9000, plates: [2000, 1000] },
    })
    const [first] = whole.feet
    if (first) first.hole = { clearance: 2000, x: 3, y: 4, u: 150, ...first.hole }
    whole.pins = [{ id: 'road', kind: 'key', effort: 60 }]
    whole.restraints = [
      { id: 'flange', x: 510, y: 20, z: 700, axial: room(410), side: room(420), rise: room(430) },
    ]
  }
  motor.stator = {
    airGaps: [{ id: 'drive end', at: 700, top: 5100, three: 5020, bottom: 4900, nine: 4980 }],
    feet: [{ id: 'S1', x: 600 }],
    aim: { y: 12, z: -30 },
    limit: 0.08,
    basis: 'maker',
    use: true,
    why: 'measured twice',
    when: 'May',
    by: 'A',
  }
  Object.assign(motor.growth?.['hot']?.[0] ?? {}, { axial: 17, u: 9 })
  motor.growth?.['hot']?.push({
    at: 900,
    range: { rise: [60, 90], side: [-5, 8], axial: [10, 30] },
  })
  Object.assign(motor.growth?.['hot']?.[0] ?? {}, {
    source: 'measured',
    when: 'May',
    by: 'A',
    why: 'x',
  })
  motor.growth?.['hot']?.push({ at: 100, rise: 5, use: false })
  document.states?.forEach((state, i) =>
    Object.assign(state, { load: 10 + 50 * i, temperature: 10 + i }),
  )
  document.states?.push({
    id: 'part',
    name: 'part',
    load: 20,
    between: { from: 'cold', to: 'hot', by: 'load' },
  })
  coupling.aim = { hot: { offset: { y: 5, z: -20 }, slope: { y: 0.02, z: 0.03 } } }
  other.setting = { offset: { y: 3, z: 4 }, slope: { y: 0.05, z: 0.06 }, use: true, why: 'tried' }
  for (const set of coupling.found) {
    set.u = 14
    if (set.kind !== 'gap' && set.kind !== 'line')
      Object.assign(set, { uSag: 4, bracket: 'long arm' })
    if (set.kind === 'rim') set.uAt = 2
    else if (set.kind !== 'line') set.uDiameter = 3
  }
  coupling.runOut = {
    left: { rim: 21, face: 12 },
    right: { rim: 13, face: 14 },
    limit: 50,
    basis: 'site',
  }
  other.speed = 2950
  other.gear = { pitch: 180, least: 0.1, sliding: 120, states: ['hot'], basis: 'maker' }
  if (coupling.axial)
    Object.assign(coupling.axial, {
      u: 0.2,
      stretch: [-1.5, 1.2],
      rotors: { left: { centre: 0.3, float: [-6, 7] }, right: { float: [-0.2, 0.1] } },
    })
  other.axial = { found: 90, want: 90, tolerance: 0.4, rotors: { right: { centre: 0.1 } } }
  for (const set of other.found) if (set.kind === 'line') set.uSlope = 0.07
  document.plan = {
    ...document.plan,
    weights: { shim: 2, side: 3, axial: 4 },
    shims: { step: 25, stock: [25, 50, 100], most: 5, flat: 35 },
    leave: 15,
    stage: 450,
    slip: 900,
    guard: 1.5,
    worst: true,
    sure: { shim: 8, slide: 16, foot: 3, chance: 0.8, draws: 5000, seed: 7 },
  }
  document.surveys = [
    {
      id: 'wire',
      u: 18,
      joins: true,
      points: [
        { machine: 'motor', x: 100, z: 5, y: 6 },
        { machine: 'motor', x: 900, z: 30, y: -8, u: 12 },
        { machine: 'pump', axis: 'left', x: 3500, z: 90, y: 7 },
      ],
    },
  ]
  document.checkEvery = 18
  document.hotChecks = [
    {
      id: 'june',
      state: 'hot',
      when: 'June',
      by: 'A',
      datum: 'pump',
      couplings: [
        {
          coupling: 'motor-gear',
          decay: { time: 180, u: 40 },
          times: [12, 31].map((after) => ({ after, found: structuredClone(coupling.found) })),
        },
        {
          coupling: 'gear-pump',
          times: [{ after: 15, found: structuredClone(other.found) }],
        },
      ],
      moved: [
        { machine: 'motor', points: [{ at: 450, rise: 70, side: -6, u: 14 }] },
        { machine: 'gear', against: 'pit', points: [{ at: 2100, axis: 'left', rise: 130 }] },
      ],
    },
  ]
  document.outages = [
    {
      id: 'may',
      when: '2024-05-01',
      by: 'A',
      couplings: [
        {
          coupling: 'motor-gear',
          planes: [1310, 1610],
          found: structuredClone(coupling.found),
          left: structuredClone(coupling.found),
        },
        {
          coupling: 'gear-pump',
          planes: [2700, 2700],
          found: structuredClone(other.found),
          left: structuredClone(other.found),
        },
      ],
      plan: 'as planned',
      work: 'shimmed',
      hotCheck: 'june',
    },
  ]
  return document
}
