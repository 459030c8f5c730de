import { midSpan, shown } from '../reading'
import { counted, type Coupling, type Line, type Sweep } from '../train'
import { gains } from './fit'

const usual = { reading: 10, slope: 0.05 } // um, mrad: common practice, no source

/** One number that was read, with its equation for offset y, z, slope y, z and the zero of each sweep. */
interface Read {
  /** The set that it belongs to. */
  set: Sweep | Line
  /** The clock hour of a sweep's reading. */
  hour: number | undefined
  row: number[]
  value: number
  u: number
}

/** The four numbers of a line at mid-span: offset y, z (um), slope y, z (mrad). */
export type FourNumbers = [offsetY: number, offsetZ: number, slopeY: number, slopeZ: number]

/** All that was read of a coupling, and what each reading adds to the line found. */
export interface Fitted {
  reads: Read[]
  /** How the line found differs when the reads differ by so much. */
  answering: (changes: readonly number[]) => FourNumbers
  line: FourNumbers
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + v * (b[i] ?? 0), 0)

/** What a sweep of this line shows at an hour, apart from its zero: with the sag of its bracket. */
export function shows(c: Coupling, set: Sweep, hour: number, line: FourNumbers): number {
  const { of, sag } = shown(c, set, hour)
  return dot(of, line) + sag
}

function readsOf(c: Coupling): Read[] {
  const sets = counted(c)
  const sweeps = sets.filter((set) => set.kind !== 'line')
  const zeros = (own?: Sweep) => sweeps.map((sweep) => (sweep === own ? 1 : 0))
  return sets.flatMap((set): Read[] => {
    if (set.kind === 'line') return lineReads(c, set, zeros())
    return set.readings.map(([hour, value]) => {
      const { of, sag } = shown(c, set, hour)
      const row = [...of, ...zeros(set)]
      return { set, hour, row, value: value - sag, u: set.u ?? usual.reading }
    })
  })
}

function lineReads(c: Coupling, set: Line, zeros: number[]): Read[] {
  const arm = set.at - midSpan(c)
  const { offset = {}, slope = {} } = set
  const offsets = { u: set.u ?? usual.reading, set, hour: undefined }
  const slopes = { u: set.uSlope ?? usual.slope, set, hour: undefined }
  return [
    { ...offsets, row: [1, 0, arm, 0, ...zeros], value: offset.y },
    { ...offsets, row: [0, 1, 0, arm, ...zeros], value: offset.z },
    { ...slopes, row: [0, 0, 1, 0, ...zeros], value: slope.y },
    { ...slopes, row: [0, 0, 0, 1, ...zeros], value: slope.z },
  ].flatMap((read) => (read.value === undefined ? [] : [{ ...read, value: read.value }]))
}

/** The line of a coupling as found (a train in mm and um), by normal equations. */
export function fitted(c: Coupling): Fitted {
  const reads = readsOf(c)
  const gain = gains(reads)
  const answering = (changes: readonly number[]): FourNumbers => {
    const [oy = NaN, oz = NaN, sy = NaN, sz = NaN] = gain.map((row) => dot(row, changes))
    return [oy, oz, sy, sz]
  }
  return { reads, answering, line: answering(reads.map(({ value }) => value)) }
}
