import { fineSign, type Micrometres } from '../../../mechanics/units'
import type { Body } from '../../../mechanics/train'
import { footLimitWords } from '../../../language/footLimitWords'
import { programUnit } from '../../lp/program'
import type { Relaxation } from '../elastic/relaxation'
import { capital, inSentence, listed } from '../../../language/names'
import { candidateOf, type Candidate, type RemedyContext } from './candidate'
import { fieldAt, type FieldChange } from './change'
import { plateChanges } from './plates'
import { bodyAmount, fineStep, indexOf, stepsOf } from './sizes'

/** Thickest plates (um). Common practice, no source. */
const thickest = 25_000

/**
 * Everything else raised where a machine cannot go down, or a machine raised where its packs or bolts
 * end: plates of one thickness under all feet of a set of machines, with bolts as much longer. Machines
 * that stand on less than their minimum pack are set on it at the same time. The plates are no shims:
 * they leave the packs the same way up and down.
 */
export function raiseChoices(context: RemedyContext): Candidate[] {
  const { model, conflicts } = context
  const pressed = model.members.some(
    (member, index) =>
      member.kind === 'foot' &&
      footLimitWords[member.limit].remedies.includes('raise') &&
      conflicts.some((set) => set.has(index)),
  )
  if (!pressed) return []
  return setsToRaise(context).flatMap((set) => [
    raiseOf(context, set, false),
    ...(set.some((b) => context.train.bodies[b]?.held) ? [raiseOf(context, set, true)] : []),
  ])
}

/** What stands left or right of a coupling in conflict, one machine, or everything but one. */
function setsToRaise({ train, model, conflicts }: RemedyContext): number[][] {
  const all = train.machines.map((_, m) => m)
  const joints = new Set<number>()
  for (const set of conflicts)
    for (const index of set) {
      const member = model.members[index]
      if (member?.kind === 'coupling') joints.add(member.coupling)
    }
  const near = [...joints].flatMap((c) => {
    const { left = 0, right = 0 } = train.couplings[c] ?? {}
    return [left, right]
  })
  const sets = [
    ...[...new Set(near)].map((m) => [m]),
    ...[...joints].flatMap((c) => {
      const { left = 0 } = train.couplings[c] ?? {}
      return [all.filter((m) => m <= left), all.filter((m) => m > left)]
    }),
    ...[...new Set(near)].map((m) => all.filter((other) => other !== m)),
  ]
  const known = new Set<string>()
  return sets.filter((set) => {
    const key = set.join(' ')
    const can = set.every((m) => canRise(train.machines[m]))
    if (known.has(key) || !can || set.length === all.length) return false
    known.add(key)
    return true
  })
}

const canRise = (body: Body | undefined): boolean =>
  body !== undefined && body.anchored === undefined && body.feet.length > 0 && body.may.rise

/** How far a machine must rise to stand on its minimum packs. */
const lackOf = (body: Body): Micrometres =>
  Math.max(0, ...body.feet.map(({ pack }) => (pack ? pack.min - pack.now : 0)))

function raiseOf(context: RemedyContext, set: readonly number[], letGo: boolean): Candidate {
  const { train, model, document } = context
  const { machines } = train
  const short = machines.flatMap((body, m) =>
    !set.includes(m) && canRise(body) && !body.held && lackOf(body) > 0 ? [m] : [],
  )
  const onto = new Map(short.map((m) => [m, lackOf(machines[m] ?? never(m))]))
  const held = letGo ? set.filter((m) => machines[m]?.held) : []
  const names = set.map((m) => inSentence(machines[m]?.name ?? ''))
  const room = Math.min(
    thickest,
    ...set.flatMap((m) =>
      (machines[m]?.restraints ?? []).flatMap(({ rise }) => (rise ? [rise[1]] : [])),
    ),
  )
  const step = stepsOf(train).room
  const coefficient = riseOf(context)
  const fixed = short.map((m): Relaxation => ({
    ...coefficient([m]),
    name: `on its minimum pack ${m}`,
    least: lackOf(machines[m] ?? never(m)) / programUnit,
    most: lackOf(machines[m] ?? never(m)) / programUnit,
    price: 0,
  }))
  return candidateOf('raise', {
    where: set.map((m) => machines[m]?.name ?? '').join(', '),
    drops: held.flatMap((m) => indexOf(model, { kind: 'held', body: m }) ?? []),
    fixed,
    changes: held.map((m): FieldChange => {
      const at = `${machines[m]?.place ?? ''}.held`
      return { at, from: fieldAt(document, at), to: false }
    }),
    sized: [
      {
        give: { ...coefficient(set), name: 'plates', least: 0, most: room / programUnit, price: 1 },
        members: model.members.flatMap((member, index) => {
          if (member.kind !== 'coupling') return []
          const { left = 0, right = 0 } = train.couplings[member.coupling] ?? {}
          return set.includes(left) !== set.includes(right) ? [index] : []
        }),
        step,
        amount: (value) => ({
          ...bodyAmount(machines[set[0] ?? 0] ?? never(0), {}, '', value * programUnit),
          where: set.map((m) => machines[m]?.name ?? '').join(', '),
        }),
        changes: (value) =>
          plateChanges(context, new Map(set.map((m) => [m, value * programUnit])), onto),
      },
    ],
    agree: [
      'the responsible engineer',
      ...[...set, ...short].flatMap((m) =>
        (machines[m]?.restraints.length ?? 0) > 0
          ? [`the piping engineer: pipe strain at ${machines[m]?.name ?? ''}`]
          : [],
      ),
    ].join('; '),
    lead: ([amount]) => {
      const unit = fineSign[train.units.fine]
      const plate =
        amount && amount.value > 0 ? ` on plates of ${fineStep(train, amount.value)} ${unit}` : ''
      const onto = short.map((m) => {
        const body = machines[m] ?? never(m)
        return `set ${inSentence(body.name)} on its minimum pack, ${fineStep(train, lackOf(body))} ${amount ? unit : ''} up`
      })
      const free =
        held.length > 0 ? ` and let ${set.length > 1 ? 'them' : 'it'} be shimmed there` : ''
      return `${capital([`raise ${listed(names)}${plate}${free}`, ...onto].join('; '))}.`
    },
    refine: ([value = 0], shims) => {
      const lowest = Math.min(...set.flatMap((m) => shims[m] ?? [])) / programUnit
      // a hair short of a step is a step: shims of that size do not exist
      const shared = Math.floor(lowest / step + 0.01) * step
      return [Number.isFinite(shared) && shared > 0 ? value + shared : value]
    },
  })
}

/** A plate lifts the axis and the nozzles of its machines, and no pack, bolt or hole. */
function riseOf({ model }: RemedyContext) {
  const { columns } = model.program
  return (set: readonly number[]): Pick<Relaxation, 'onRow' | 'onCircle'> => {
    const rises = columns.flatMap(({ meaning }, c) =>
      meaning.part === 'motion' && meaning.motion === 'tz' && set.includes(meaning.body) ? [c] : [],
    )
    const sum = (terms: Iterable<readonly [number, number]>) => {
      let total = 0
      for (const [column, a] of terms) if (rises.includes(column)) total += a
      return total
    }
    return {
      onRow: ({ meaning, terms }) =>
        meaning.fact === 'tolerance' || meaning.fact === 'restraint' ? sum(terms) : 0,
      onCircle: ({ meaning, u, w }) =>
        meaning.fact === 'tolerance' ? { u: sum(u.terms), w: sum(w.terms) } : {},
    }
  }
}

function never(index: number): never {
  throw new RangeError(`no machine ${index}`)
}
