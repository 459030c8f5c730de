import { type DocumentUnits, fineSign, massSign, slopeSign } from '../../mechanics/units'
import type { Path } from '../place'

/** What a number of the train file measures; decides its unit and how it converts. */
export type Quantity =
  'length' | 'fine' | 'slope' | 'temperature' | 'expansion' | 'mass' | 'speed' | 'hour' | 'plain'

/** Quantities by place, `*` for any one key; what is not listed is a plain number and keeps its value. */
const places: readonly (readonly [pattern: string, quantity: Quantity])[] = [
  ...['machines', 'skids'].flatMap((bodies): [string, Quantity][] => [
    [`${bodies}.*.base`, 'length'],
    [`${bodies}.*.axis.y`, 'length'],
    [`${bodies}.*.axis.z`, 'length'],
    [`${bodies}.*.axis.*.y`, 'length'],
    [`${bodies}.*.axis.*.z`, 'length'],
    [`${bodies}.*.speed`, 'speed'],
    [`${bodies}.*.effort`, 'fine'],
    [`${bodies}.*.tilt`, 'slope'],
    [`${bodies}.*.level`, 'slope'],
    [`${bodies}.*.mass`, 'mass'],
    [`${bodies}.*.jack`, 'mass'],
    [`${bodies}.*.feet.*.x`, 'length'],
    [`${bodies}.*.feet.*.y`, 'length'],
    [`${bodies}.*.feet.*.pack.*`, 'fine'],
    [`${bodies}.*.feet.*.lift`, 'fine'],
    [`${bodies}.*.feet.*.hole.*`, 'fine'],
    [`${bodies}.*.feet.*.soft`, 'fine'],
    [`${bodies}.*.feet.*.gaps.*`, 'fine'],
    [`${bodies}.*.restraints.*.x`, 'length'],
    [`${bodies}.*.restraints.*.y`, 'length'],
    [`${bodies}.*.restraints.*.z`, 'length'],
    [`${bodies}.*.restraints.*.axial.*`, 'fine'],
    [`${bodies}.*.restraints.*.side.*`, 'fine'],
    [`${bodies}.*.restraints.*.rise.*`, 'fine'],
    [`${bodies}.*.growth.*.*.at`, 'length'],
    [`${bodies}.*.growth.*.*.rise`, 'fine'],
    [`${bodies}.*.growth.*.*.side`, 'fine'],
    [`${bodies}.*.growth.*.*.axial`, 'fine'],
    [`${bodies}.*.growth.*.*.u`, 'fine'],
    [`${bodies}.*.growth.*.*.heat.height`, 'length'],
    [`${bodies}.*.growth.*.*.heat.expansion`, 'expansion'],
    [`${bodies}.*.growth.*.*.heat.from`, 'temperature'],
    [`${bodies}.*.growth.*.*.heat.to`, 'temperature'],
  ]),
  ['couplings.*.left.plane', 'length'],
  ['couplings.*.right.plane', 'length'],
  ['couplings.*.speed', 'speed'],
  ['couplings.*.tolerance.flex', 'slope'],
  ['couplings.*.tolerance.angle', 'slope'],
  ['couplings.*.tolerance.offset', 'fine'],
  ['couplings.*.aim.*.offset.*', 'fine'],
  ['couplings.*.aim.*.slope.*', 'slope'],
  ['couplings.*.setting.offset.*', 'fine'],
  ['couplings.*.setting.slope.*', 'slope'],
  ['couplings.*.axial.*', 'length'],
  ['couplings.*.strain.limit', 'fine'],
  ['couplings.*.strain.flanges.*.y', 'fine'],
  ['couplings.*.strain.flanges.*.z', 'fine'],
  ['couplings.*.found.*.at', 'length'],
  ['couplings.*.found.*.diameter', 'length'],
  ['couplings.*.found.*.sag', 'fine'],
  ['couplings.*.found.*.u', 'fine'],
  ['couplings.*.found.*.uSlope', 'slope'],
  ['couplings.*.found.*.offset.*', 'fine'],
  ['couplings.*.found.*.slope.*', 'slope'],
  ['couplings.*.found.*.readings.*.0', 'hour'],
  ['couplings.*.found.*.readings.*.1', 'fine'],
  ['plan.reserve', 'fine'],
  ['plan.leave', 'fine'],
  ['plan.stage', 'fine'],
  ['plan.shims.step', 'fine'],
  ['plan.shims.flat', 'fine'],
  ['plan.shims.stock.*', 'fine'],
  ['record.work.*.shim', 'fine'],
  ['record.work.*.side', 'fine'],
  ['record.work.*.axial', 'fine'],
  ['record.work.*.dial', 'fine'],
  ['record.again.*.readings.*.0', 'hour'],
  ['record.again.*.readings.*.1', 'fine'],
  ['record.again.*.offset.*', 'fine'],
  ['record.again.*.slope.*', 'slope'],
]

interface Branch {
  readonly next: Map<string, Branch>
  quantity?: Quantity
}
const root: Branch = { next: new Map() }
for (const [pattern, quantity] of places) {
  let branch = root
  for (const key of pattern.split('.')) {
    let next = branch.next.get(key)
    if (!next) branch.next.set(key, (next = { next: new Map() }))
    branch = next
  }
  branch.quantity = quantity
}

/** What the number at a path measures. */
export function quantityAt(path: Path): Quantity {
  const find = (branch: Branch, depth: number): Quantity | undefined => {
    if (depth === path.length) return branch.quantity
    const key = String(path[depth])
    for (const next of [branch.next.get(key), branch.next.get('*')]) {
      const found = next && find(next, depth + 1)
      if (found) return found
    }
    return undefined
  }
  return find(root, 0) ?? 'plain'
}

/** The sign of the unit in which a document writes a quantity; "" where it has none. */
export function unitSign(quantity: Quantity, units: DocumentUnits): string {
  switch (quantity) {
    case 'length':
      return units.length
    case 'fine':
      return fineSign[units.fine]
    case 'slope':
      return slopeSign(units)
    case 'temperature':
      return `°${units.temperature}`
    case 'expansion':
      return `1e-6/°${units.temperature}`
    case 'mass':
      return massSign[units.length]
    case 'speed':
      return 'rpm'
    case 'hour':
      return "o'clock"
    case 'plain':
      return ''
  }
}
