import { computed } from 'vue'
import { guardOf } from '../../engine/fieldwork/steps/guard'
import { micrometresPer } from '../../mechanics/units'
import { useMachine } from '../stores/machine'

/** What the dial at the foot in hand says, once it has been read. */
export function useStepGuard() {
  const machine = useMachine()
  return computed(() => {
    const { card, train, steps } = machine
    const shown = card && machine.entryOf(card)?.dial
    if (!train || !steps || card?.kind !== 'foot' || shown === undefined) return undefined
    return guardOf(train, {
      steps: steps.steps,
      at: card.instruction.number - 1,
      foot: card.feet[0] ?? '',
      shown: shown * micrometresPer[train.units.fine],
    })
  })
}
