import { useEventListener } from '@vueuse/core'
import { defineStore } from 'pinia'
import { ref } from 'vue'
import { fileNameOf } from '../services/handOver'
import { saveFile, type FileHandle } from '../shelf/files'
import { fileText } from '../shelf/fileText'
import { clockOf } from '../shelf/times'
import { useJob } from './job'
import { useShelf } from './shelf'

/** Saves the train on the sheet as a file, and says where it went. */
export const useSaving = defineStore('saving', () => {
  const job = useJob()
  const shelf = useShelf()
  const said = ref('')
  /** Files that the browser lets this page write again, by job. */
  const handles = new Map<string, FileHandle>()

  async function save(elsewhere = true): Promise<void> {
    const { document, entries, hand } = job
    if (!document) return
    const id = shelf.currentId ?? ''
    const again = elsewhere ? undefined : handles.get(id)
    try {
      const saved = await saveFile(fileNameOf(document.name, 'json'), fileText(document), again)
      if (!saved) return
      if (saved.handle) handles.set(id, saved.handle)
      const wrong = Object.keys(entries).length
      const without = [
        ...(wrong > 0 ? [`${wrong} wrong ${wrong === 1 ? 'entry' : 'entries'}`] : []),
        ...(hand ? ['what was put by hand'] : []),
      ]
      said.value = `saved as ${saved.name} at ${clockOf(Date.now())}${
        without.length > 0 ? `; without ${without.join(' and ')}` : ''
      }`
    } catch (error) {
      said.value = `the file could not be written: ${error instanceof Error ? error.message : String(error)}`
    }
  }

  useEventListener(window, 'keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 's') return
    event.preventDefault()
    void save(event.shiftKey)
  })

  return { said, save }
})
