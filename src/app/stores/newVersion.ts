import { defineStore } from 'pinia'
import { shallowRef } from 'vue'

/** What is to be known of a newer version of the app: it waits, or another window took it. */
type NewVersion =
  { readonly is: 'waiting'; readonly take: () => void } | { readonly is: 'taken elsewhere' }

/** The app as the browser keeps it for use without a network. */
export const useNewVersion = defineStore('newVersion', () => {
  const newer = shallowRef<NewVersion>()

  /** Whether it was taken here. */
  let asked = false
  const worker = (): ServiceWorkerContainer | undefined =>
    import.meta.env.PROD && window.location.protocol !== 'file:' && 'serviceWorker' in navigator
      ? navigator.serviceWorker
      : undefined

  /** Hears of a newer version that is taken, here or in another window; what had none before comes to its first. */
  function hearOfTaking(): void {
    const container = worker()
    const had = container?.controller != null
    container?.addEventListener('controllerchange', () => {
      if (asked) window.location.reload()
      else if (had) newer.value = { is: 'taken elsewhere' }
    })
  }

  /**
   * Has the browser keep the app. A newer version that is found waits: only somebody who takes it brings it in, and the
   * page is loaded anew then.
   */
  async function keepOffline(): Promise<void> {
    if (!worker()) return
    // where it cannot be fetched, or the browser keeps nothing, the app works all the same, with a network
    const workbox = await import('workbox-window').catch(() => undefined)
    if (!workbox) return
    const kept = new workbox.Workbox('./sw.js')
    kept.addEventListener('waiting', () => {
      const take = () => {
        asked = true
        kept.messageSkipWaiting()
      }
      newer.value = { is: 'waiting', take }
    })
    await kept.register().catch(() => undefined)
  }

  return { newer, hearOfTaking, keepOffline }
})
