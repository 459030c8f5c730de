import { defineComponent, h, type Component } from 'vue'
import { Later } from '../services/later'
import NotLoaded from './NotLoaded.vue'

/**
 * A component that is fetched when it is first shown. Where it cannot be fetched that is said in its place, with a press
 * that tries again, and what the slot "instead" has.
 * @param what it is called there, as the start of a sentence
 */
export function laterComponent(
  what: string,
  fetch: () => Promise<{ readonly default: Component }>,
): Component {
  const part = new Later(fetch)
  const again = (): void => {
    part.get().catch(() => undefined) // the fault is shown
  }
  return defineComponent({
    inheritAttrs: false,
    setup(_, { attrs, slots }) {
      again()
      return () => {
        if (part.value.value) return h(part.value.value.default, attrs, slots)
        const why = part.fault.value
        return why === '' ? null : h(NotLoaded, { what, why, onAgain: again }, slots['instead'])
      }
    },
  })
}
