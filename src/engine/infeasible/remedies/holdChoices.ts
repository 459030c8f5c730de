import type { Body } from '../../../mechanics/train'
import { footLimitWords } from '../../../language/footLimitWords'
import { capital, inSentence, listed } from '../../../language/names'
import { candidateOf, type Candidate, type RemedyContext } from './candidate'
import { fieldAt, type FieldChange } from './change'

/** Most other bodies tried in place of a held one, the nearest first. */
const mostOthers = 12

/**
 * Other choices of held bodies, one change at a time: a body of a conflict released, or another held in
 * its place. A held body that is in no conflict keeps nothing from being planned.
 */
export function holdChoices(context: RemedyContext): Candidate[] {
  const { train, document } = context
  return heldInConflicts(context).flatMap(({ member, body: b }) => {
    const body = train.bodies[b]
    if (!body || body.anchored !== undefined) return []
    const letGo: FieldChange = {
      at: `${body.place}.held`,
      from: fieldAt(document, `${body.place}.held`),
      to: false,
    }
    const release = candidateOf(body.kind === 'skid' ? 'skid' : 'hold', {
      where: body.name,
      drops: [member],
      changes: [letGo],
      agree: agreeOf(body),
      lead: () =>
        body.kind === 'skid'
          ? `Let ${inSentence(body.name)} move, with everything on it.`
          : `Release ${inSentence(body.name)}.`,
    })
    if (body.kind === 'skid') return [release]
    const others = train.machines
      .map((other, index) => ({ other, index }))
      .filter(({ other, index }) => index !== b && !other.held)
      .sort((x, y) => Math.abs(x.index - b) - Math.abs(y.index - b) || x.index - y.index)
      .slice(0, mostOthers)
    return [
      release,
      ...others.map(({ other, index }) =>
        candidateOf('hold', {
          where: `${other.name} instead of ${body.name}`,
          drops: [member],
          stays: [index],
          changes: [
            letGo,
            {
              at: `${other.place}.held`,
              from: fieldAt(document, `${other.place}.held`),
              to: true,
            },
          ],
          agree: agreeOf(body),
          lead: () =>
            `${capital(`${inSentence(other.name)} fixed instead of ${inSentence(body.name)}`)}.`,
        }),
      ),
    ]
  })
}

function heldInConflicts({ model, conflicts }: RemedyContext): { member: number; body: number }[] {
  return model.members.flatMap((member, index) =>
    member.kind === 'held' && conflicts.some((set) => set.has(index))
      ? [{ member: index, body: member.body }]
      : [],
  )
}

const agreeOf = ({ name, restraints, kind }: Body): string =>
  [
    'the responsible engineer',
    ...(kind === 'skid' ? [`whoever plans the lift of ${name}`] : []),
    ...(restraints.length > 0 ? [`the piping engineer: pipe strain at ${name}`] : []),
  ].join('; ')

/** Dowels pulled: an anchored body let go, or the keyed feet of one set free. */
export function dowelChoices(context: RemedyContext): Candidate[] {
  const { train, document, model, conflicts } = context
  const anchored = heldInConflicts(context).flatMap(({ member, body: b }) => {
    const body = train.bodies[b]
    if (body?.anchored === undefined) return []
    const field = (name: string, to: FieldChange['to']): FieldChange => {
      const at = `${body.place}.${name}`
      return { at, from: fieldAt(document, at), to }
    }
    return [
      candidateOf('dowel', {
        where: body.name,
        drops: [member],
        changes: [field('anchored', null), field('held', false)],
        agree: `${agreeOf(body)}; the maker of ${body.name}`,
        lead: () => `Pull the dowels of ${inSentence(body.name)} (${body.anchored ?? ''}).`,
      }),
    ]
  })
  const keyed = train.bodies.flatMap((body, b) => {
    const keys = model.members.flatMap((member, index) =>
      member.kind === 'foot' &&
      member.body === b &&
      footLimitWords[member.limit].remedies.includes('dowel')
        ? [{ member, index }]
        : [],
    )
    if (!keys.some(({ index }) => conflicts.some((set) => set.has(index)))) return []
    const feet = [...new Set(keys.map(({ member }) => member.foot))]
    return [
      candidateOf('dowel', {
        where: body.name,
        drops: keys.map(({ index }) => index),
        changes: feet.map((f) => {
          const at = `${body.feet[f]?.place ?? ''}.free`
          return { at, from: fieldAt(document, at), to: null }
        }),
        agree: agreeOf(body),
        lead: () =>
          `Pull the dowels and keys at foot ${listed(feet.map((f) => body.feet[f]?.id ?? ''))} of ${inSentence(body.name)}.`,
      }),
    ]
  })
  return [...anchored, ...keyed]
}
