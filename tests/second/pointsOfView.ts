import { changed, type Sort } from './sorts'
import type { Coupling, Machine, Train } from './train'

/** What becomes of each sort of number when a train is written from another point of view. */
export interface Rewriting {
  /** Positions along and across. */
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  /** Sign of a displacement along and across. */
  readonly axial: 1 | -1
  readonly side: 1 | -1
  /** Signs of a misalignment's offset and slope, across and up. */
  readonly offset: { readonly y: 1 | -1; readonly z: 1 | -1 }
  readonly slope: { readonly y: 1 | -1; readonly z: 1 | -1 }
  readonly hour: (hour: number) => number
}

export const same: Rewriting = {
  x: (v) => v,
  y: (v) => v,
  axial: 1,
  side: 1,
  offset: { y: 1, z: 1 },
  slope: { y: 1, z: 1 },
  hour: (h) => h,
}

/** Times a sign, without a minus on a zero. */
const turn = (value: number, sign: 1 | -1): number => (sign === 1 ? value : 0 - value)

const otherSide = (key: string): string =>
  key === 'three' ? 'nine' : key === 'nine' ? 'three' : key

/** The same train with every number rewritten; its order and its ends stay. */
export function rewritten(train: Train, by: Rewriting): Train {
  const signs: Partial<Record<Sort, 1 | -1>> = {
    axial: by.axial,
    side: by.side,
    'axial range': by.axial,
    'axial length': by.axial,
    'axial length range': by.axial,
    'side range': by.side,
    'offset y': by.offset.y,
    'offset z': by.offset.z,
    'slope y': by.slope.y,
    'slope z': by.slope.z,
    pitch: by.axial,
  }
  return changed(train, {
    number: (value, sort) => {
      if (sort === 'corner') throw new Error('corner gaps would change places')
      return sort === 'x' ? by.x(value) : sort === 'y' ? by.y(value) : turn(value, signs[sort] ?? 1)
    },
    range: ([low, high], sort) =>
      signs[sort] === -1 ? [turn(high, -1), turn(low, -1)] : [low, high],
    readings: (list) => list.map(([hour, value]) => [by.hour(hour), value]),
    ...(by.side === -1 && { key: otherSide }),
  })
}

const other = (end: 'left' | 'right'): 'left' | 'right' => (end === 'left' ? 'right' : 'left')

/** The train in the order in which it is read from its other end; its numbers stay. */
export function fromOtherEnd(train: Train): Train {
  return {
    ...train,
    machines: train.machines.map(otherEnds).reverse(),
    couplings: train.couplings.map(otherSides).reverse(),
  }
}

function otherEnds(machine: Machine): Machine {
  const { axis, growth } = machine
  return {
    ...machine,
    axis: 'left' in axis ? { left: axis.right, right: axis.left } : axis,
    growth:
      growth &&
      Object.fromEntries(
        Object.entries(growth).map(([state, points]) => [
          state,
          points.map((p) => (p.axis ? { ...p, axis: other(p.axis) } : p)),
        ]),
      ),
  }
}

function otherSides(coupling: Coupling): Coupling {
  return {
    ...coupling,
    left: coupling.right,
    right: coupling.left,
    axial: coupling.axial && {
      ...coupling.axial,
      ...(coupling.axial.rotors && {
        rotors: { left: coupling.axial.rotors.right, right: coupling.axial.rotors.left },
      }),
    },
    found: coupling.found.map((set) => {
      if (set.kind === 'rim' || set.kind === 'face') return { ...set, rides: other(set.rides) }
      return set.kind === 'spool' ? { ...set, end: other(set.end) } : set
    }),
  }
}

/** Hours as a mirror shows them. */
export const mirroredHour = (hour: number): number => (hour === 12 ? 12 : 12 - hour)

/**
 * The same train seen from its other side: turned half round about the vertical. Offsets keep y and turn
 * z, slopes the other way round: left and right swap as y does.
 */
export const turned = (train: Train): Train =>
  fromOtherEnd(
    rewritten(train, {
      x: (v) => 0 - v,
      y: (v) => 0 - v,
      axial: -1,
      side: -1,
      offset: { y: 1, z: -1 },
      slope: { y: -1, z: 1 },
      hour: mirroredHour,
    }),
  )
