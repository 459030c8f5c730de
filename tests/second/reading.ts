import { leastSquares, type Equation } from './leastSquares'
import type { LeftOut } from './terms'
import { counted, type Coupling, type Line, type Sweep } from './train'

/** A coupling's misalignment as found: offset at mid-span (um) and slope (mrad). */
export interface Misalignment {
  offset: { y: number; z: number }
  slope: { y: number; z: number }
  /** How well the readings hold the four numbers: 1 well, near 0 hardly. */
  hold: number
}

/** Coefficients of offset y, offset z, slope y, slope z in one reading, and what sag adds to it. */
interface Part {
  of: [number, number, number, number]
  sag: number
}

const usual = { reading: 10, slope: 0.05 }

/** The x half-way between the two flex planes, where offsets are stated (mm). */
export function midSpan(c: Coupling): number {
  return (c.left.plane + c.right.plane) / 2
}

/** Outward unit vector at a clock hour: y toward 3, z toward 12. */
function outward(hour: number): { y: number; z: number } {
  const angle = (hour * Math.PI) / 6
  return { y: Math.sin(angle), z: Math.cos(angle) }
}

/** What one sweep shows at one hour, apart from its zero. */
export function shown(c: Coupling, set: Sweep, hour: number, leaveOut?: LeftOut): Part {
  const u = outward(leaveOut === 'decimal hour' ? Math.round(hour) : hour)
  const m = midSpan(c)
  const along = (offset: number, slope: number): Part['of'] => [
    offset * u.y,
    offset * u.z,
    slope * u.y,
    slope * u.z,
  ]
  switch (set.kind) {
    case 'rim': {
      const sign = set.rides === 'left' && leaveOut !== 'rim rides left' ? -1 : 1
      const arm = leaveOut === 'rim position' ? 0 : set.at - m
      return {
        of: along(sign, sign * arm),
        sag: leaveOut === 'rim sag' ? 0 : (set.sag ?? 0) * u.z,
      }
    }
    case 'face': {
      const sign = set.face === 'back' && leaveOut !== 'back face' ? -1 : 1
      const radius = leaveOut === 'face diameter' ? set.diameter : set.diameter / 2
      return {
        of: along(0, sign * radius),
        sag: leaveOut === 'face sag' ? 0 : (set.sag ?? 0) * u.z,
      }
    }
    case 'gap':
      return {
        of: along(0, leaveOut === 'gap sign' ? set.diameter / 2 : -set.diameter / 2),
        sag: 0,
      }
    case 'spool': {
      const span = c.right.plane - c.left.plane
      const r = set.diameter / 2
      const sag = leaveOut === 'spool sag' ? 0 : (set.sag ?? 0) * u.z
      if (set.end === 'left') {
        const part = leaveOut === 'spool left end' ? along(0, r) : along(r / span, r / 2)
        return { of: part, sag }
      }
      const part = leaveOut === 'spool right end' ? along(0, r) : along(-r / span, r / 2)
      return { of: part, sag }
    }
  }
}

function lineEquations(c: Coupling, set: Line, zeros: number, leaveOut: LeftOut): Equation[] {
  const own = leaveOut !== 'reading weights'
  const plain = leaveOut === 'default uncertainty' ? { reading: 1, slope: 1 } : usual
  const u = (own ? set.u : undefined) ?? plain.reading
  const uSlope = (own ? set.uSlope : undefined) ?? plain.slope
  const arm = leaveOut === 'line position' ? 0 : set.at - midSpan(c)
  const none = Array.from({ length: zeros }, () => 0)
  const equations: Equation[] = []
  const { offset, slope } = set
  if (offset?.y !== undefined) equations.push({ row: [1, 0, arm, 0, ...none], value: offset.y, u })
  if (offset?.z !== undefined) equations.push({ row: [0, 1, 0, arm, ...none], value: offset.z, u })
  if (slope?.y !== undefined)
    equations.push({ row: [0, 0, 1, 0, ...none], value: slope.y, u: uSlope })
  if (slope?.z !== undefined)
    equations.push({ row: [0, 0, 0, 1, ...none], value: slope.z, u: uSlope })
  return equations
}

/** The misalignment of one coupling (document in mm and um) from all its reading sets together. */
export function misalignment(c: Coupling, leaveOut?: LeftOut): Misalignment {
  const found = counted(c)
  const sweeps = found.filter((set): set is Sweep => set.kind !== 'line')
  const zeros = leaveOut === 'own zero of each sweep' ? Math.min(1, sweeps.length) : sweeps.length
  const equations: Equation[] = []
  let next = 0
  for (const set of found) {
    if (set.kind === 'line') {
      equations.push(...lineEquations(c, set, zeros, leaveOut))
      continue
    }
    const zero = zeros === sweeps.length ? next++ : 0
    const u = leaveOut === 'reading weights' ? usual.reading : (set.u ?? usual.reading)
    for (const [hour, value] of set.readings) {
      const { of, sag } = shown(c, set, hour, leaveOut)
      const zeroColumns = Array.from({ length: zeros }, (_, i) => (i === zero ? 1 : 0))
      equations.push({ row: [...of, ...zeroColumns], value: value - sag, u })
    }
  }
  const { unknowns, hold } = leastSquares(equations)
  const [oy = NaN, oz = NaN, sy = NaN, sz = NaN] = unknowns
  return { offset: { y: oy, z: oz }, slope: { y: sy, z: sz }, hold }
}
