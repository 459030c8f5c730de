import { describe, expect, it } from 'vitest'
import {
  gearLift,
  journalLift,
  type Across,
  type GearDrive,
  type GearLift,
} from '../../src/mechanics/gearLift'
import { Random } from '../second/random'

/** 1 hp = 550 ft.lbf/s; 1 lbf = 4.4482216152605 N, exact. */
const pound = 4.4482216152605
const horsepower = 550 * 0.3048 * pound
const mil = 25.4

/** 5000 hp at 1800 rpm, pitch radius 10 in, 20 degrees, spur; shafts without weight, 6 mil of clearance, 1 mil of film. */
const g1: GearDrive = {
  power: 5000 * horsepower,
  speed: 1800,
  radius: 254,
  pressureAngle: 20,
  helix: 0,
  turns: 'clockwise',
  toward: { y: -1, z: 0 },
  driving: { mass: 0, clearance: 6 * mil, film: mil },
  driven: { mass: 0, clearance: 6 * mil, film: mil },
}
const lift = (drive: GearDrive): GearLift => {
  const answer = gearLift(drive)
  if (!answer) throw new Error('no answer')
  return answer
}
const backward = { clockwise: 'counter-clockwise', 'counter-clockwise': 'clockwise' } as const

/** 63025 hp/rpm lb.in, tangential torque/radius, radial by tan 20: standard formulas, computed; no printed answer. */
describe('the gear of 5000 hp', () => {
  it('has 175 069 lb.in, 17 507 lb along the pitch circles and 6 372 lb apart', () => {
    const { torque, tangential, radial, thrust } = lift(g1)
    expect(torque / (0.0254 * pound)).toBeCloseTo(175_069, -1)
    expect(tangential / pound).toBeCloseTo(17_507, 0)
    expect(radial / pound).toBeCloseTo(6372, 0)
    expect(thrust).toBe(0)
  })

  it('lifts a journal that is loaded straight up 5 mil, and one loaded down by its film', () => {
    const up = journalLift(g1.driven, { y: 0, z: 1 })
    expect(up.rise / mil).toBeCloseTo(5, 12)
    expect(journalLift(g1.driven, { y: 0, z: -1 }).rise / mil).toBeCloseTo(1, 12)
    expect(up.side).toBe(0)
  })

  it('lifts the shaft that it loads up 4 to 5 mil (trade: typical of 6 mil), and pushes both apart', () => {
    // the pinion turns clockwise on the 3 o'clock side of the gear: at the mesh, its 9 o'clock, its teeth go up
    const { driving, driven } = lift(g1)
    expect(driven.rise / mil).toBeGreaterThan(4)
    expect(driven.rise / mil).toBeCloseTo(3 + 2 * Math.cos(Math.PI / 9), 9)
    expect(driven.side / mil).toBeCloseTo(-2 * Math.sin(Math.PI / 9), 9)
    expect(driving.rise / mil).toBeCloseTo(3 - 2 * Math.cos(Math.PI / 9), 9)
    expect(driving.side / mil).toBeCloseTo(2 * Math.sin(Math.PI / 9), 9)
    expect(driven.turns).toBe('counter-clockwise')
  })

  it('as an increaser, the same shafts turning the same way, loads the other one up', () => {
    // the gear drives: it turns counter-clockwise with the pinion on its 3 o'clock side
    const increaser = lift({ ...g1, turns: 'counter-clockwise', toward: { y: 1, z: 0 } })
    expect(increaser.driven.turns).toBe('clockwise')
    expect(increaser.driving.rise).toBeLessThan(2 * mil)
    expect(increaser.driven.rise).toBeGreaterThan(4 * mil)
    // it was the pinion that went down
    expect(lift(g1).driving.rise).toBeLessThan(2 * mil)
  })

  it('keeps a shaft down that weighs more than the mesh lifts', () => {
    const mass = (25_000 * pound) / 9.80665
    const { driven } = lift({ ...g1, driven: { ...g1.driven, mass } })
    expect(driven.weight / pound).toBeCloseTo(25_000, 6)
    expect(driven.load.z).toBeLessThan(0)
    expect(driven.rise).toBeLessThan(2 * mil)
  })

  it('of a slanted tooth has thrust, and more that goes apart', () => {
    // 30 degrees: tan 30 = 0.57735, 1/cos 30 = 1.1547
    const { tangential, radial, thrust } = lift({ ...g1, helix: 30 })
    expect(thrust / tangential).toBeCloseTo(0.57735, 5)
    expect(radial / lift(g1).radial).toBeCloseTo(1.1547, 4)
  })
})

describe('any gear', () => {
  const draw = new Random(3)
  const drives = Array.from({ length: 200 }, (): GearDrive => {
    const angle = draw.between(0, 2 * Math.PI)
    const shaft = () => ({
      mass: draw.between(0, 4000),
      clearance: draw.between(60, 300),
      film: draw.between(0, 30),
    })
    return {
      power: draw.between(1e4, 1e7),
      speed: draw.between(300, 12_000),
      radius: draw.between(50, 600),
      pressureAngle: draw.pick([14.5, 20, 25]),
      helix: draw.pick([0, 15, 30]),
      turns: draw.pick(['clockwise', 'counter-clockwise'] as const),
      toward: { y: Math.cos(angle), z: Math.sin(angle) },
      driving: shaft(),
      driven: shaft(),
    }
  })

  it('pushes one shaft as much as the other, the other way', () => {
    for (const drive of drives) {
      const { driving, driven } = lift(drive)
      expect(driving.mesh.y + driven.mesh.y).toBeCloseTo(0, 6)
      expect(driving.mesh.z + driven.mesh.z).toBeCloseTo(0, 6)
    }
  })

  it('seen in a mirror rises as much and goes to the other side', () => {
    for (const drive of drives) {
      const seen = lift({
        ...drive,
        turns: backward[drive.turns],
        toward: { y: -drive.toward.y, z: drive.toward.z },
      })
      const here = lift(drive)
      for (const shaft of ['driving', 'driven'] as const) {
        expect(seen[shaft].rise).toBeCloseTo(here[shaft].rise, 9)
        expect(seen[shaft].side).toBeCloseTo(-here[shaft].side, 9)
      }
    }
  })

  it('does to the driver work that comes out at the driven one: force times speed at the mesh', () => {
    for (const drive of drives) {
      const { driving, driven } = lift(drive)
      // metal at the mesh of a shaft that turns clockwise moves along (r.z, -r.y)
      const work = (mesh: Across, turns: GearDrive['turns'], r: Across) =>
        (turns === 'clockwise' ? 1 : -1) * (mesh.y * r.z - mesh.z * r.y)
      const { toward } = drive
      expect(work(driving.mesh, driving.turns, toward)).toBeLessThan(0)
      expect(work(driven.mesh, driven.turns, { y: -toward.y, z: -toward.z })).toBeGreaterThan(0)
    }
  })

  it('never carries a journal further than its bearing lets it', () => {
    for (const drive of drives) {
      const answer = lift(drive)
      for (const shaft of ['driving', 'driven'] as const) {
        const { rise, side } = answer[shaft]
        const { clearance, film } = drive[shaft]
        expect(Math.hypot(side, rise - clearance / 2)).toBeCloseTo(clearance / 2 - film, 6)
      }
    }
  })

  it('has no answer without a drive, a distance, or room for the film', () => {
    for (const wrong of [
      { power: 0 },
      { speed: 0 },
      { radius: -1 },
      { pressureAngle: 90 },
      { helix: -1 },
      { toward: { y: 0, z: 0 } },
      { driven: { mass: 0, clearance: 100, film: 51 } },
      { speed: NaN },
    ])
      expect(gearLift({ ...g1, ...wrong })).toBeUndefined()
  })
})
