import { paperCode } from '../document/paperCode'
import { workSoFar } from '../engine/fieldwork/loop/workSoFar'
import type { Drawn } from './job'
import type { Block } from './page'
import { symbolFigure } from './symbol'

/** The step that is to be done next, begun or not; 0 where there is none. */
export function nextStepNumber({ document, train, answer, instructions }: Drawn): number {
  const { steps } = workSoFar(document, train, answer.ready?.items ?? [], instructions)
  return steps.find(({ isDone }) => !isDone)?.instruction.number ?? 0
}

/** What opens this very sheet at its next step on the shelf of whoever takes over, to be scanned or typed. */
export function codeBlock(job: Drawn): Block {
  const text = paperCode(job.document, nextStepNumber(job))
  return {
    kind: 'code',
    figure: symbolFigure(text),
    // the dash shows that it goes on
    groups: text.split(/(?<=-)/),
  }
}
