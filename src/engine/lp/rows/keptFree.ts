import { checksOf } from '../../../mechanics/misalignment/check'
import type { Train } from '../../../mechanics/train'
import { roomAlong, type KeptRoom, type KeptRooms } from '../../../mechanics/uncertainty/kept'
import { programUnit, type Circle, type Meaning, type Program, type Row } from '../program'

type Tolerance = Extract<Meaning, { fact: 'tolerance' }>

/** Rows and circles of a tolerance with room kept free of them; as they are where none is. */
export interface KeptFree {
  readonly row: (row: Row) => Row
  readonly circle: (circle: Circle) => Circle
}

/**
 * Takes the room that is kept free off the rows and circles of tolerances, or puts other room in place of what was
 * taken off before. Room does not grow with the share: n.v - share * limit <= -room.
 */
export const keptFree = (train: Train, kept: KeptRooms | undefined): KeptFree => ({
  row: (row) => {
    if (!kept || row.meaning.fact !== 'tolerance') return row
    const room = alongRow(train, row.meaning, kept)
    return { ...row, upper: row.upper + (row.kept ?? 0) - room, kept: room }
  },
  circle: (circle) => {
    if (!kept || circle.meaning.fact !== 'tolerance') return circle
    return { ...circle, kept: aroundOf(train, circle.meaning, kept) }
  },
})

/** The program with other room kept free. */
export function withKept(program: Program, train: Train, kept: KeptRooms): Program {
  const free = keptFree(train, kept)
  return {
    ...program,
    limits: program.limits.map((row) => free.row(row)),
    circles: program.circles.map((circle) => free.circle(circle)),
  }
}

/** In program units. */
function alongRow(train: Train, meaning: Tolerance, kept: KeptRooms): number {
  const { way, coupling, state } = meaning
  if (way === 'x') return (kept[coupling]?.[state]?.gap ?? 0) / programUnit
  return way === 'round' ? 0 : roomAlong(aroundOf(train, meaning, kept))[way]
}

/** The room of a check in program units, by the lever that makes a displacement of it. */
function aroundOf(train: Train, meaning: Tolerance, kept: KeptRooms): KeptRoom {
  const coupling = train.couplings[meaning.coupling]
  const i = coupling ? checksOf(coupling).findIndex(({ what }) => what === meaning.what) : -1
  const check = coupling && checksOf(coupling)[i]
  const room = kept[meaning.coupling]?.[meaning.state]?.checks[i]
  if (!check || !room) throw new RangeError(`nothing is known of what is kept at ${meaning.what}`)
  const by = check.lever / programUnit
  const { yy, yz, zz } = room.ellipse
  return {
    ellipse: { yy: by * by * yy, yz: by * by * yz, zz: by * by * zz },
    y: by * room.y,
    z: by * room.z,
  }
}
