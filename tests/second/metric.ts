import { changed, type Sort } from './sorts'
import type { LeftOut } from './terms'
import { fineFactor, lengthFactor, type Train } from './train'

interface Scales {
  length: (value: number) => number
  fine: (value: number) => number
}

/** Which unit each sort of number is written in; a slope is the same number in every unit, and masses are left. */
const unitOf: Record<Exclude<Sort, 'readings'>, 'length' | 'fine' | 'same'> = {
  x: 'length',
  y: 'length',
  length: 'length',
  axial: 'fine',
  side: 'fine',
  'axial range': 'fine',
  'axial length': 'length',
  'axial length range': 'length',
  'length range': 'length',
  'side range': 'fine',
  fine: 'fine',
  'fine range': 'fine',
  'offset y': 'fine',
  'offset z': 'fine',
  'slope y': 'same',
  'slope z': 'same',
  angle: 'same',
  pitch: 'same',
  corner: 'fine',
  mass: 'same',
  torque: 'same',
  sliding: 'length',
  degrees: 'same',
  fixed: 'same',
}

/**
 * The same train with every length and every fine quantity converted. Milliradians and degrees
 * stay: an expansion is per degree as typed.
 */
export function converted(train: Train, by: Scales): Train {
  const scaled = (value: number, sort: Sort): number => {
    const unit = sort === 'readings' ? 'fine' : unitOf[sort]
    return unit === 'same' ? value : by[unit](value)
  }
  return changed(train, {
    number: scaled,
    range: ([low, high], sort) => [scaled(low, sort), scaled(high, sort)],
    readings: (list) => list.map(([hour, value]) => [hour, by.fine(value)]),
  })
}

/** The same train in millimetres (lengths) and micrometres (fine quantities). */
export function metric(train: Train, leaveOut?: LeftOut): Train {
  const length = lengthFactor(train, leaveOut)
  const fine = fineFactor(train, leaveOut)
  const inMetric = converted(train, { length: (v) => v * length, fine: (v) => v * fine })
  return { ...inMetric, units: { ...train.units, length: 'mm', fine: 'um' } }
}
