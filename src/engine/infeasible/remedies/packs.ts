import { footLimitWords } from '../../../language/footLimitWords'
import { programUnit } from '../../lp/program'
import { candidateOf, type Candidate, type RemedyContext, type Sized } from './candidate'
import { fieldAt } from './change'
import { amountsInWords, bodyAmount, fineStep, indexOf, nearbyBodies, stepsOf } from './sizes'

/** Thinnest pack that a lower minimum may leave (um): never a bare foot. Common practice, no source. */
const thinnest = 50
/** Most that a foot or a pad is machined down (um). Common practice, no source. */
const mostMachined = 5000

/** More way down: a lower minimum of the packs, feet or pads machined down. */
export function packChoices(context: RemedyContext): Candidate[] {
  const { train, model, conflicts } = context
  const pressed = model.members.some(
    (member, index) =>
      member.kind === 'foot' &&
      footLimitWords[member.limit].remedies.includes('packs') &&
      conflicts.some((set) => set.has(index)),
  )
  if (!pressed) return []
  const lowered = loweredMinima(context)
  return [
    ...(lowered.length === 0
      ? []
      : [
          candidateOf('minimum pack', {
            where: 'minimum packs',
            sized: lowered,
            agree: 'the responsible engineer: a site rule gives way',
            lead: (amounts) =>
              `Allow packs to be thinner than their minimum by ${amountsInWords(train, amounts)}.`,
          }),
        ]),
    candidateOf('machine feet', {
      where: 'feet or pads',
      sized: machined(context),
      agree: 'the makers of the machines, the owner',
      lead: (amounts) => `Machine feet or their pads down: ${amountsInWords(train, amounts)}.`,
    }),
  ]
}

function packs({ train, model, conflicts }: RemedyContext) {
  const near = nearbyBodies(model, conflicts)
  return train.bodies.flatMap((body, b) =>
    near.has(b) && body.anchored === undefined
      ? body.feet.flatMap((foot, f) => {
          const limit = 'minimum pack'
          const member = indexOf(model, { kind: 'foot', body: b, foot: f, limit })
          return foot.pack && member !== undefined
            ? [{ body, b, foot, f, pack: foot.pack, member }]
            : []
        })
      : [],
  )
}

function loweredMinima(context: RemedyContext): Sized[] {
  const { train, document } = context
  return packs(context).flatMap(({ body, b, foot, f, pack, member }) => {
    const now = Math.min(pack.now, pack.min)
    if (now - thinnest <= 0) return []
    return [
      {
        give: {
          name: `thinner ${body.id} ${foot.id}`,
          least: 0,
          most: (now - thinnest) / programUnit,
          price: 1,
          onRow: ({ meaning, lower }) =>
            meaning.fact === 'pack' &&
            meaning.body === b &&
            meaning.foot === f &&
            Number.isFinite(lower)
              ? 1
              : 0,
        },
        members: [member],
        step: stepsOf(train).shim,
        // from the minimum that is entered, as people lower it, also where the pack is under it now
        amount: (value: number) =>
          bodyAmount(
            body,
            { foot: foot.id },
            `foot ${foot.id}`,
            value > 0 ? value * programUnit + (pack.min - now) : 0,
          ),
        changes: (value: number) => {
          const at = `${foot.place}.pack.min`
          return [
            { at, from: fieldAt(document, at), to: fineStep(train, now - value * programUnit) },
          ]
        },
      },
    ]
  })
}

/**
 * A foot or pad machined down by an amount stands on a pack as much thicker. Where the pack is under
 * its minimum now, that lack comes on top.
 */
function machined(context: RemedyContext): Sized[] {
  const { train, document } = context
  return packs(context).map(({ body, b, foot, f, pack, member }) => {
    const lack = Math.max(0, pack.min - pack.now)
    const cut = (value: number) => (value > 0 ? value * programUnit + lack : 0)
    return {
      give: {
        name: `lower ${body.id} ${foot.id}`,
        least: 0,
        most: mostMachined / programUnit,
        price: 1,
        // the thicker pack has as much less way up to its maximum
        onRow: ({ meaning }) =>
          meaning.fact === 'pack' && meaning.body === b && meaning.foot === f ? 1 : 0,
      },
      members: [member],
      step: stepsOf(train).room,
      before: lack / programUnit,
      amount: (value: number) => bodyAmount(body, { foot: foot.id }, `foot ${foot.id}`, cut(value)),
      changes: (value: number) => {
        const at = `${foot.place}.pack.now`
        return [{ at, from: fieldAt(document, at), to: fineStep(train, pack.now + cut(value)) }]
      },
    }
  })
}
