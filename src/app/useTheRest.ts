import { watch } from 'vue'
import { fetchTheRest } from './services/later'
import { useNewVersion } from './stores/newVersion'
import { usePlan } from './stores/plan'

/** Where a browser does not say when it has nothing to do, this long (ms) after the first plan is taken for it. */
const quiet = 500
/** A train that has no plan yet is no reason to wait longer than this (ms). */
const longest = 5000

/**
 * Once the first plan has been drawn, fetches what the app has beside it, so that nothing is waited for later, and has
 * the browser keep the app for use without a network.
 */
export function useTheRest(): void {
  const plan = usePlan()
  const newVersion = useNewVersion()
  newVersion.hearOfTaking()
  let begun = false
  const begin = (): void => {
    if (begun) return
    begun = true
    void fetchTheRest()
    void newVersion.keepOffline()
  }
  watch(
    () => plan.drawing,
    () => {
      if ('requestIdleCallback' in window) requestIdleCallback(begin)
      else setTimeout(begin, quiet)
    },
    { once: true },
  )
  setTimeout(begin, longest)
}
