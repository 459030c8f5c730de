import { keepPhoto } from '../shelf/photos'
import { useEventListener } from '@vueuse/core'
import { defineStore } from 'pinia'
import { computed, ref, shallowRef, watch } from 'vue'
import { unchanged } from '../../scene/unchanged'
import { harmless, harmlessLine } from '../../language/harmless'
import { readTrainText } from '../../document/readTrain'
import { examples, firstExample } from '../services/examples'
import { takeFile } from '../shelf/arrival'
import type { KeptState } from '../shelf/autosave'
import type { Damaged } from '../shelf/damaged'
import { storageErrorText } from '../shelf/database'
import { readFile } from '../shelf/files'
import type { Act, Note } from '../shelf/note'
import type { Job } from '../shelf/records'
import { Session, type Current } from '../shelf/session'
import { documentOf } from '../shelf/documentOf'
import { dayOf } from '../shelf/times'
import type { VersionLine } from '../shelf/versions'
import {
  damagedNote,
  exampleNote,
  followedNote,
  leftNote,
  partedNote,
  takenOffNote,
} from '../shelf/words'
import { useJob } from './job'
import { useView } from './view'

/** The shelf of jobs, and whether the one on the sheet is kept. */
export const useShelf = defineStore('shelf', () => {
  const job = useJob()
  const view = useView()
  const state = shallowRef<KeptState>({ kind: 'nothing' })
  const current = shallowRef<Current>()
  const query = ref('')
  /** Whether the query is a code of a paper. */
  const coded = ref(false)
  const shown = ref(false)
  const jobs = shallowRef<readonly Job[]>([])
  const removed = shallowRef<readonly Job[]>([])
  const versions = shallowRef<readonly VersionLine[]>([])
  const notes = shallowRef<readonly Note[]>([])
  /** Other pages that have this job on their sheets. */
  const others = ref(0)
  const currentId = computed(() => (current.value?.kind === 'job' ? current.value.id : undefined))

  /** What the note of damaged things tells of. */
  let damaged: readonly Damaged[] = []

  const session = new Session(job, {
    state: (now) => (state.value = unchanged(state.value, now)),
    dragging: () => view.pressed,
    current: (now) => {
      current.value = now
      void refresh()
    },
    changed: () => void refresh(),
    parted: (parting) => {
      say(partedNote(parting, () => session.open(parting.from.id)))
    },
    followed: (head) => {
      say(followedNote(head))
    },
    removed: (id, whether) => {
      if (id !== currentId.value) return
      if (whether) say(takenOffNote)
      else putAway('removed')
    },
    others: (count) => (others.value = count),
    leftBehind: (names) => {
      say(leftNote(names))
    },
    damaged: (more) => {
      const seen = notes.value.some(({ key }) => key === 'damaged') ? damaged : []
      const texts = new Set(more.map(({ text }) => text))
      damaged = [...seen.filter(({ text }) => !texts.has(text)), ...more]
      say(damagedNote(damaged))
    },
    trouble: sayTrouble,
  })

  function say(note: Note): void {
    notes.value = [...notes.value.filter(({ key }) => key !== note.key), note]
  }

  function putAway(key: Note['key']): void {
    notes.value = notes.value.filter((note) => note.key !== key)
  }

  /** Does what the shelf was asked for; what goes wrong is said and nothing is lost. */
  async function attempt<Result>(
    what: () => Promise<Result> | Result,
  ): Promise<Result | undefined> {
    try {
      return await what()
    } catch (error) {
      sayTrouble(error)
      return undefined
    }
  }

  function sayTrouble(error: unknown): void {
    say({ key: 'trouble', title: `The shelf cannot do it: ${storageErrorText(error)}` })
  }

  async function act(note: Note, { run }: Act): Promise<void> {
    putAway(note.key)
    await attempt(run)
    await refresh()
  }

  /** Reads the lists anew, while somebody looks at them. */
  async function refresh(): Promise<void> {
    if (!shown.value) return
    await attempt(async () => {
      const id = currentId.value
      const [all, off, lines] = await Promise.all([
        // a code is looked up, not searched for: the list stays
        session.shelf.list(coded.value ? '' : query.value),
        session.shelf.list('', true),
        id === undefined ? [] : session.shelf.versions(id),
      ])
      jobs.value = all
      removed.value = off
      versions.value = lines
    })
  }

  async function openExample(file: string): Promise<void> {
    const example = examples.find((candidate) => candidate.file === file)
    if (!example) return
    putAway('example')
    const text = await example.text.get().catch(() => undefined)
    if (text === undefined) {
      const why = example.text.fault.value
      say(exampleNote(example.title, why, () => openExample(file)))
      return
    }
    const read = readTrainText(text)
    if (!read.ok) return
    const sheet = { document: read.document, entries: {} }
    await session.openUntouched(sheet, file, `opened the example ${example.title}`)
  }

  async function openFile(file: File): Promise<void> {
    const read = await readFile(file)
    const name = harmlessLine(file.name)
    if (!read.ok) {
      job.refusal = { file: name, text: harmless(read.text), refused: read.refused }
      return
    }
    putAway('file')
    const arriving = { file: name, written: file.lastModified, document: read.document }
    const note = await attempt(() => takeFile(session, arriving))
    if (note) say(note)
  }

  /** True when it is on the sheet. */
  async function openJob(id: string): Promise<boolean> {
    return (await attempt(() => session.open(id))) ?? false
  }

  async function copy(id: string): Promise<void> {
    await attempt(async () => {
      const name = jobs.value.find((one) => one.id === id)?.name ?? ''
      await session.keeper.flush()
      await session.shelf.copy(id, await session.shelf.freeMark(name, 'copy'), Date.now())
      session.tabs.say({ kind: 'shelf' })
    })
    await refresh()
  }

  /** Takes a job off the shelf; the one on the sheet makes room for the newest of the others. */
  async function remove(id: string): Promise<void> {
    await attempt(async () => {
      await session.keeper.flush()
      await session.shelf.remove(id, Date.now())
      session.tabs.say({ kind: 'removed', job: id })
      if (id !== currentId.value) return
      if (!(await session.openNewest())) await openExample(firstExample)
    })
    await refresh()
  }

  async function putBack(id: string): Promise<void> {
    await attempt(() => session.shelf.restore(id))
    session.tabs.say({ kind: 'restored', job: id })
    await refresh()
  }

  /** Ends a job that was taken off the shelf, for good. */
  async function clear(id: string): Promise<void> {
    await attempt(() => session.shelf.clear(id))
    session.tabs.say({ kind: 'shelf' })
    await refresh()
  }

  /** Puts a version of this job on the sheet again, as an edit. */
  async function takeBack({ n, what, when }: VersionLine): Promise<void> {
    await attempt(() => session.takeBack(n, `back to ${dayOf(when, Date.now())}, ${what}`))
  }

  /** What the sheet comes to at the start: the job it had before, or an example. */
  async function start(): Promise<void> {
    const resumed = await attempt(() => session.resume())
    if (!resumed) await openExample(firstExample)
  }

  let seen = [job.document, job.entries, job.hand] as const
  watch(
    () => job.revision,
    () => {
      const now = [job.document, job.entries, job.hand] as const
      if (now.every((one, i) => one === seen[i])) return
      seen = now
      session.edited()
    },
    { flush: 'sync' },
  )
  watch(
    () => job.trying === undefined,
    () => void session.catchUp(),
  )
  useEventListener(window, 'pagehide', () => {
    session.leave()
  })
  useEventListener(document, 'visibilitychange', () => {
    if (document.hidden) void session.keeper.flush()
    else void attempt(() => session.catchUp())
  })
  // the browser itself asks before work is lost that cannot be kept
  useEventListener(window, 'beforeunload', (event) => {
    if (state.value.kind === 'cannot be kept') event.preventDefault()
  })
  watch(
    () => job.opened,
    () => {
      session.arrived(job.file)
    },
    { flush: 'sync' },
  )
  watch([query, coded, shown], () => void refresh())

  return {
    ...{ state, current, currentId, query, coded, shown, jobs, removed, versions, notes, others },
    ...{ start, openExample, openFile, openJob, copy, remove, putBack, clear, takeBack },
    ...{ act, putAway, retry: () => session.keeper.flush() },
    /** Keeps a photograph of the job on the sheet; answers its id. */
    photo: (blob: Blob) => {
      if (currentId.value === undefined) throw new Error('this job is not on the shelf yet')
      return keepPhoto(session.shelf, currentId.value, blob, Date.now())
    },
    /** Has something looked for among the jobs. */
    looked: <Found>(look: (shelf: Session['shelf']) => Promise<Found>) =>
      attempt(() => look(session.shelf)),
    documentOf: (id: string) => documentOf(session.shelf, id),
    version: (n: number) =>
      currentId.value === undefined ? undefined : session.shelf.version(currentId.value, n),
  }
})
