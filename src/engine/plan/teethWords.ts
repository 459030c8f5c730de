import { slopeText } from '../../language/amounts'
import { listed } from '../../language/names'
import { slidingText, toothPlaceName } from '../../language/toothWords'
import { angleAtSpeed } from '../../mechanics/misalignment/gearTeeth'
import type { Train } from '../../mechanics/train'
import type { Finding } from './answer'
import { waysOff } from './couplingWords'
import type { TeethAnswer, TeethFigures } from './teethAnswer'

/** A mesh by its coupling and state: "motor to gear (hot, left plane)". */
const meshName = (train: Train, { coupling: id, state: s, place }: TeethAnswer): string => {
  const coupling = train.couplings.find((one) => one.id === id)
  const state = train.states.find((one) => one.id === s)
  return `${coupling?.name ?? id} (${state?.name ?? s}, ${toothPlaceName(place)})`
}

/** The angle at a mesh with its side, how fast its teeth slide, and what of it is against what was asked. */
function toothFigures(
  train: Train,
  mesh: TeethAnswer,
  { angle, size, sliding, tooStraight, tooFast }: TeethFigures,
): string {
  const ways = waysOff(train, mesh.coupling, mesh.place, angle)
  const least = mesh.least === undefined ? '' : slopeText(mesh.least, train.units)
  const limit = mesh.limit === undefined ? '' : slidingText(mesh.limit, train.units)
  return [
    `${slopeText(size, train.units)}${ways === '' ? '' : `, ${ways}`}${tooStraight ? `, under the least of ${least}` : ''}`,
    ...(sliding === undefined
      ? []
      : [
          `teeth slide at most ${slidingText(sliding, train.units)}${tooFast ? `, over the limit of ${limit}` : ''}`,
        ]),
  ].join('; ')
}

/** One mesh in a sentence: planned where there is a plan, and as found where that differs in what is read. */
export function meshSaid(train: Train, mesh: TeethAnswer): string {
  const found = toothFigures(train, mesh, mesh.asFound)
  const planned = mesh.planned && toothFigures(train, mesh, mesh.planned)
  if (planned === undefined) return `${meshName(train, mesh)}: as found ${found}`
  if (planned === found) return `${meshName(train, mesh)}: as found and planned ${planned}`
  return `${meshName(train, mesh)}: planned ${planned}. As found ${found}`
}

/** What was asked of the teeth of a coupling, with where it comes from; empty where nothing was. */
export function teethAsked(train: Train, id: string): string {
  const gear = train.couplings.find((one) => one.id === id)?.gear
  if (!gear) return ''
  const { least, sliding, pitch, speed, basis } = gear
  const angle =
    sliding === undefined || pitch === undefined || speed === undefined
      ? ''
      : `, which is ${slopeText(angleAtSpeed(sliding, pitch, speed), train.units)} at each mesh`
  const parts = [
    ...(least === undefined
      ? []
      : [`at least ${slopeText(least, train.units)} at each mesh, so that lubricant is spread`]),
    ...(sliding === undefined
      ? []
      : [`teeth slide at most ${slidingText(sliding, train.units)}${angle}`]),
  ]
  if (parts.length === 0) return ''
  return `${parts.join('; ')}${basis === undefined ? '' : ` (${basis})`}`
}

/** Meshes that are not as asked, as found: what a plan, or the engineer, has to answer. */
export const teethFindings = (train: Train, teeth: readonly TeethAnswer[]): Finding[] =>
  teeth.flatMap((mesh) =>
    mesh.asFound.tooStraight || mesh.asFound.tooFast
      ? [
          {
            where: placeOf(train, mesh),
            what: `${meshName(train, mesh)}: as found ${toothFigures(train, mesh, mesh.asFound)}`,
          },
        ]
      : [],
  )

/** Meshes that a plan leaves other than asked. */
export const teethCautions = (train: Train, teeth: readonly TeethAnswer[]): Finding[] =>
  teeth.flatMap((mesh) => {
    const { planned } = mesh
    if (!planned?.tooStraight && !planned?.tooFast) return []
    const advice = planned.tooStraight
      ? 'no plan was found that keeps it off dead straight there: ask the maker whether its teeth bear that'
      : 'enter a smaller angle at each plane in its tolerance, and it is planned for'
    return [
      {
        where: placeOf(train, mesh),
        what: `${meshName(train, mesh)}: planned ${toothFigures(train, mesh, planned)}; ${advice}`,
      },
    ]
  })

const placeOf = (train: Train, { coupling }: TeethAnswer): string =>
  `${train.couplings.find(({ id }) => id === coupling)?.place ?? 'couplings'}.gear`

/** For which plans it is proven that none is cheaper, where gear couplings are to be kept off dead straight; else nothing. */
export function leastProven(train: Train, teeth: readonly TeethAnswer[] = []): string[] {
  const asked = teeth.filter(({ least }) => least !== undefined)
  if (asked.length === 0) return []
  const sided = asked.filter(({ side }) => side !== undefined)
  if (sided.length > 0)
    return [
      `Kept off dead straight on one side each: ${listed(sided.map((mesh) => meshName(train, mesh)))}. That no plan is cheaper is proven for these sides alone; the sides they lie on already and one side for the whole coupling were tried, and the cheapest was taken.`,
    ]
  if (asked.some(({ planned }) => planned?.tooStraight === true))
    return [
      'Not every gear coupling is kept off dead straight as asked: no side that was tried has a plan. The proof is of plans that do without it.',
    ]
  return [
    'Every gear coupling keeps its least angle, in a plan that was made without asking for it: no plan that keeps it is cheaper, on any side.',
  ]
}
