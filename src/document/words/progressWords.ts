import { listed } from '../../language/names'
import type { NextStep } from '../edits/nextStep'

/** What of a train is entered and what a plan still needs: "machines and feet are entered; a plan still needs readings". */
export function progressWords({ parts }: Pick<NextStep, 'parts'>): string {
  const named = (whole: boolean) =>
    listed(parts.flatMap((part) => (part.whole === whole ? [part.name] : [])))
  return named(true) === ''
    ? `a plan needs ${named(false)}`
    : `${named(true)} are entered; a plan still needs ${named(false)}`
}
