import type { ExpectedAnswer } from '../engine/plan/answer'
import type { StepAnswer } from '../engine/work/steps/answer'
import type { Train } from '../mechanics/train'
import { fineDigits } from '../language/amounts'
import { fineSign, micrometresPer } from '../mechanics/units'
import { lineInWords } from '../language/readingSets'
import { capital } from '../language/names'

/** What the couplings should show after a step, where somebody stops to read; and what cannot be judged by it. */
export function expectedLines(train: Train, step: StepAnswer): string[] {
  if (step.hold === undefined && step.kind !== 'read') return []
  return train.couplings.flatMap((coupling) => {
    const sets = step.expected.filter((entry) => entry.coupling === coupling.id)
    if (sets.length === 0) return []
    const judged = step.judge.find((entry) => entry.coupling === coupling.id)
    const not =
      judged !== undefined && judged.judge === 'not yet'
        ? ` Not to be judged yet: ${judged.why}.`
        : ''
    return [
      `${capital(coupling.name)}, in ${fineSign[train.units.fine]}: ${sets.map((entry) => setLine(train, entry)).join('; ')}.${not}`,
    ]
  })
}

function setLine(train: Train, entry: ExpectedAnswer): string {
  const lead = `set ${entry.set + 1}`
  const coupling = train.couplings.find(({ id }) => id === entry.coupling)
  if (!('readings' in entry))
    return coupling
      ? `${lead} ${lineInWords(train, coupling, { y: entry.offset.y * micrometresPer[train.units.fine], z: entry.offset.z * micrometresPer[train.units.fine] }, entry.slope)}`
      : lead
  const gap = coupling?.found[entry.set]?.kind === 'gap'
  const texts = entry.readings.map(([hour, value]) => {
    const digits = fineDigits(Math.abs(value * micrometresPer[train.units.fine]), train.units)
    const sign = gap || !/[1-9]/.test(digits) ? '' : value > 0 ? '+' : '\u2212'
    return `at ${hour} ${sign}${/[1-9]/.test(digits) ? digits : '0'}`
  })
  return `${lead} ${texts.join(', ')}`
}
