import type { Reading, Room, Train } from './train'

/**
 * Every number of the train file by its place: its unit, and what becomes of it when the train is seen
 * from somewhere else. The one such table of the tests; a number of `train.ts` that is missing here fails
 * the type check.
 */
export type Sort =
  /** Positions along and across, heights and other lengths. */
  | 'x'
  | 'y'
  | 'length'
  /** Displacements toward the right end and toward 3 o'clock; ranges of them, from low to high. */
  | 'axial'
  | 'side'
  | 'axial range'
  /** The same in the unit of lengths. */
  | 'axial length'
  | 'axial length range'
  | 'length range'
  | 'side range'
  /** Fine quantities that no point of view changes, and ranges of them. */
  | 'fine'
  | 'fine range'
  /** A misalignment: offsets and slopes of the right axis against the left one. */
  | 'offset y'
  | 'offset z'
  | 'slope y'
  | 'slope z'
  /** Limits of slopes, and the slope of a body as found, + rising to the right. */
  | 'angle'
  | 'pitch'
  /** What a dial showed, by the hour. */
  | 'readings'
  /** Gaps under the corners of a foot, which no point of view here knows how to put in order. */
  | 'corner'
  | 'mass'
  | 'torque'
  | 'sliding'
  | 'degrees'
  /** The same in every unit and from everywhere. */
  | 'fixed'

type Leaf = number | Room | Reading[]
type Below<K extends string, V> = V extends Leaf
  ? K
  : V extends string | boolean
    ? never
    : V extends readonly number[]
      ? `${K}.*`
      : V extends readonly (infer E)[]
        ? `${K}.*.${NumberPath<E>}`
        : string extends keyof V
          ? Below<`${K}.*`, NonNullable<V[keyof V]>>
          : `${K}.${NumberPath<V>}`
/** Places of all numbers below a type, `*` for any index or key. */
type NumberPath<T> = T extends object
  ? { [K in keyof T & string]-?: Below<K, NonNullable<T[K]>> }[keyof T & string]
  : never

type BodyPath = NumberPath<Omit<NonNullable<Train['skids']>[number], 'carries'>>

const body: Record<BodyPath, Sort> = {
  weight: 'fixed',
  tilt: 'angle',
  'feet.*.x': 'x',
  'feet.*.y': 'y',
  'feet.*.pack.now': 'fine',
  'feet.*.pack.min': 'fine',
  'feet.*.pack.max': 'fine',
  'feet.*.pack.plates.*': 'fine',
  'feet.*.lift': 'fine',
  'feet.*.hole.clearance': 'fine',
  'feet.*.hole.x': 'axial',
  'feet.*.hole.y': 'side',
  'feet.*.hole.u': 'fine',
  'restraints.*.x': 'x',
  'restraints.*.y': 'y',
  'restraints.*.z': 'length',
  'restraints.*.axial': 'axial range',
  'restraints.*.side': 'side range',
  'restraints.*.rise': 'fine range',
}

const machine: Record<Exclude<NumberPath<Train['machines'][number]>, BodyPath>, Sort> = {
  base: 'length',
  'axis.y': 'y',
  'axis.z': 'length',
  'axis.left.y': 'y',
  'axis.left.z': 'length',
  'axis.right.y': 'y',
  'axis.right.z': 'length',
  'growth.*.*.at': 'x',
  'growth.*.*.rise': 'fine',
  'growth.*.*.side': 'side',
  'growth.*.*.axial': 'axial',
  'growth.*.*.u': 'fine',
  'growth.*.*.range.rise': 'fine range',
  'growth.*.*.range.side': 'side range',
  'growth.*.*.range.axial': 'axial range',
  'growth.*.*.heat.height': 'length',
  'growth.*.*.heat.expansion': 'degrees',
  'growth.*.*.heat.from': 'degrees',
  'growth.*.*.heat.to': 'degrees',
}

const coupling: Record<NumberPath<Train['couplings'][number]>, Sort> = {
  'left.plane': 'x',
  'right.plane': 'x',
  'tolerance.flex': 'angle',
  'tolerance.offset': 'fine',
  'tolerance.angle': 'angle',
  'aim.*.offset.y': 'offset y',
  'aim.*.offset.z': 'offset z',
  'aim.*.slope.y': 'slope y',
  'aim.*.slope.z': 'slope z',
  'setting.offset.y': 'offset y',
  'setting.offset.z': 'offset z',
  'setting.slope.y': 'slope y',
  'setting.slope.z': 'slope z',
  'axial.found': 'length',
  'axial.want': 'length',
  'axial.tolerance': 'length',
  'axial.u': 'length',
  'axial.stretch': 'length range',
  'axial.rotors.left.centre': 'axial length',
  'axial.rotors.left.float': 'axial length range',
  'axial.rotors.right.centre': 'axial length',
  'axial.rotors.right.float': 'axial length range',
  speed: 'fixed',
  'runOut.left.rim': 'fine',
  'runOut.left.face': 'fine',
  'runOut.right.rim': 'fine',
  'runOut.right.face': 'fine',
  'runOut.limit': 'fine',
  'gear.pitch': 'length',
  'gear.least': 'angle',
  'gear.sliding': 'sliding',
  'found.*.at': 'x',
  'found.*.diameter': 'length',
  'found.*.sag': 'fine',
  'found.*.uSag': 'fine',
  'found.*.uAt': 'length',
  'found.*.uDiameter': 'length',
  'found.*.u': 'fine',
  'found.*.uSlope': 'angle',
  'found.*.readings': 'readings',
  'found.*.offset.y': 'offset y',
  'found.*.offset.z': 'offset z',
  'found.*.slope.y': 'slope y',
  'found.*.slope.z': 'slope z',
}

const rest: Record<NumberPath<Omit<Train, 'machines' | 'skids' | 'couplings'>>, Sort> = {
  version: 'fixed',
  'surveys.*.u': 'fine',
  'surveys.*.points.*.x': 'x',
  'surveys.*.points.*.z': 'fine',
  'surveys.*.points.*.y': 'side',
  'surveys.*.points.*.u': 'fine',
  'states.*.tolerance': 'fixed',
  'states.*.load': 'fixed',
  'states.*.temperature': 'degrees',
  'plan.share': 'fixed',
  'plan.weights.shim': 'fixed',
  'plan.weights.side': 'fixed',
  'plan.weights.axial': 'fixed',
  'plan.reserve': 'fine',
  'plan.slip': 'fine',
  'plan.guard': 'fixed',
  'plan.sure.shim': 'fine',
  'plan.sure.slide': 'fine',
  'plan.sure.foot': 'length',
  'plan.sure.chance': 'fixed',
  'plan.sure.draws': 'fixed',
  'plan.sure.seed': 'fixed',
}

/** Numbers of the file that the second builder does not need, but other tests convert and turn. */
const bodyToo: Readonly<Record<string, Sort>> = {
  effort: 'fine',
  mass: 'mass',
  jack: 'mass',
  level: 'pitch',
  'pins.*.effort': 'fine',
  'stator.airGaps.*.at': 'x',
  'stator.airGaps.*.top': 'fine',
  'stator.airGaps.*.three': 'fine',
  'stator.airGaps.*.bottom': 'fine',
  'stator.airGaps.*.nine': 'fine',
  'stator.feet.*.x': 'x',
  'stator.aim.y': 'side',
  'stator.aim.z': 'fine',
  'stator.limit': 'fixed',
  speed: 'fixed',
  'feet.*.soft': 'fine',
  'feet.*.soleplate': 'fine',
  'feet.*.gaps.*': 'corner',
  'feet.*.torque.value': 'torque',
}
const restToo: Readonly<Record<string, Sort>> = {
  checkEvery: 'fixed',
  'couplings.*.strain.limit': 'fine',
  'couplings.*.strain.flanges.*.y': 'side',
  'couplings.*.strain.flanges.*.z': 'fine',
  'hotChecks.*.couplings.*.decay.time': 'fixed',
  'hotChecks.*.couplings.*.decay.u': 'fixed',
  'hotChecks.*.couplings.*.times.*.after': 'fixed',
  ...Object.fromEntries(
    Object.entries(coupling)
      .filter(([path]) => path.startsWith('found.'))
      .map(([path, sort]) => [`hotChecks.*.couplings.*.times.*.${path}`, sort]),
  ),
  'outages.*.couplings.*.planes.*': 'x',
  ...Object.fromEntries(
    ['found', 'left'].flatMap((time) =>
      Object.entries(coupling)
        .filter(([path]) => path.startsWith('found.'))
        .map(([path, sort]) => [`outages.*.couplings.*.${path.replace('found', time)}`, sort]),
    ),
  ),
  'hotChecks.*.moved.*.points.*.at': 'x',
  'hotChecks.*.moved.*.points.*.rise': 'fine',
  'hotChecks.*.moved.*.points.*.side': 'side',
  'hotChecks.*.moved.*.points.*.u': 'fine',
  'plan.leave': 'fine',
  'plan.stage': 'fine',
  'plan.shims.step': 'fine',
  'plan.shims.stock.*': 'fine',
  'plan.shims.most': 'fixed',
  'plan.shims.flat': 'fine',
  'record.work.*.shim': 'fine',
  'record.work.*.side': 'side',
  'record.work.*.axial': 'axial',
  'record.work.*.dial': 'fine',
  'record.work.*.stays.*.shows': 'fine',
  // in the unit of its place: what switches units does that
  'record.sure.*.value': 'fixed',
  'record.gaps.*.gap': 'length',
  'record.again.*.set': 'fixed',
  'record.again.*.readings': 'readings',
  'record.again.*.offset.y': 'offset y',
  'record.again.*.offset.z': 'offset z',
  'record.again.*.slope.y': 'slope y',
  'record.again.*.slope.z': 'slope z',
}

const under = (top: string, table: Readonly<Record<string, Sort>>) =>
  Object.entries(table).map(([path, sort]): [string, Sort] => [`${top}.*.${path}`, sort])
export const sorts: ReadonlyMap<string, Sort> = new Map<string, Sort>([
  ...Object.entries({ ...rest, ...restToo }),
  ...under('machines', { ...body, ...machine, ...bodyToo }),
  ...under('skids', { ...body, ...bodyToo }),
  ...under('couplings', coupling),
])

/** What becomes of each sort of number; readings and ranges are handed over whole. */
export interface Change {
  readonly number: (value: number, sort: Sort) => number
  readonly range: (range: Room, sort: Sort) => Room
  readonly readings: (readings: Reading[]) => Reading[]
  /** What a key is called afterwards, where it names a side. */
  readonly key?: (key: string) => string
}

/** A copy of a train with its numbers changed; what the table does not name has none. */
export function changed(train: Train, change: Change): Train {
  const walk = (node: unknown, path: string): unknown => {
    const sort = sorts.get(path)
    if (typeof node === 'number') {
      if (!sort) throw new Error(`${path} has no sort: add it to sorts.ts`)
      return sort === 'fixed' ? node : change.number(node, sort)
    }
    if (sort === 'readings') return change.readings(node as Reading[])
    if (sort?.endsWith('range') && node !== undefined) return change.range(node as Room, sort)
    if (typeof node !== 'object' || node === null) return node
    const below = (key: string) => (path === '' ? key : `${path}.${key}`)
    if (Array.isArray(node)) return node.map((item) => walk(item, below('*')))
    return Object.fromEntries(
      Object.entries(node).map(([key, value]) => {
        const here = below(key)
        return [change.key?.(key) ?? key, walk(value, keyed.has(path) ? below('*') : here)]
      }),
    )
  }
  return walk(train, '') as Train
}

/** Records by state. */
const keyed = new Set(['machines.*.growth', 'couplings.*.aim'])
