import { footLimitWords } from '../../../language/footLimitWords'
import { programUnit, type Circle } from '../../lp/program'
import { tidy } from '../../../language/tidy'
import { toFine } from '../../../mechanics/units'
import { candidateOf, type Candidate, type RemedyContext, type Sized } from './candidate'
import { fieldAt } from './change'
import { amountsInWords, bodyAmount, fineStep, indexOf, nearbyBodies, stepsOf } from './sizes'

/** Most that a shank is turned down and a hole is opened, as room each way (um). Common practice, no source. */
const mostRoom = { shank: 1500, 'open hole': 2000 } as const

/** More room between bolt and hole: bolts re-centred, shanks reduced, holes opened. */
export function roomChoices(context: RemedyContext): Candidate[] {
  const { train, model, conflicts } = context
  const pressed = model.members.some(
    (member, index) =>
      member.kind === 'foot' &&
      footLimitWords[member.limit].remedies.includes('rooms') &&
      conflicts.some((set) => set.has(index)),
  )
  if (!pressed) return []
  const centred = centringsOf(context)
  const names = (sized: readonly Sized[]) =>
    [...new Set(sized.map(({ give }) => give.name))].join(', ')
  return [
    ...(centred.length === 0
      ? []
      : [
          candidateOf('re-centre', {
            where: names(centred),
            sized: centred,
            agree: 'the craft lead, once it is known why the bolts lean',
            lead: (amounts) => `Re-centre bolts in their holes: ${amountsInWords(train, amounts)}.`,
          }),
        ]),
    candidateOf('shank', {
      where: 'bolts',
      sized: widened(context, mostRoom.shank),
      agree: 'the maker of the bolts, or whoever answers for their strength',
      lead: (amounts) =>
        `Reduce the shanks of bolts, for more room each way (twice that off the diameter): ${amountsInWords(train, amounts)}.`,
    }),
    candidateOf('open hole', {
      where: 'holes',
      sized: widened(context, mostRoom['open hole']),
      agree: 'the makers of the machines; the responsible engineer',
      lead: (amounts) =>
        `Open holes, for more room each way (twice that on the diameter): ${amountsInWords(train, amounts)}.`,
    }),
  ]
}

function holes({ train, model, conflicts }: RemedyContext) {
  const near = nearbyBodies(model, conflicts)
  return train.bodies.flatMap((body, b) =>
    near.has(b) && body.anchored === undefined
      ? body.feet.flatMap((foot, f) => {
          const member = indexOf(model, { kind: 'foot', body: b, foot: f, limit: 'hole' })
          if (!foot.hole || member === undefined) return []
          const circle = model.ofCircle.indexOf(member)
          return [{ body, foot, hole: foot.hole, member, circle }]
        })
      : [],
  )
}

function widened(context: RemedyContext, most: number): Sized[] {
  const { train, document } = context
  const { reserve } = train.plan
  return holes(context).flatMap(({ body, foot, hole, member, circle }): Sized[] => {
    // a bolt beyond its room already: what it lacks comes on top
    const lack = Math.max(0, Math.hypot(hole.x, hole.y) - (hole.clearance / 2 - reserve))
    const room = (value: number) => (value > 0 ? value * programUnit + lack : 0)
    if (lack >= most) return []
    return [
      {
        give: {
          name: `room ${body.id} ${foot.id}`,
          least: 0,
          most: (most - lack) / programUnit,
          price: 1,
          onCircle: (_: Circle, index: number) => (index === circle ? { radius: 1 } : {}),
        },
        members: [member],
        step: stepsOf(train).room,
        before: lack / programUnit,
        amount: (value: number) =>
          bodyAmount(body, { foot: foot.id }, `foot ${foot.id}`, room(value)),
        changes: (value: number) => {
          const at = `${foot.place}.hole.clearance`
          return [
            {
              at,
              from: fieldAt(document, at),
              to: fineStep(train, hole.clearance + 2 * room(value)),
            },
          ]
        },
      },
    ]
  })
}

/** The hole's centre brought toward the bolt, along the line between them. */
function centringsOf(context: RemedyContext): Sized[] {
  const { train, document } = context
  return holes(context).flatMap(({ body, foot, hole, member, circle }) => {
    const off = Math.hypot(hole.x, hole.y)
    if (off < 1) return []
    const left = (value: number) => 1 - Math.min(1, (value * programUnit) / off)
    const way = (axis: 'x' | 'y', value: number) => {
      const at = `${foot.place}.hole.${axis}`
      return {
        at,
        from: fieldAt(document, at),
        to: tidy(toFine(hole[axis] * left(value), train.units)),
      }
    }
    return [
      {
        give: {
          name: body.name,
          least: 0,
          most: off / programUnit,
          price: 1,
          onCircle: (_, index) => (index === circle ? { u: -hole.x / off, w: -hole.y / off } : {}),
        },
        members: [member],
        step: stepsOf(train).room,
        amount: (value) =>
          bodyAmount(body, { foot: foot.id }, `foot ${foot.id}`, value * programUnit),
        changes: (value) => [way('x', value), way('y', value)],
      },
    ]
  })
}
