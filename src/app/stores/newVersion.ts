import { defineStore } from 'pinia'
import { shallowRef } from 'vue'

/** What is to be known of a newer version of the app: it waits, or another window took it. */
type NewVersion =
  { readonly is: 'waiting'; readonly take: () => void } | { readonly is: 'taken elsewhere' }

/** The app as the browser keeps it for use without a network. */
export const useNewVersion = defineStore('newVersion', () => {
  const newer = shallowRef<NewVersion>()

  /**
   * Has the browser keep the app, once the page has loaded. A newer version that is found waits: only somebody who takes it
   * brings it in, and the page is loaded anew then.
   */
  async function keepOffline(): Promise<void> {
    if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
    const { Workbox } = await import('workbox-window')
    const worker = new Workbox('./sw.js')
    let asked = false
    worker.addEventListener('waiting', () => {
      const take = () => {
        asked = true
        worker.messageSkipWaiting()
      }
      newer.value = { is: 'waiting', take }
    })
    worker.addEventListener('controlling', ({ isUpdate }) => {
      if (asked) window.location.reload()
      else if (isUpdate) newer.value = { is: 'taken elsewhere' }
    })
    // where the browser keeps nothing the app works all the same, with a network
    await worker.register().catch(() => undefined)
  }

  return { newer, keepOffline }
})
