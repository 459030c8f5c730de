import { shareAsked } from '../../language/askedShare'
import { bestBesideAsked, fineAmount } from '../../language/roundedAmounts'
import { tol } from '../../mechanics/tolerances'
import { shareText, toldNought, toldText, underDigits } from '../../language/amounts'
import type { Body, Train } from '../../mechanics/train'
import type {
  BindingLimit,
  FootAnswer,
  MovesAnswer,
  PlanFigures,
  PlannedAnswer,
  StandingAnswer,
} from './answer'
import { alongOf, movedBodies } from './moves'
import { keptClause, keptSentence } from '../../language/keptWords'
import { footLimitWords } from '../../language/footLimitWords'
import {
  bodiesInWords,
  capital,
  counted,
  inSentence,
  listed,
  namesOfThose,
} from '../../language/names'

/** The plan as people say it, in three parts so that a screen can set them apart. */
export interface Sentence {
  /** What is held, or that nothing need or can be done. */
  readonly headline: string
  /** What moves, and what the tightest coupling then uses. */
  readonly moves: string
  /** That these numbers allow nothing less; empty where there is no plan. */
  readonly proof: string
}

/** True of a share of tolerance from there on; plans at that share come out a little to either side of it. */
export const noRoomAt = (share: number): boolean => share > tol.noRoomFrom - tol.share

/** An answer, with what rounding came to and what cannot be had together, where that was worked out. */
type Told = PlanFigures & {
  readonly rounded?: { readonly sentence: string }
  readonly reasons?: { readonly conflicts: readonly Contradiction[] }
}

/** Limits that cannot be had together. */
interface Contradiction {
  readonly members: readonly {
    readonly limit:
      | Extract<BindingLimit, { kind: 'foot' }>
      | { readonly kind: 'held' | 'tilt' | 'restraint' | 'coupling' }
  }[]
}

/** Says in plain words what an answer means; the held bodies are named in it. */
export function sentenceOf(train: Train, answer: Told): Sentence {
  switch (answer.status) {
    case 'planned':
      return {
        headline: headlineOf(train, answer),
        moves:
          [movesOf(train, answer), tightestAfter(train, answer)].join(' ') +
          straightSentence(train, answer) +
          keptSentence(train) +
          statorSentence(train, answer),
        proof: `${proofOf(train, answer)} ${answer.rounded?.sentence ?? 'Before rounding to shims.'}`,
      }
    case 'in-tolerance':
      return {
        headline: keptOff(answer)
          ? `Nothing needs to move${statorsOut(train, answer, ' but ')}.`
          : 'Nothing is moved, though gear couplings run too straight.',
        moves: `As it stands, ${tightestAsFound(train, answer)}; ${shareAsked(train.plan)}.${straightSentence(train, answer)}${keptSentence(train)}`,
        proof: '',
      }
    case 'impossible':
      return {
        headline: capital(
          `${boundLead(train, answer.reasons?.conflicts[0])}${holding(train, answer)}, the best reachable is ${bestBesideAsked(answer.floor, answer.share)}${keptClause(train)}.`,
        ),
        moves: `As it stands, ${tightestAsFound(train, answer)}. No plan is shown.`,
        proof: '',
      }
    case 'unproven':
      return noPlan('The plan that was found did not pass its proof', answer.why)
    case 'stopped':
      return noPlan('The planner stopped without an answer', answer.why)
  }
}

const noPlan = (what: string, why: string): Sentence => ({
  headline: `${what}: no plan is shown.`,
  moves: `${capital(why)}.`,
  proof: '',
})

/** The three parts as one text. */
export const sentenceText = ({ headline, moves, proof }: Sentence): string =>
  [headline, moves, proof].filter((part) => part !== '').join(' ')

/** Stators whose air gap the rotor's plan leaves over its limit, by name; '' where there is none. */
function statorsOut(train: Train, { stators = [] }: StandingAnswer, lead: string): string {
  const ids = stators.filter(({ within }) => !within).map(({ machine }) => machine)
  const names = namesOfThose(train.bodies, ids)
  return names.length === 0
    ? ''
    : `${lead}the ${names.length > 1 ? 'stators' : 'stator'} of ${listed(names)}`
}

function statorSentence(train: Train, answer: StandingAnswer): string {
  const out = statorsOut(train, answer, '')
  return out === '' ? '' : ` ${capital(out)} ${/^the stators/.test(out) ? 'go' : 'goes'} too.`
}

/** What is fixed, or what moves where those are fewer names: "Move the bedplate alone." */
function headlineOf(train: Train, answer: PlannedAnswer): string {
  const fixed = namesOfThose(train.bodies, answer.held)
  if (fixed.length === 0) return 'Nothing is fixed.'
  const moved = movedBodies(train, answer).map(({ name }) => inSentence(name))
  if (moved.length === 0 || moved.length >= fixed.length) return `Leave ${listed(fixed)} fixed.`
  return `Move ${listed(moved)} alone.`
}

const holding = (train: Train, answer: StandingAnswer): string => {
  const names = namesOfThose(train.bodies, answer.held)
  return `with ${names.length === 0 ? 'nothing' : listed(names)} fixed`
}

/** "the motor is base-bound: ", where limits of feet are among what cannot be had together; else empty. */
function boundLead(train: Train, conflict: Contradiction | undefined): string {
  const words = new Map<string, Set<string>>()
  for (const { limit } of conflict?.members ?? []) {
    if (limit.kind !== 'foot') continue
    const { bound } = footLimitWords[limit.limit]
    const body = train.bodies.find(({ id }) => id === limit.body)
    if (!bound || !body) continue
    const name = inSentence(body.name)
    words.set(name, (words.get(name) ?? new Set()).add(bound))
  }
  const said = [...words].map(([name, bounds]) => `${name} is ${listed([...bounds])}`)
  return said.length === 0 ? '' : `${listed(said)}: `
}

/** Shim over feet, slide over rows of feet, axial moves over bodies; only what shows in the digits. */
function movesOf(train: Train, { feet, bodies, total }: MovesAnswer): string {
  const footOf = (body: Body, index: number): FootAnswer | undefined =>
    feet.find((foot) => foot.body === body.id && foot.foot === body.feet[index]?.id)
  const shows = (value: number | undefined) => !toldNought(value ?? 0, train.units)
  const shimmed = train.bodies.map((body) => ({
    body,
    count: body.feet.filter((_, f) => shows(footOf(body, f)?.shim)).length,
  }))
  const slid = train.bodies.map((body) => ({
    body,
    count: body.rows.filter((row) => shows(footOf(body, row.feet[0] ?? 0)?.side)).length,
  }))
  const along = train.bodies.flatMap((body) => {
    const tx = alongOf({ bodies }, body.id)
    return shows(tx) ? [{ body, tx }] : []
  })
  const parts = [
    ...counts(shimmed, (count, bodies) => [
      `shim ${counted(count, 'foot', 'feet')} of ${bodiesInWords(bodies)}, ${toldText(total.shim, train.units)}${count > 1 ? ' in all' : ''}`,
    ]),
    ...counts(slid, (count, bodies) => [
      `slide ${bodiesInWords(bodies)}, ${toldText(total.side, train.units)} over ${counted(count, 'row', 'rows')} of feet`,
    ]),
    ...(along.length === 0
      ? []
      : [
          `move ${bodiesInWords(along.map(({ body }) => body))} along the train, ${toldText(total.axial, train.units)}`,
        ]),
  ]
  if (parts.length === 0)
    return `Every move is ${underDigits(train.units)}: leave the machines as they stand.`
  return `${capital(parts.join('; '))}.`
}

function counts(
  moved: readonly { body: Body; count: number }[],
  say: (count: number, bodies: Body[]) => string[],
): string[] {
  const some = moved.filter(({ count }) => count > 0)
  if (some.length === 0) return []
  return say(
    some.reduce((sum, { count }) => sum + count, 0),
    some.map(({ body }) => body),
  )
}

function tightestAfter(train: Train, { couplings }: MovesAnswer): string {
  const worst = couplings.reduce<{ coupling: string; state: string; share: number }>(
    (a, b) => (b.share > a.share ? b : a),
    { coupling: '', state: '', share: -1 },
  )
  const room = noRoomAt(worst.share) ? ', no room for error' : ''
  return `The tightest coupling then uses ${shareText(worst.share)} of its tolerance (${placeInWords(train, worst)})${room}.`
}

function tightestAsFound(train: Train, answer: StandingAnswer): string {
  const all = answer.asFound.flatMap(({ coupling, share }) =>
    Object.entries(share).map(([state, value]) => ({ coupling, state, share: value })),
  )
  const worst = all.reduce((a, b) => (b.share > a.share ? b : a), {
    coupling: '',
    state: '',
    share: -1,
  })
  return `the tightest coupling uses ${shareText(worst.share)} of its tolerance (${placeInWords(train, worst)})`
}

/** Whether every gear coupling runs at its least angle, where it has one, when all is done. */
export const keptOff = ({ teeth = [] }: StandingAnswer): boolean =>
  teeth.every(({ asFound, planned = asFound }) => planned.tooStraight !== true)

/**
 * Why a coupling that is in tolerance as found moves all the same, or which teeth stay too straight; empty where no teeth
 * are kept off dead straight and all keep their least angle.
 */
function straightSentence(train: Train, answer: StandingAnswer): string {
  const namesOf = (those: readonly { readonly coupling: string }[]) =>
    listed([
      ...new Set(
        those.map(
          ({ coupling }) => train.couplings.find(({ id }) => id === coupling)?.name ?? coupling,
        ),
      ),
    ])
  const { teeth = [] } = answer
  const left = teeth.filter(({ asFound, planned = asFound }) => planned.tooStraight)
  if (left.length > 0)
    return ` No plan was found in which the teeth of ${namesOf(left)} keep their least angle within that: ask for less margin, or the maker.`
  const straight = teeth.filter(({ side, asFound }) => side !== undefined && asFound.tooStraight)
  return straight.length === 0
    ? ''
    : ` As found the teeth of ${namesOf(straight)} run straighter than their least angle.`
}

function placeInWords(train: Train, { coupling, state }: { coupling: string; state: string }) {
  const name = train.couplings.find(({ id }) => id === coupling)?.name ?? coupling
  return `${name}, ${train.states.find(({ id }) => id === state)?.name ?? state}`
}

/** "Proven" is meant of this alone: no plan within the numbers given costs less. */
function proofOf(train: Train, answer: PlannedAnswer): string {
  const least = fineAmount(answer.proof.bound, 'down', train)
  const { shim, side, axial } = train.plan.weights
  const plain = [shim, side, axial, ...train.bodies.map(({ weight }) => weight)].every(
    (weight) => weight === 1,
  )
  const needs = plain ? `needs less than ${least}` : `costs less than ${least}, weighted as entered`
  const sided = (answer.teeth ?? []).some(({ side }) => side !== undefined)
  const of = sided
    ? 'no plan that keeps the gear couplings off dead straight on the same sides'
    : 'no plan for these numbers'
  return `${capital(holding(train, answer))}, ${of} ${needs}.`
}
