import { programUnit } from '../../lp/program'
import type { Train } from '../../../mechanics/train'
import { towardSide } from '../../../language/sides'
import { candidateOf, type Candidate, type RemedyContext, type Sized } from './candidate'
import { fieldAt } from './change'
import { amountsInWords, bodyAmount, fineStep, indexOf, nearbyBodies, stepsOf } from './sizes'

/** Most that a nozzle is let travel further (um). Common practice, no source. */
const mostTravel = 10_000

const ways = ['axial', 'side', 'rise'] as const
const wordsOf = (train: Train) => ({
  axial: ['toward the left end', 'toward the right end'] as const,
  side: [towardSide(train, -1), towardSide(train, 1)] as const,
  rise: ['downward', 'upward'] as const,
})

/** Nozzles that may be carried further than was allowed: piping eased, cut and refitted. */
export function restraintChoices(context: RemedyContext): Candidate[] {
  const { train, model, conflicts } = context
  const pressed = model.members.some(
    (member, index) => member.kind === 'restraint' && conflicts.some((set) => set.has(index)),
  )
  if (!pressed) return []
  return [
    candidateOf('restraint', {
      where: 'piping',
      sized: travels(context),
      agree: 'the piping engineer, flange by flange',
      lead: (amounts) => `Let piping follow further: ${amountsInWords(train, amounts)}.`,
    }),
  ]
}

function travels(context: RemedyContext): Sized[] {
  const { train, model, conflicts, document } = context
  const near = nearbyBodies(model, conflicts)
  const words = wordsOf(train)
  return train.bodies.flatMap((body, b) =>
    near.has(b)
      ? body.restraints.flatMap((restraint, r) =>
          ways.flatMap((way) => {
            const index = indexOf(model, { kind: 'restraint', body: b, restraint: r, way })
            const range = restraint[way]
            if (index === undefined || !range) return []
            return ([0, 1] as const).map((end): Sized => {
              const at = `${restraint.place}.${way}[${end}]`
              const sign = end === 0 ? -1 : 1
              return {
                give: {
                  name: `travel ${body.id} ${restraint.id} ${way} ${end}`,
                  least: 0,
                  most: mostTravel / programUnit,
                  price: 1,
                  onRow: ({ meaning, upper }) => {
                    const here =
                      meaning.fact === 'restraint' &&
                      meaning.body === b &&
                      meaning.restraint === r &&
                      meaning.way === way
                    return here && Number.isFinite(upper) === (end === 1) ? -sign : 0
                  },
                },
                members: [index],
                step: stepsOf(train).room,
                amount: (value) =>
                  bodyAmount(
                    body,
                    { restraint: restraint.id },
                    `${restraint.id} ${words[way][end]}`,
                    value * programUnit,
                  ),
                changes: (value) => [
                  {
                    at,
                    from: fieldAt(document, at),
                    to: fineStep(train, range[end] + sign * value * programUnit),
                  },
                ],
              }
            })
          }),
        )
      : [],
  )
}
