import { computed, ref, shallowRef, watch } from 'vue'
import { readTrainText } from '../../document/readTrain'
import { bySite, trainState, type TrainState } from '../../engine/fieldwork/site/trainState'
import { isoToday } from '../../mechanics/day'
import { called } from '../shelf/records'
import { useShelf } from '../stores/shelf'

interface Stands {
  readonly id: string
  readonly state: TrainState
}

interface Unread {
  readonly id: string
  readonly name: string
  readonly why: string
}

/** How the trains that the shelf lists stand today; read one after the other, so that typing never waits. */
export function useTrainStates() {
  const shelf = useShelf()
  const today = isoToday(new Date())
  const stands = shallowRef<readonly Stands[]>([])
  const unread = shallowRef<readonly Unread[]>([])
  const looking = ref(false)
  /** A list that is looked at while a newer one comes is given up. */
  let turn = 0

  async function look(): Promise<void> {
    const mine = ++turn
    looking.value = true
    const read: Stands[] = []
    const failed: Unread[] = []
    for (const job of shelf.jobs) {
      const text = await shelf.textOf(job.id)
      if (mine !== turn) return
      const name = called(job)
      const train = text === undefined ? undefined : readTrainText(text)
      if (train?.ok) {
        const state = trainState(train, today)
        read.push({ id: job.id, state: { ...state, name } })
      } else {
        const [first] = train?.refused ?? []
        const why = first ? `${first.at}: ${first.why}` : 'its sheet is not there'
        failed.push({ id: job.id, name, why })
      }
      await new Promise((resolve) => setTimeout(resolve))
      if (mine !== turn) return
    }
    stands.value = read
    unread.value = failed
    looking.value = false
  }
  watch(() => shelf.jobs, look, { immediate: true })

  const sites = computed((): [site: string, here: readonly Stands[]][] =>
    bySite(stands.value.map(({ state }) => state)).map(([site, here]) => [
      site,
      here.flatMap((state) => stands.value.find((one) => one.state === state) ?? []),
    ]),
  )

  return { sites, unread, today, looking }
}
