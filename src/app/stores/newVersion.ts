import { defineStore } from 'pinia'
import { shallowRef } from 'vue'

/** What is to be known of a newer version of the app: it waits, it is coming in, or another window took it. */
type NewVersion =
  | { readonly is: 'waiting'; readonly take: () => void }
  | { readonly is: 'coming in' }
  | { readonly is: 'taken elsewhere' }

/** By this name windows of the app tell each other that a newer version was taken. */
const taking = 'holdfast: a newer version was taken'

/** A browser mostly changes versions at once. Chromium at times does not, for minutes: it is waited for this long (ms). */
const patience = 5000

/** The app as the browser keeps it for use without a network. */
export const useNewVersion = defineStore('newVersion', () => {
  const newer = shallowRef<NewVersion>()

  /** Whether it was taken here. */
  let asked = false
  const worker = (): ServiceWorkerContainer | undefined =>
    import.meta.env.PROD && window.location.protocol !== 'file:' && 'serviceWorker' in navigator
      ? navigator.serviceWorker
      : undefined

  const takenElsewhere = (): void => {
    if (!asked) newer.value = { is: 'taken elsewhere' }
  }

  /** Hears of a newer version that is taken, here or in another window; what had none before comes to its first. */
  function hearOfTaking(): void {
    const container = worker()
    if (!container) return
    const had = container.controller !== null
    container.addEventListener('controllerchange', () => {
      if (asked) window.location.reload()
      else if (had) takenElsewhere()
    })
    new BroadcastChannel(taking).addEventListener('message', takenElsewhere)
  }

  /**
   * Brings the newer version in past a browser that does not let go of the one in use: what is kept is given up and the
   * page is loaded from the network, which keeps it anew. Without a network nothing is given up, and the browser is
   * waited for.
   */
  async function takePast(container: ServiceWorkerContainer): Promise<void> {
    // what is kept answers for the page itself, and never for a question behind it
    const reached = await fetch('./?newer', { cache: 'no-store' }).catch(() => undefined)
    if (!reached?.ok) return
    await (await container.getRegistration())?.unregister()
    new BroadcastChannel(taking).postMessage(taking)
    window.location.reload()
  }

  /**
   * Has the browser keep the app. A newer version that is found waits: only somebody who takes it brings it in, and the
   * page is loaded anew then.
   */
  async function keepOffline(): Promise<void> {
    const container = worker()
    if (!container) return
    // where it cannot be fetched, or the browser keeps nothing, the app works all the same, with a network
    const workbox = await import('workbox-window').catch(() => undefined)
    if (!workbox) return
    const kept = new workbox.Workbox('./sw.js')
    kept.addEventListener('waiting', () => {
      // a page that came from the network is as new as what waits
      if (!container.controller) return
      const take = () => {
        asked = true
        newer.value = { is: 'coming in' }
        kept.messageSkipWaiting()
        setTimeout(() => void takePast(container), patience)
      }
      newer.value = { is: 'waiting', take }
    })
    await kept.register().catch(() => undefined)
  }

  return { newer, hearOfTaking, keepOffline }
})
