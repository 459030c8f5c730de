import { useLocalStorage } from '@vueuse/core'
import { defineStore } from 'pinia'
import { computed, ref, watch } from 'vue'
import { withValue, type Path } from '../../document/place'
import { placeOf } from '../../document/refusal'
import type { FootStepCard, WorkCard } from '../../engine/fieldwork/steps/cards'
import { stands, type Stand } from '../../engine/fieldwork/steps/stand'
import { entryOf as ofCard, isOfCard } from '../../engine/fieldwork/loop/stepsDone'
import { inSentence } from '../../language/names'
import type { WorkDone } from '../../document/work'
import { useJob } from './job'
import { usePlan } from './plan'
import { useWork } from './work'

/** The work beside the machine: which card, where one stands, and what was done. All of it survives the power going off. */
export const useMachine = defineStore('machine', () => {
  const job = useJob()
  const plan = usePlan()
  const work = useWork()
  const face = useLocalStorage<'sheet' | 'machine'>('holdfast-face', 'sheet')
  const at = useLocalStorage('holdfast-card', '')
  const stand = useLocalStorage<Stand>('holdfast-stand', 'three')
  /** Whether somebody said where he stands: asked once, then folded away. */
  const stood = useLocalStorage('holdfast-stood', false)
  if (!stands.includes(stand.value)) stand.value = 'three'

  const train = computed(() => plan.train)
  const steps = computed(() => work.work?.steps)
  const cards = computed(() => work.cards)
  const done = computed(() => work.record.work ?? [])
  const index = computed(() => {
    const kept = cards.value.findIndex(({ id }) => id === at.value)
    if (kept >= 0) return kept
    const open = cards.value.findIndex((card) => !isDone(card))
    return open >= 0 ? open : cards.value.length - 1
  })
  const card = computed(() => cards.value[index.value])

  /** The number of a step that is to be shown as soon as the steps of what stands on the sheet are there. */
  const wanted = ref<number>()
  watch(
    () => job.opened,
    () => {
      wanted.value = undefined
    },
    { flush: 'sync' },
  )
  watch([wanted, cards, () => work.old], () => {
    if (wanted.value === undefined || work.old || cards.value.length === 0) return
    const own = cards.value.filter(({ instruction }) => instruction.number === wanted.value)
    at.value = (own.find((one) => !isDone(one)) ?? own[0])?.id ?? ''
    wanted.value = undefined
  })
  function comeToStep(number: number): void {
    wanted.value = number
    face.value = 'machine'
  }

  const entryOf = (one: WorkCard): WorkDone | undefined => ofCard(one, done.value)
  /** Where a number of a card is kept, once it is; a place for each foot of a row that slides together. */
  const placesOf = (one: WorkCard, ...key: Path): string[] =>
    done.value.flatMap((entry, i) =>
      isOfCard(one, entry) ? [placeOf(['record', 'work', i, ...key])] : [],
    )
  function isDone(one: WorkCard): boolean {
    return entryOf(one)?.done === true
  }

  /** Cards of the step in hand. */
  const ofStep = computed(() =>
    cards.value.filter((one) => one.instruction.id === card.value?.instruction.id),
  )

  /** Writes down what came of a card; every foot of a row that slides together has its own line. */
  async function write(one: WorkCard, change: Partial<WorkDone>, name: string): Promise<void> {
    const step = one.instruction.id
    const feet: (string | undefined)[] = one.kind === 'foot' ? [...one.feet] : [undefined]
    const was = (foot: string | undefined) =>
      done.value.find((entry) => entry.step === step && entry.foot === foot)
    const lines = feet.map((foot, i): WorkDone => {
      const { photos, note, ...rest } = change
      return {
        step,
        body: one.instruction.body,
        done: false,
        ...was(foot),
        ...(foot !== undefined && { foot }),
        ...rest,
        ...(i === 0 && photos && { photos }),
        ...(i === 0 && note !== undefined && { note }),
        when: new Date().toISOString(),
      }
    })
    // each stays where it was: what somebody said of a number is kept by its place
    const lineOf = (entry: WorkDone) =>
      entry.step === step ? lines.find(({ foot }) => foot === entry.foot) : undefined
    const next = [
      ...done.value.map((entry) => lineOf(entry) ?? entry),
      ...lines.filter(({ foot }) => was(foot) === undefined),
    ]
    await job.edit(
      `at the machine: ${name} ${placeName(one)}`,
      (state) => ({ document: withValue(state.document, ['record', 'work'], next) }),
      { key: `work ${one.id} ${name}` },
    )
  }

  function placeName(one: WorkCard): string {
    const feet = one.kind === 'foot' ? ` foot ${one.feet.join(', ')}` : ''
    return `${inSentence(one.instruction.name)}${feet}`
  }

  function go(by: 1 | -1): void {
    const next = cards.value[index.value + by]
    if (next) at.value = next.id
  }

  /** What a foot got, with its sign, from what was typed as an amount. */
  const actual = (one: FootStepCard): number | undefined => entryOf(one)?.[one.foot.way]

  return {
    ...{ face, at, stand, stood, train, steps, cards, card, ofStep, index, done },
    ...{ entryOf, placesOf, isDone, write, placeName, go, comeToStep, actual },
  }
})
