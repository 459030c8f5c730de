import { computed, ref, shallowRef, watch } from 'vue'
import { nextStep } from '../../document/edits/nextStep'
import { placeWords } from '../../document/placeWords'
import { readTrain } from '../../document/readTrain'
import type { TrainDocument } from '../../document/schema'
import { faultWords } from '../../document/words/faultWords'
import { progressWords } from '../../document/words/progressWords'
import { bySite, trainState, type TrainState } from '../../engine/fieldwork/site/trainState'
import { isoToday, type Day } from '../../mechanics/day'
import { called } from '../shelf/records'
import { useShelf } from '../stores/shelf'

/** A train with the job that it stands in. */
type Stands = TrainState & { readonly id: string }

interface Unread {
  readonly id: string
  readonly name: string
  readonly why: string
}

/** How a train stands, or what keeps it from being told, as its sheet says it. */
function standOf(document: TrainDocument, today: Day): TrainState | { readonly why: string } {
  const read = readTrain(document)
  if (read.ok) return trainState(read, today)
  const next = nextStep(document)
  if (next) return { why: progressWords(next) }
  const [first] = read.refused
  return { why: first ? `${placeWords(document, first.at)}: ${faultWords(document, first)}` : '' }
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
      const sheet = await shelf.documentOf(job.id)
      if (mine !== turn) return
      const name = called(job)
      const stand = 'why' in sheet ? sheet : standOf(sheet.document, today)
      if ('why' in stand) failed.push({ id: job.id, name, why: stand.why })
      else read.push({ ...stand, id: job.id, name })
      await new Promise((resolve) => setTimeout(resolve))
      if (mine !== turn) return
    }
    stands.value = read
    unread.value = failed
    looking.value = false
  }
  watch(() => shelf.jobs, look, { immediate: true })

  const sites = computed(() => bySite(stands.value))

  return { sites, unread, today, looking }
}
