import { tidy } from '../../language/tidy'
import { readTrain } from '../../document/readTrain'
import type { Train } from '../../mechanics/train'
import { foundLines } from '../../mechanics/uncertainty/foundLines'
import { closure } from '../../mechanics/readings/closure'
import { sharesOf, worstShare } from '../../mechanics/misalignment/shares'
import { comparedSources } from '../../mechanics/uncertainty/growthSources'
import type { CheckReport, GrowthSourceAnswer } from './answer'
import { findingsOf } from './findings'
import { notEnteredOf } from './notEntered'
import { asFoundAnswer } from './report'
import { statorsAnswer } from './statorAnswer'
import { axialAnswer } from './axialRow'
import { teethAnswer } from './teeth'
import { surveysAnswer } from './surveysAnswer'

/**
 * Reads a train file and says what stands in it, without solving anything: how the couplings lie as
 * found, what deserves another look, and what was not entered.
 * @param input a parsed train file of any shape
 * @returns how the train stands, or why the document is refused; never throws on input
 */
export function checkTrain(input: unknown): CheckReport {
  const read = readTrain(input)
  return read.ok ? checkRead(read.train) : { refused: [...read.refused] }
}

/** Checks a train that was read. */
export function checkRead(train: Train): Extract<CheckReport, { ok: true }> {
  const found = foundLines(train)
  const standing = sharesOf(train, found)
  return {
    ok: true,
    name: train.name,
    findings: findingsOf(train, found),
    notEntered: notEnteredOf(train),
    closure: train.couplings.flatMap((coupling) =>
      coupling.found.flatMap((set, i) => {
        const value = closure(set)
        if (value === undefined) return []
        return [{ coupling: coupling.id, set: i, value }]
      }),
    ),
    growth: growthSources(train),
    asFound: asFoundAnswer(train, found, standing),
    ...teethAnswer(train, found),
    ...axialAnswer(train),
    ...statorsAnswer(train),
    standingShare: tidy(worstShare(standing)),
    ...surveysAnswer(train),
  }
}

const growthSources = (train: Train): GrowthSourceAnswer[] =>
  comparedSources(train).map(({ machine, state, source, rows, limit, agree }) => ({
    machine: train.machines[machine]?.id ?? '',
    state: train.states[state]?.id ?? '',
    source,
    rows: rows.map(({ axis, sigmas, ...row }) => ({
      ...row,
      ...(axis !== 'both' && { axis }),
      sigmas: Number.isFinite(sigmas) ? sigmas : null,
    })),
    limit,
    agree,
  }))
