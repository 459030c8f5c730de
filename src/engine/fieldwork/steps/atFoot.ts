import { listed } from '../../../language/names'
import type { Instruction } from './instructions'

/** What is done at one foot by the plan, step by step; soft feet are a matter of their own. */
export const stepsAtFoot = (
  instructions: readonly Instruction[],
  body: string,
  foot: string,
): Instruction[] =>
  instructions.filter(
    (one) =>
      one.body === body &&
      one.kind !== 'soft foot' &&
      one.feet.some((entry) => entry.foot === foot && entry.moves),
  )

/** "step 3", "steps 3, 5 and 6"; empty without any. */
export function stepNumbers(instructions: readonly Pick<Instruction, 'number'>[]): string {
  const numbers = instructions.map(({ number }) => String(number))
  return numbers.length === 0 ? '' : `${numbers.length === 1 ? 'step' : 'steps'} ${listed(numbers)}`
}
