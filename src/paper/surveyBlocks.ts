import { surveysAnswer } from '../engine/plan/surveysAnswer'
import type { Train } from '../mechanics/train'
import { surveyHeads, surveyTable } from '../text/surveysText'
import type { Block } from './page'

/** What surveys say beside the readings of the couplings; nothing of a train without one. */
export function surveyBlocks(train: Train): Block[] {
  const { surveys = [], surveysTogether } = surveysAnswer(train)
  return [
    ...surveys.flatMap((survey): Block[] => [
      { kind: 'heading', text: survey.name, aside: 'a survey beside the couplings as read' },
      { kind: 'text', look: 'plain', text: survey.sentence },
      {
        kind: 'table',
        columns: surveyHeads.map((head, i) => ({ head, width: i === 0 || i === 2 ? 3 : 1.6 })),
        rows: surveyTable(train, survey),
      },
    ]),
    ...(surveysTogether
      ? [
          { kind: 'heading' as const, text: 'All surveys together' },
          { kind: 'text' as const, look: 'plain' as const, text: surveysTogether.sentence },
        ]
      : []),
  ]
}

/** Beside arithmetic on readings, where the plan stands on lines that a survey has moved. */
export const joinedNote: Block = {
  kind: 'text',
  look: 'plain',
  text: 'The plan stands on lines that are fitted to a survey too: its figures differ from these by what the survey moved them.',
}
