import { counted } from '../../language/names'
import type { CodeFound } from './code'
import { called } from './records'
import { dayOf } from './times'
import { mostVersions } from './versions'

/** A code in its groups of which a letter is wrong. */
export const wrongCode =
  'This is no code: a letter of it is wrong, or two changed places. Read it again; codes have no 0, 1, I, L or O.'

/** What a code on paper leads to, and what is to be done: sentences, the caution before the act. */
export function codeWords(found: CodeFound, now: number): string[] {
  switch (found.is) {
    case 'nowhere':
      return [
        'The train of this code is not on this shelf: a code holds marks of a train and its sheet, and nothing of what they say.',
        'Have its file saved by those who printed the paper, and open that.',
      ]
    case 'off':
      return [
        `${called(found.job)} was taken off this shelf ${dayOf(found.job.removed ?? 0, now)}. Put it back, below under "Taken off"; then the code opens it.`,
      ]
    case 'job':
      return [`${called(found.job)}. ${sheetWords(found, now)}`]
  }
}

function sheetWords(found: Extract<CodeFound, { is: 'job' }>, now: number): string {
  const { sheet, since, samePlan, job } = found
  switch (sheet) {
    case 'newest':
      return 'The paper was printed from the sheet as it stands here.'
    case 'older': {
      const [last] = since
      const lately = last ? `, the last ${dayOf(last.when, now)} (${last.what})` : ''
      const begun = `The sheet here is newer than the paper: ${counted(since.length, 'change', 'changes')} since${lately}.`
      return samePlan
        ? `${begun} They wrote down work and readings; what is planned from is the same.`
        : `${begun} The plan may be another one: go by the sheet, not by the paper.`
    }
    case 'elsewhere':
      return `The paper was printed from a sheet that this shelf does not have: it was changed elsewhere, or more than ${mostVersions} changes ago. Here it was changed ${dayOf(job.changed, now)}. Which is newer cannot be told from a code: open the file of those who printed it, and what differs is shown. Do not move anything before.`
  }
}
