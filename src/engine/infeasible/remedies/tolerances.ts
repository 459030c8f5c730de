import type { Coupling } from '../../../mechanics/train'
import { tidy } from '../../../language/tidy'
import { shareColumn, type Circle, type Meaning, type Row } from '../../lp/program'
import type { Relaxation } from '../elastic/relaxation'
import { listed } from '../../../language/names'
import { candidateOf, type Candidate, type RemedyContext } from './candidate'
import { fieldAt, type FieldChange } from './change'
import { everyState, stateLimits, upTo } from './toleranceWords'

/** Tolerances are widened in steps of this part of what they are. */
const partStep = 0.01
/** At most to twice what they are: beyond, it is another coupling that is wanted. */
const mostPart = 1

type ToleranceMeaning = Extract<Meaning, { fact: 'tolerance' }>

/** What a coupling and bearings can bear is nobody's to widen. */
const madeFixed = ({ what }: ToleranceMeaning) => what === 'stretch' || what === 'float'

/** A column that adds to the share of the tolerances chosen. */
function shareGive(
  name: string,
  chosen: (meaning: ToleranceMeaning) => boolean,
  share: number,
): Relaxation {
  const concerns = (meaning: Meaning) => meaning.fact === 'tolerance' && chosen(meaning)
  return {
    name,
    least: 0,
    most: mostPart * share,
    price: 1000,
    onRow: (row: Row) =>
      concerns(row.meaning) ? (row.terms.find(([column]) => column === shareColumn)?.[1] ?? 0) : 0,
    onCircle: (circle: Circle) =>
      concerns(circle.meaning) ? { radius: circle.radius.terms.get(shareColumn) ?? 0 } : {},
  }
}

const couplingMembers = ({ model }: RemedyContext, wanted: (c: number, s: number) => boolean) =>
  model.members.flatMap((member, index) =>
    member.kind === 'coupling' && wanted(member.coupling, member.state) ? [index] : [],
  )

/** Those of some members that stand in a conflict. */
export const inConflict = (context: RemedyContext, members: readonly number[]) =>
  members.filter((index) => context.conflicts.some((set) => set.has(index)))

/** A wider tolerance in one named state, for every state of a conflict. */
export function stateChoices(context: RemedyContext): Candidate[] {
  const { train, document } = context
  const { share } = train.plan
  return train.states.flatMap((state, s) => {
    const members = couplingMembers(context, (_, other) => other === s)
    const pressed = inConflict(context, members)
    if (pressed.length === 0) return []
    const couplings = pressed.flatMap((index) => {
      const member = context.model.members[index]
      return member?.kind === 'coupling' ? (train.couplings[member.coupling] ?? []) : []
    })
    const factorAt = (value: number) => tidy(state.factor * (1 + value / share))
    const changes = (value: number): FieldChange[] =>
      (document.states ?? []).length === 0
        ? [{ at: 'states', from: null, to: [{ ...named(state), tolerance: factorAt(value) }] }]
        : [
            {
              at: `states[${s}].tolerance`,
              from: fieldAt(document, `states[${s}].tolerance`),
              to: factorAt(value),
            },
          ]
    return [
      candidateOf('state tolerance', {
        where: state.name,
        sized: [
          {
            give: shareGive(
              `wider ${state.id}`,
              (meaning) => meaning.state === s && !madeFixed(meaning),
              share,
            ),
            members,
            step: partStep * share,
            amount: (value) => ({
              where: state.name,
              part: { state: state.id },
              value: factorAt(value),
              quantity: 'factor',
            }),
            changes,
          },
        ],
        agree: `${makers(couplings)}; the owner, in writing, with an end date`,
        lead: ([amount], then) =>
          `Widen the tolerance in ${state.name} from ${state.factor} to ${amount?.value ?? state.factor} times: ${listed(
            couplings.map(
              (coupling) =>
                `${stateLimits(train, then, train.couplings.indexOf(coupling), s)} at ${coupling.name}`,
            ),
          )}.`,
      }),
    ]
  })
}

const named = ({ id, name }: { id: string; name: string }) => ({ id, name })

const makers = (couplings: readonly Coupling[]): string =>
  `the maker of the coupling ${listed([...new Set(couplings.map(({ name }) => name))])}`

/** A wider tolerance of one coupling, in every state, for every coupling of a conflict. */
export function couplingChoices(context: RemedyContext): Candidate[] {
  const { train, document } = context
  const { share } = train.plan
  return train.couplings.flatMap((coupling, c) => {
    const members = couplingMembers(context, (other) => other === c)
    if (inConflict(context, members).length === 0) return []
    const wider = (field: string, value: number): FieldChange => {
      const at = `${coupling.place}.${field}`
      const from = fieldAt(document, at)
      // rounded up to three digits, so that it is a number to agree on and still enough
      const to = upTo(Number(from) * (1 + value / share))
      return { at, from, to }
    }
    const fields = (['flex', 'offset', 'angle'] as const).filter(
      (field) => coupling.tolerance[field] !== undefined,
    )
    const sized = [
      {
        what: coupling.name,
        gap: false,
        changes: (value: number) => fields.map((field) => wider(`tolerance.${field}`, value)),
      },
      ...(coupling.axial
        ? [
            {
              what: `${coupling.name}, gap`,
              gap: true,
              changes: (value: number) => [wider('axial.tolerance', value)],
            },
          ]
        : []),
    ].map(({ what, gap, changes }) => ({
      give: shareGive(
        `wider ${what}`,
        (meaning) =>
          meaning.coupling === c && (meaning.what === 'gap') === gap && !madeFixed(meaning),
        share,
      ),
      members,
      step: partStep * share,
      amount: (value: number) => ({
        where: what,
        part: { coupling: coupling.id },
        value: tidy(1 + value / share),
        quantity: 'factor' as const,
      }),
      changes,
    }))
    return [
      candidateOf('coupling tolerance', {
        where: coupling.name,
        sized,
        agree: `${makers([coupling])}; the owner, in writing, with an end date`,
        lead: (amounts, then) =>
          `Accept ${listed(amounts.map(({ where }) => everyState(train, then, c, where.endsWith(', gap') ? 'gap' : 'limits')))}.`,
      }),
    ]
  })
}
