import { growthAt } from '../growth'
import { midSpan } from '../reading'
import { statesOf, type Train } from '../train'
import { standings, still, type Motion, type Standing } from './bodies'
import { carriage } from './carriage'
import { foundLines } from './found'
import { parts, placeOf, shaftEnds, type Joint, type Part } from './joints'

const reach = 500 // mm: a straight line's slope is the same from any two points

/** What a coupling shows in each state with nothing moved: as found, with growth, less what is aimed for. */
export function asFoundNumbers(train: Train, joints: readonly Joint[]): Float64Array {
  const lines = foundLines(train)
  const numbers = new Float64Array(joints.length * parts.length)
  for (const joint of joints) {
    const { c, state } = joint
    const add = (part: Part, value: number) => {
      const place = placeOf(joint, part)
      numbers[place] = (numbers[place] ?? 0) + value
    }
    lines.line(c).forEach((value, k) => {
      const part = parts[k]
      if (part) add(part, value)
    })
    if (c.axial) add('gap', (c.axial.found - c.axial.want) * 1000)
    const setting = c.setting?.use === true ? c.setting : undefined
    const aim = setting ?? c.aim?.[state.id]
    add('y', -(aim?.offset?.y ?? 0))
    add('z', -(aim?.offset?.z ?? 0))
    add('slopeY', -(aim?.slope?.y ?? 0))
    add('slopeZ', -(aim?.slope?.z ?? 0))
    const m = midSpan(c)
    for (const { machine, axis, plane, sign } of shaftEnds(joint)) {
      const grown = (x: number) => growthAt(statesOf(train), machine, axis, state.id, x)
      add('gap', sign * grown(plane).x)
      if (setting) continue
      const [before, here, after] = [grown(m - reach), grown(m), grown(m + reach)]
      add('y', sign * here.y)
      add('z', sign * here.z)
      add('slopeY', (sign * (after.y - before.y)) / (2 * reach))
      add('slopeZ', (sign * (after.z - before.z)) / (2 * reach))
    }
  }
  return numbers
}

/** The own motion of each body in um and mrad, by the body as it stands. */
export function motionsOf(
  train: Train,
  motions: Readonly<Record<string, Motion>>,
  fine: number,
): Map<Standing, Motion> {
  return new Map(
    standings(train).map((standing) => {
      const { tx, ty, tz, sy, sz, roll } = motions[standing.body.id] ?? still
      return [standing, { tx: tx * fine, ty: ty * fine, tz: tz * fine, sy, sz, roll }]
    }),
  )
}

/** The same with the plan carried out to the letter. */
export function plannedNumbers(
  joints: readonly Joint[],
  found: Float64Array,
  motions: ReadonlyMap<Standing, Motion>,
): Float64Array {
  const numbers = found.slice()
  for (const [standing, motion] of motions)
    for (const { to, by } of carriage(joints, standing, motion))
      numbers[to] = (numbers[to] ?? 0) + by
  return numbers
}
