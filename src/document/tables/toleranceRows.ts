import { tidy } from '../../language/tidy'
import { micrometresPer, type DocumentUnits } from '../../mechanics/units'
import { digitsSaid } from '../said'
import type { ToleranceCatalogue } from '../catalogues'

/** A published tolerance as it would be written into a coupling, in the document's units. */
export interface ToleranceRow {
  readonly id: string
  /** What the row is, for choosing: source and the speed it is printed for. */
  readonly name: string
  /** What is written: flex and angle in mrad, offset in the fine unit. */
  readonly flex?: number
  readonly offset?: number
  readonly angle?: number
  /** What stands as the basis: source, what was taken from it, how surely it is known. */
  readonly basis: string
  readonly note?: string
}

/** What decides which rows fit: two planes or one, how fast it turns, how thick the shaft is. */
export interface ToleranceQuery {
  readonly planes: 1 | 2
  /** rpm */
  readonly speed?: number
  /** in; for tables by surface speed. */
  readonly shaftDiameter?: number
}

type Unsure = { readonly source: string; readonly certainty: string }
const milsToFine = (mils: number, units: DocumentUnits): number =>
  tidy((mils * micrometresPer.mil) / micrometresPer[units.fine])
const basisOf = ({ source, certainty }: Unsure, what: string): string =>
  `${source}: ${what} (${certainty})`

/** Slowest printed speed that is not below the coupling's: the stricter of the two rows around it. */
function rowFor<T extends { readonly rpm: number }>(
  rows: readonly T[],
  speed: number,
): T | undefined {
  return rows
    .filter(({ rpm }) => rpm >= speed)
    .reduce<T | undefined>((a, b) => (a === undefined || b.rpm < a.rpm ? b : a), undefined)
}

/** Every published row that fits a coupling, strictest use of its source first in its own order. */
export function toleranceRows(
  catalogue: ToleranceCatalogue,
  facts: ToleranceQuery,
  units: DocumentUnits,
): ToleranceRow[] {
  return [
    ...(facts.planes === 2 ? flexRows(catalogue) : []),
    ...speedRows(catalogue, facts, units),
    ...surfaceRows(catalogue, facts, units),
    ...offsetRows(catalogue, facts, units),
  ]
}

/** Angles at each flex plane that hold at any speed. */
const flexRows = ({ flexPlane }: ToleranceCatalogue): ToleranceRow[] =>
  flexPlane.flatMap((row, i) =>
    row.unit !== 'mrad'
      ? []
      : [
          {
            id: `flex ${i}`,
            name: `${row.source}: ${row.most} mrad at each plane, any speed`,
            flex: row.most,
            basis: basisOf(row, `${row.most} mrad at each flex plane`),
            ...(row.note !== undefined && { note: row.note }),
          },
        ],
  )

/** Offset and angle of short couplings by speed; of spacers the offset per length, an angle at each plane. */
function speedRows(
  { bySpeed }: ToleranceCatalogue,
  { planes, speed }: ToleranceQuery,
  units: DocumentUnits,
): ToleranceRow[] {
  if (speed === undefined) return []
  const row = rowFor(
    bySpeed.rows.filter((one) => planes === 2 || one.shortOffset !== undefined),
    speed,
  )
  if (!row) return []
  const { shortOffset, shortAngle, spacerOffsetPerLength: flex } = row
  const printed = `printed for ${row.rpm} rpm`
  if (planes === 2 && flex !== undefined)
    return [
      {
        id: 'spacer by speed',
        name: `${row.source}: spacer ${flex} mil per inch, ${printed}`,
        flex,
        basis: basisOf(
          row,
          `${flex} mil of offset per inch of spacer, ${printed}, kept at each flex plane`,
        ),
      },
    ]
  if (planes !== 1 || shortOffset === undefined || shortAngle === undefined) return []
  return [
    {
      id: 'short by speed',
      name: `${row.source}: short coupling ${shortOffset} mil and ${shortAngle} mil/in, ${printed}`,
      offset: milsToFine(shortOffset, units),
      angle: shortAngle,
      basis: basisOf(
        row,
        `short coupling, ${shortOffset} mil offset and ${shortAngle} mil/in angle, ${printed}`,
      ),
    },
  ]
}

/**
 * Gear couplings by surface speed, pi x diameter (in) x rpm / 12; the upper row on a boundary. The rim
 * reading is total, so that the offset is half; inches per inch of radius are radians.
 */
function surfaceRows(
  { gearCouplingsBySurfaceSpeed }: ToleranceCatalogue,
  { speed, shaftDiameter }: ToleranceQuery,
  units: DocumentUnits,
): ToleranceRow[] {
  if (speed === undefined || shaftDiameter === undefined) return []
  const surface = surfaceSpeed(shaftDiameter, speed)
  const row = gearCouplingsBySurfaceSpeed.rows
    .filter(({ from }) => surface >= from)
    .reduce<ToleranceCatalogue['gearCouplingsBySurfaceSpeed']['rows'][number] | undefined>(
      (a, b) => (a === undefined || b.from > a.from ? b : a),
      undefined,
    )
  if (!row) return []
  const total = tidy(row.rimReading * 1000)
  const angle = tidy(row.facePerRadius * 1000)
  const speeds =
    row.below === undefined ? `${row.from} ft/min and more` : `${row.from} to ${row.below} ft/min`
  return [
    {
      id: 'gear coupling by surface speed',
      name: `${row.source}: gear coupling, ${total} mil total on the rim and ${angle} mil/in, ${speeds}`,
      offset: milsToFine(total / 2, units),
      angle,
      basis: basisOf(
        row,
        `gear coupling at ${digitsSaid(Math.round(surface))} ft/min, ${total} mil total on the rim, half of it taken as offset at mid-span, ${angle} mil/in on the face`,
      ),
    },
  ]
}

/** Speed of a shaft's surface (ft/min): pi times the diameter (in), by 12, times turns a minute. */
export const surfaceSpeed = (diameter: number, rpm: number): number =>
  (Math.PI * diameter * rpm) / 12

/** Offsets alone, for short couplings: by speed where printed by speed, else as they stand. */
function offsetRows(
  { offsets }: ToleranceCatalogue,
  { planes, speed }: ToleranceQuery,
  units: DocumentUnits,
): ToleranceRow[] {
  if (planes !== 1) return []
  const bySpeed = offsets.flatMap((row) =>
    row.rpm === undefined ? [] : [{ ...row, rpm: row.rpm }],
  )
  const fast = speed === undefined ? undefined : rowFor(bySpeed, speed)
  const always = offsets.filter(
    ({ rpm, what }) => rpm === undefined && !/axial|foot plane/.test(what),
  )
  return [...(fast ? [fast] : []), ...always].flatMap((row) => {
    const mils = milsOf(row.from ?? row.most, row.unit)
    if (mils === undefined) return []
    const total = row.unit.includes('total')
    const printed = row.from === undefined ? `${row.most}` : `${row.from} to ${row.most}`
    const taken = total
      ? ', half of it taken'
      : row.from === undefined
        ? ''
        : ', the lower end taken'
    const what = `${row.what}, ${printed} ${row.unit}${taken}; no angle`
    return [
      {
        id: row.what,
        name: `${row.source}: ${row.what}, ${printed} ${row.unit}`,
        offset: milsToFine(total ? mils / 2 : mils, units),
        basis: basisOf(row, what),
        ...(row.note !== undefined && { note: row.note }),
      },
    ]
  })
}

const milsOf = (value: number, unit: string): number | undefined => {
  if (unit === 'mm') return (value * micrometresPer.mm) / micrometresPer.mil
  return unit.startsWith('mil') ? value : undefined
}
