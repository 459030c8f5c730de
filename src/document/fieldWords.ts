import { footFieldList } from './footFields'
import type { Path } from './place'

/** What a field is called on the sheet, by the end of its path; the longest one that fits counts. */
const names: Readonly<Record<string, string>> = {
  ...Object.fromEntries(footFieldList.map(({ key, words, heading }) => [key, words ?? heading])),
  machines: 'the machines',
  skids: 'the skids',
  couplings: 'the couplings',
  states: 'the states',
  restraints: 'nozzles and other points',
  found: 'readings',
  'sides.three': "name of the 3 o'clock side",
  'sides.nine': "name of the 9 o'clock side",
  'clock.seenFrom': 'end from which clock faces are seen',
  // bodies
  role: 'role',
  speed: 'speed',
  base: 'height above the skid',
  axis: 'axis',
  'axis.z': 'height',
  'axis.y': 'y',
  'axis.left': 'left end',
  'axis.right': 'right end',
  'axis.left.z': 'height',
  'axis.right.z': 'height',
  anchored: 'why it is anchored',
  'free.axial': 'may move along',
  'free.roll': 'may roll',
  weight: 'weight in the cost',
  tilt: 'tilt at most',
  jack: 'what one jack carries',
  level: 'slope as found',
  carries: 'machines it carries',
  // points
  z: 'height',
  axial: 'along the train',
  side: 'sideways',
  rise: 'up and down',
  'growth.rise': 'rise',
  'growth.side': 'growth sideways',
  'growth.axial': 'growth along',
  'growth.source': 'where it comes from',
  'growth.use': 'whether it counts',
  'growth.when': 'date',
  'growth.by': 'who',
  'growth.why': 'note',
  at: 'place along the train',
  u: 'unsure by',
  uSlope: 'slope unsure by',
  uSag: 'sag unsure by',
  bracket: 'bracket',
  uAt: 'place unsure by',
  uDiameter: 'diameter unsure by',
  range: 'from low to high',
  'range.rise': 'rise, from low to high',
  'range.side': 'growth sideways, from low to high',
  'range.axial': 'growth along, from low to high',
  heat: 'from temperatures',
  'heat.height': 'height that warms',
  'heat.expansion': 'expansion',
  'heat.from': 'temperature shut down',
  'heat.to': 'temperature in this state',
  // couplings
  'left.plane': 'left plane',
  'right.plane': 'right plane',
  tolerance: 'tolerance',
  'tolerance.flex': 'angle at each plane',
  'tolerance.offset': 'offset, mid-span',
  'tolerance.angle': 'angle, over all',
  'tolerance.basis': 'basis',
  aim: 'aim',
  'offset.z': 'offset up',
  'offset.y': 'offset sideways',
  'slope.z': 'slope up',
  'slope.y': 'slope sideways',
  setting: "maker's cold setting",
  'setting.why': 'why it is used',
  'couplings.axial': 'axial gap',
  'axial.want': 'wanted',
  'axial.u': 'gap unsure by',
  'axial.tolerance': 'either way up to',
  'left.machine': 'machine at its left',
  'right.machine': 'machine at its right',
  strain: 'pipe strain',
  'strain.limit': 'most allowed',
  'flanges.z': 'movement up',
  'flanges.y': 'movement sideways',
  diameter: 'diameter of the circle',
  rides: 'shaft that the stem rides',
  // the plan
  'plan.share': 'most of each tolerance to use',
  'plan.reserve': 'room to keep between bolt and hole',
  'plan.leave': 'moves that are left alone',
  'plan.stage': 'one end lifted ahead of the other',
  'plan.guard': 'standard uncertainties kept free of every limit',
  'plan.worst': 'hold for every value of the intervals of growth',
  sure: 'how sure the work is',
  'sure.shim': 'shims unsure by',
  'sure.slide': 'slides unsure by',
  'sure.foot': 'places of feet unsure by',
  'sure.chance': 'chance wanted',
  'sure.draws': 'draws',
  'sure.seed': 'seed of the draws',
  'plan.slip': 'room over the packs to slip shims',
  'weights.shim': 'weight of shimming',
  'weights.side': 'weight of sliding',
  'weights.axial': 'weight of moving along',
  shims: 'shims in stock',
  'shims.step': 'packs go in steps of',
  'shims.most': 'most plates in a pack',
  'shims.flat': 'foot off its plane',
  'states.tolerance': 'times the tolerance',
  'states.load': 'load',
  'states.temperature': 'temperature',
  between: 'growth between two states',
  'between.from': 'state at one end',
  'between.to': 'state at the other end',
  'between.by': 'told by',
}

/** Groups that say nothing by themselves: the field in them names them. */
const silent = new Set([
  ...['free', 'pack', 'hole', 'offset', 'slope', 'weights', 'stock', 'units', 'clock', 'plan'],
  ...['left', 'right', 'sides', 'flanges'],
])

/**
 * The word for the last key of a path, as the sheet heads it; "" for groups that the key after them names.
 * States, which stand between growth or an aim and its figures, are no part of it.
 */
export function fieldWords(path: Path): string {
  const fields = path.filter(
    (key, i) => typeof key === 'string' && path[i - 1] !== 'growth' && path[i - 1] !== 'aim',
  )
  for (let length = Math.min(3, fields.length); length >= 1; length--) {
    const name = names[fields.slice(-length).join('.')]
    if (name !== undefined) return name
  }
  const last = String(fields.at(-1) ?? '')
  return silent.has(last) ? '' : last
}
