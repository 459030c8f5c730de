import { tol } from '../../../mechanics/tolerances'
import type { Body, Train } from '../../../mechanics/train'

/** Up to this many bodies that are not anchored every choice of held ones is solved: 4,096 choices. */
export const mostBodies = tol.mostBodies

/** Which bodies a choice holds, one flag a body; anchored ones are held in every choice. */
export type HoldChoice = readonly boolean[]

/** Indices of the bodies that a choice may hold or let go. */
export const looseBodies = (train: Train): number[] =>
  train.bodies.flatMap(({ anchored }, b) => (anchored === undefined ? [b] : []))

/** The choice as the file has it. */
export const choiceNow = (train: Train): HoldChoice => train.bodies.map(({ held }) => held)

/** The choice that holds these bodies, by their indices; what is anchored is always held. */
export const choiceOf = (train: Train, held: ReadonlySet<number>): HoldChoice =>
  train.bodies.map(({ anchored }, b) => anchored !== undefined || held.has(b))

/** Ids of the bodies that a choice holds. */
export const heldIds = (train: Train, choice: HoldChoice): string[] =>
  train.bodies.flatMap(({ id }, b) => (choice[b] ? [id] : []))

/** Whether two choices hold the same bodies. */
const sameChoice = (a: HoldChoice, b: HoldChoice): boolean => a.every((held, i) => held === b[i])

/** The same train with the bodies of a choice held. */
export function withHeld(train: Train, choice: HoldChoice): Train {
  const bodies = train.bodies.map((body, b): Body => ({ ...body, held: choice[b] ?? body.held }))
  return { ...train, bodies, machines: bodies.slice(0, train.machines.length) }
}

/**
 * Every choice, those first that people ask about first: what is held now, nothing, one body, two
 * bodies and so on; the same number held in document order.
 */
export function allChoices(train: Train): HoldChoice[] {
  const loose = looseBodies(train)
  const now = choiceNow(train)
  const all = Array.from({ length: 2 ** loose.length }, (_, bits) =>
    loose.filter((_body, i) => ((bits >> i) & 1) === 1),
  ).sort((a, b) => a.length - b.length || inDocumentOrder(a, b))
  const choices = all.map((held) => choiceOf(train, new Set(held)))
  return [now, ...choices.filter((choice) => !sameChoice(choice, now))]
}

/** Compares two sets of body indices by their first difference. */
export function inDocumentOrder(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const by = (a[i] ?? 0) - (b[i] ?? 0)
    if (by !== 0) return by
  }
  return a.length - b.length
}
