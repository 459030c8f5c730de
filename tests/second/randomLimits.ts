import type { HiddenMotions, Spot } from './hiddenMotion'
import type { Random } from './random'
import type { Streams } from './streams'
import type { Body, Foot, Restraint, Room } from './train'

/** Limits of one random body, drawn around a motion that would put the train right. */
export class LimitMaker {
  constructor(
    private readonly streams: Streams,
    private readonly motions: HiddenMotions,
    private readonly reserve: number,
    private readonly circles: boolean,
    /** How many of the limits stand inside the hidden motion (0 to 1). */
    private readonly tight: number,
  ) {}

  private near(random: Random): number {
    return random.chance(this.tight) ? random.between(0.4, 1) : random.between(1, 1.6)
  }

  private room(random: Random, moved: number): number {
    return Math.round(Math.abs(moved) * this.near(random)) + 2
  }

  /** Adds packs, lifts, holes, restraints and tilt to a body whose feet stand `base` up a skid. */
  limit(body: Body, base: number): void {
    this.atSomeFeet('pack', body, [0.6, 0.9], (random, f, moved) => {
      this.pack(random, f, moved.z)
    })
    this.atSomeFeet('lift', body, [0.35, 0.8], (random, f, moved) => {
      f.lift = this.room(random, Math.max(0, moved.z))
    })
    if (this.circles)
      this.atSomeFeet('hole', body, [0.6, 0.9], (random, f, moved) => {
        this.hole(random, f, moved)
      })
    const tilt = this.streams.of('tilt', body.id)
    if (tilt.chance(0.3)) {
      const pitch = Math.abs(this.motions.pitch(body.id))
      body.tilt = Number((pitch * this.near(tilt) + 0.01).toFixed(3))
    }
    const random = this.streams.of('restraint', body.id)
    if (random.chance(0.5)) {
      body.restraints = Array.from({ length: random.pick([1, 1, 2]) }, (_, i) =>
        this.restraint(body, base, `nozzle ${i + 1}`),
      )
    }
  }

  /** A limit of feet: how likely a body has it, and then each of its feet. */
  private atSomeFeet(
    name: 'pack' | 'lift' | 'hole',
    body: Body,
    [some, each]: [number, number],
    make: (random: Random, f: Foot, moved: Spot) => void,
  ): void {
    if (!this.streams.of(name, body.id).chance(some)) return
    for (const f of body.feet) {
      const random = this.streams.of(name, body.id, f.id)
      const moved = this.motions.own(body.id, { x: f.x, y: f.y ?? 0, z: 0 })
      if (random.chance(each)) make(random, f, moved)
    }
  }

  private pack(random: Random, f: Foot, rise: number): void {
    const now = Math.round(random.between(1000, 6000))
    const free = random.between(50, 800)
    const down = this.room(random, rise > 0 ? free : rise)
    const up = this.room(random, rise > 0 ? rise : free)
    const pack: NonNullable<Foot['pack']> = { now }
    if (random.chance(0.85)) pack.min = Math.max(0, now - down)
    if (random.chance(0.75)) pack.max = now + up
    if (random.chance(0.05)) pack.min = now // base-bound
    if (random.chance(0.04)) pack.max = now // top-bound
    const broken = random.next()
    if (broken < 0.03) {
      pack.min = now + random.whole(10, 300)
      pack.max = pack.min + random.whole(100, 2000)
    } else if (broken < 0.06) {
      pack.max = now - random.whole(10, 300)
      pack.min = Math.max(0, pack.max - random.whole(100, 2000))
    }
    f.pack = pack
  }

  private hole(random: Random, f: Foot, moved: Spot): void {
    const size = Math.hypot(moved.x, moved.y) + 20
    const x = random.chance(0.4) ? Math.round(random.about(size * 0.3)) : 0
    const y = random.chance(0.6) ? Math.round(random.about(size * 0.3)) : 0
    const after = Math.hypot(x + moved.x, y + moved.y)
    const need = after * this.near(random) + this.reserve + 20
    const touching = random.chance(0.05) ? random.between(0.2, 0.9) * Math.hypot(x, y) + 5 : need
    f.hole = { clearance: Math.round(2 * touching) }
    if (x !== 0) f.hole.x = x
    if (y !== 0) f.hole.y = y
  }

  private restraint(body: Body, base: number, id: string): Restraint {
    const random = this.streams.of('restraint', body.id, id)
    const xs = body.feet.map((f) => f.x)
    const low = xs.length > 0 ? Math.min(...xs) : 0
    const x = Math.round(random.between(low, Math.max(low + 300, ...xs)))
    const y = random.chance(0.5) ? Math.round(random.about(300)) : 0
    const z = Math.round(random.between(100, 1200))
    const moved = this.motions.whole(body.id, base, { x, y, z })
    const range = (by: number): Room => {
      const toward = this.room(random, by)
      const away = Math.round(random.between(5, 400))
      return by > 0 ? [-away, toward] : [-toward, away]
    }
    const r: Restraint = { id, x, z }
    if (y !== 0) r.y = y
    if (random.chance(0.7)) r.axial = range(moved.x)
    if (random.chance(0.7)) r.side = range(moved.y)
    if (random.chance(0.7) || (!r.axial && !r.side)) r.rise = range(moved.z)
    return r
  }
}
