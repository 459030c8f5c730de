import type { HiddenLine } from './randomCoupling'
import { rounded, type Random } from './random'
import { midSpan, misalignment, shown } from './reading'
import type { Streams } from './streams'
import type { Coupling, Line, ReadingSet, Sweep } from './train'

const fullClock = [12, 3, 6, 9]

/** Takes readings of one coupling's hidden misalignment, rounded as a dial shows them. */
export class ReadingTaker {
  private readonly random: Random
  private readonly sags: Random
  private readonly us: Random

  constructor(
    streams: Streams,
    private readonly c: Coupling,
    private readonly hidden: HiddenLine,
    private readonly step: number,
  ) {
    this.random = streams.of('readings', c.id)
    this.sags = streams.of('sag', c.id)
    this.us = streams.of('reading u', c.id)
  }

  private hours(): number[] {
    const { random } = this
    const kind = random.next()
    if (kind < 0.6) return fullClock
    if (kind < 0.75) return [9, 10.5, 12, 1.5, 3]
    if (kind < 0.85) return [10, 11, 12, 1, 2]
    return [6, 7.5, 9, 10.2, 12, 2.25]
  }

  /** Fills in what a sweep would show, with a zero of its own. */
  private sweep(set: Sweep, hours: number[]): Sweep {
    const { random, c } = this
    const at = (hour: number) => {
      const { of, sag } = shown(c, set, hour)
      const [oy, oz, sy, sz] = of
      const { offset, slope } = this.hidden
      return oy * offset.y + oz * offset.z + sy * slope.y + sz * slope.z + sag
    }
    const zeroed = set.kind !== 'gap' && random.chance(0.8)
    const first = hours[0] ?? 12
    const zero = zeroed
      ? at(first)
      : set.kind === 'gap'
        ? -random.between(2000, 5000)
        : random.about(100)
    const noise = random.chance(0.5) ? 0 : 2
    set.readings = hours.map((hour) => {
      const error = zeroed && hour === first ? 0 : random.about(noise)
      return [hour, rounded(at(hour) - zero + error, this.step)]
    })
    return set
  }

  private sag(): number | undefined {
    return this.sags.maybe(0.7, () => Math.round(this.sags.between(5, 80)))
  }

  private anySag(): number | undefined {
    return this.sags.maybe(0.5, () => Math.round(this.sags.about(15)))
  }

  private u(): number | undefined {
    return this.us.maybe(0.4, () => this.us.pick([5, 10, 20, 30]))
  }

  private rim(rides: 'left' | 'right', at: number): Sweep {
    return { kind: 'rim', rides, at, sag: this.sag(), readings: [], u: this.u() }
  }

  private rimFace(): Sweep {
    const { random } = this
    return {
      kind: 'face',
      rides: random.pick(['left', 'right']),
      diameter: Math.round(random.between(150, 450)),
      face: random.pick(['front', 'back', undefined]),
      sag: this.anySag(),
      readings: [],
      u: this.u(),
    }
  }

  private gap(): Sweep {
    const diameter = Math.round(this.random.between(150, 450))
    return { kind: 'gap', diameter, readings: [], u: this.u() }
  }

  private spool(end: 'left' | 'right'): Sweep {
    const diameter = Math.round(this.random.between(150, 450))
    return { kind: 'spool', end, diameter, sag: this.anySag(), readings: [], u: this.u() }
  }

  private line(at: number, parts: 'offset' | 'slope' | 'both'): Line {
    const { random, hidden } = this
    const arm = at - midSpan(this.c)
    const line: Line = { kind: 'line', at, u: this.u(), uSlope: this.us.maybe(0.3, () => 0.1) }
    const offset = (axis: 'y' | 'z') =>
      rounded(hidden.offset[axis] + hidden.slope[axis] * arm + random.about(2), this.step)
    const slope = (axis: 'y' | 'z') => rounded(hidden.slope[axis] + random.about(0.01), 0.001)
    if (parts !== 'slope') line.offset = { y: offset('y'), z: offset('z') }
    if (parts !== 'offset') line.slope = { y: slope('y'), z: slope('z') }
    return line
  }

  /** A line that gives one direction only. */
  private only(axis: 'y' | 'z', { offset, slope, ...line }: Line): Line {
    return {
      ...line,
      offset: offset && { [axis]: offset[axis] },
      slope: slope && { [axis]: slope[axis] },
    }
  }

  /** One way of measuring that fixes all four numbers. */
  private method(): ReadingSet[] {
    const { random, c } = this
    const p = c.left.plane
    const q = c.right.plane
    const span = q - p
    const reach = Math.max(span, 150)
    const from = Math.round(midSpan(c) - reach / 2 + random.about(10))
    const to = Math.round(midSpan(c) + reach / 2 + random.about(10))
    const hours = this.hours()
    const take = (set: Sweep, at: number[] = hours) => this.sweep(set, at)
    switch (
      random.pick([
        'reverse',
        'reverse',
        'zeros',
        'face',
        'gap',
        'spool',
        'line',
        'lines',
        'halves',
        'mixed',
      ] as const)
    ) {
      case 'reverse':
        return [take(this.rim('left', from)), take(this.rim('right', to))]
      case 'zeros':
        return (['left', 'right'] as const).flatMap((rides) => {
          const at = rides === 'left' ? from : to
          const upright = random.chance(0.5) ? [12, 6] : [6, 12]
          const level = random.chance(0.5) ? [3, 9] : [9, 3]
          return [take(this.rim(rides, at), upright), take(this.rim(rides, at), level)]
        })
      case 'face':
        return [take(this.rim(random.pick(['left', 'right']), to)), take(this.rimFace())]
      case 'gap':
        return [take(this.rim(random.pick(['left', 'right']), from)), take(this.gap(), fullClock)]
      case 'spool':
        if (span === 0) return [take(this.rim('left', to)), take(this.rimFace())]
        return [take(this.spool('left')), take(this.spool('right'))]
      case 'lines':
        return [this.line(from, 'offset'), this.line(to, 'offset')]
      case 'line':
        return [this.line(to, 'both')]
      case 'halves':
        // height by an instrument, sideways by dials read at 3 and 9 only
        return [
          this.only('z', this.line(from, 'both')),
          take(this.rim('left', from), [3, 9]),
          take(this.rim('right', to), [9, 3]),
        ]
      case 'mixed':
        return random.chance(0.5)
          ? [take(this.rim('right', to)), this.line(from, 'slope')]
          : [this.line(to, 'offset'), take(this.rimFace())]
    }
  }

  /** Gives the coupling readings that hold its four numbers well; one in four is over-determined. */
  take(): void {
    do {
      this.c.found = this.method()
      if (this.random.chance(0.25)) this.c.found.push(...this.method())
    } while (!(misalignment(alike(this.c)).hold > 1e-3))
  }
}

/** A coupling whose readings are all as well known: how well they are may not decide which are taken. */
const alike = (c: Coupling): Coupling => ({
  ...c,
  found: c.found.map((set) => ({ ...set, u: undefined, uSlope: undefined }) as ReadingSet),
})
