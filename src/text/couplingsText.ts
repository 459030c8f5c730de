import { firm } from '../language/firmSpaces'
import { notEngaged } from '../language/engagedWords'
import { shareAsked } from '../language/askedShare'
import { tol } from '../mechanics/tolerances'
import { shareText } from '../language/amounts'
import type { Coupling, Train } from '../mechanics/train'
import type { AsFoundAnswer, CheckAnswer } from '../engine/plan/answer'
import type { AnswerWithMoves } from '../scene/drawnAnswer'
import { checkInWords, tightest } from '../engine/plan/couplingWords'
import { verdictWord } from '../engine/plan/verdictWord'
import { heading, paragraph, table } from './layout'

const columns = [{ head: '' }, { head: '', align: 'right' }, { head: '' }] as const

/** Every coupling in every state after the plan, and as found in the same terms. */
export function couplingsText(train: Train, answer: AnswerWithMoves): string[] {
  const moved = answer.status !== 'in-tolerance'
  const about = moved
    ? `tolerance used when the plan is done; ${shareAsked(train.plan)}`
    : `tolerance used as found; ${shareAsked(train.plan)}`
  return [
    ...heading('COUPLINGS', about),
    ...train.couplings.flatMap((coupling) => [
      '',
      ...paragraph(coupling.name, '', 2),
      ...table(
        columns,
        answer.couplings
          .filter((entry) => entry.coupling === coupling.id)
          .flatMap((entry) => {
            const row = (
              word: string,
              { share, checks }: { share: number; checks: CheckAnswer[] },
            ) => {
              const check = tightest(checks)
              const over = overWord(share, answer.share)
              const words = check ? checkInWords(train, coupling.id, check) : ''
              const said = over === '' ? words : `${over}: ${words}`
              const shown = verdictWord(checks)
              return [word, shareText(share), shown === '' ? said : `${said}; ${shown}`]
            }
            const state = train.states.find(({ id }) => id === entry.state)?.name ?? entry.state
            return [
              row(state, entry),
              ...(moved ? [sameOr(row(state, entry), row(found, entry.asFound))] : []),
            ]
          })
          .concat(apartRows(train, coupling)),
      ),
    ]),
  ]
}

/** States in which its clutch is open. */
const apartRows = (train: Train, { disengaged = [] }: Coupling): string[][] =>
  train.states.filter(({ id }) => disengaged.includes(id)).map(({ name }) => [name, notEngaged, ''])

const found = `${firm}${firm}as found`

/** A coupling that the plan leaves alone says so instead of saying everything twice. */
const sameOr = (after: readonly string[], before: readonly string[]): readonly string[] =>
  after.slice(1).every((cell, i) => cell === before[i + 1])
    ? [before[0] ?? '', before[1] ?? '', 'the same']
    : before

/**
 * Shares as found where no plan is shown.
 * @param asked share of tolerance that was asked for; undefined: all of it
 */
export function asFoundShares(
  train: Train,
  asFound: readonly AsFoundAnswer[],
  asked: number | undefined,
): string[] {
  return train.couplings.flatMap((coupling) => {
    const entry = asFound.find((found) => found.coupling === coupling.id)
    return [
      ...paragraph(coupling.name, '', 2),
      ...table(
        columns,
        Object.entries(entry?.share ?? {})
          .map(([state, share]) => [
            train.states.find(({ id }) => id === state)?.name ?? state,
            shareText(share),
            overWord(share, asked ?? 1),
          ])
          .concat(apartRows(train, coupling)),
      ),
    ]
  })
}

function overWord(share: number, asked: number): string {
  if (share > 1 + tol.share) return 'over'
  return share > asked + tol.share ? 'more than asked' : ''
}
