import { defineStore } from 'pinia'
import { computed, ref, watch } from 'vue'
import { withValue } from '../../document/place'
import { placeOf } from '../../document/refusal'
import { foundLines } from '../../mechanics/uncertainty/foundLines'
import { stopAsDone, type StopAsDone } from '../../engine/fieldwork/loop/stopAsDone'
import { newReadings } from '../../engine/fieldwork/loop/standingReadings'
import { typedSet, typedValue, withReading } from '../../engine/fieldwork/loop/typedReadings'
import { gapVerdict } from '../../engine/fieldwork/loop/gapVerdict'
import { typedGap, withGap } from '../../engine/fieldwork/loop/typedGaps'
import { stopVerdict, type StopVerdict } from '../../engine/fieldwork/loop/stopVerdict'
import {
  judgeReading,
  type StopGroup,
  type StopReading,
} from '../../engine/fieldwork/steps/stopReadings'
import { useJob } from './job'
import { useMachine } from './machine'
import { useWork } from './work'

/** A reading of the stop point in hand with what was typed of it. */
export interface TypedReading {
  readonly group: StopGroup
  readonly reading: StopReading
  readonly value: number | undefined
  /** "inside", "outside by 12 um, above"; nothing before it is typed. */
  readonly judged: ReturnType<typeof judgeReading> | undefined
}

/** What is read at the stop point in hand: typed there, judged as it is typed, kept with the job. */
export const useStopPoint = defineStore('stopPoint', () => {
  const job = useJob()
  const machine = useMachine()
  const work = useWork()

  const card = computed(() => (machine.card?.kind === 'read' ? machine.card : undefined))
  const step = computed(() => card.value?.instruction.id ?? '')
  const again = computed(() => work.record.again ?? [])
  const gaps = computed(() => work.record.gaps ?? [])
  /** What is read there: as the work before it was written down, else as it was planned. */
  const stop = computed<StopAsDone>(() => {
    const one = card.value
    const { train } = machine
    if (!one || !train) return { groups: [], asDone: false }
    const steps = machine.steps?.steps ?? []
    return stopAsDone(train, foundLines(train), steps, machine.cards, one, machine.done)
  })
  const groups = computed(() => stop.value.groups)
  const asDone = computed(() => stop.value.asDone)
  const readings = computed<readonly TypedReading[]>(() =>
    groups.value.flatMap((group) =>
      group.readings.map((reading): TypedReading => {
        const value = valueOf(group, reading)
        const judged = value === undefined ? undefined : judgeReading(reading, value)
        return { group, reading, value, judged }
      }),
    ),
  )
  /** Those that somebody has to type: not where a dial is set to 0. */
  const asked = computed(() => readings.value.filter(({ reading }) => reading.band))
  /** The reading that is being typed: the one chosen, else the first that is missing. */
  const chosen = ref('')
  const at = computed(() => {
    const kept = asked.value.findIndex(({ reading }) => reading.key === chosen.value)
    if (kept >= 0) return kept
    const open = asked.value.findIndex(({ value }) => value === undefined)
    return open >= 0 ? open : 0
  })
  const hand = computed<TypedReading | undefined>(() => asked.value[at.value])
  function choose(key: string): void {
    chosen.value = key
  }
  function go(by: 1 | -1): void {
    const next = asked.value[at.value + by]
    if (next) choose(next.reading.key)
  }
  // keys of one stop point are those of another
  watch(step, () => {
    chosen.value = ''
  })

  const whole = computed(() => asked.value.every(({ value }) => value !== undefined))

  /** What each coupling that is read whole says of its tolerance in every state. */
  const verdicts = computed<readonly StopVerdict[]>(() => {
    const one = card.value
    const { train } = machine
    const steps = machine.steps?.steps ?? []
    if (!one || !train) return []
    const ids = [...new Set(one.groups.flatMap(({ coupling }) => coupling ?? []))]
    return ids.flatMap((id) => {
      const groups = one.groups.filter(({ coupling, set }) => coupling === id && set !== undefined)
      if (groups.length === 0) return []
      const measured = groups.flatMap((group) => {
        const entry = typedSet(again.value, step.value, group)
        return entry ? newReadings(entry) : []
      })
      if (measured.length < groups.length) return []
      return stopVerdict(train, steps, one.instruction.number - 1, id, measured) ?? []
    })
  })

  /** What each gap that was typed says of its tolerance in every state. */
  const gapVerdicts = computed<readonly StopVerdict[]>(() => {
    const one = card.value
    const { train } = machine
    const steps = machine.steps?.steps ?? []
    if (!one || !train) return []
    return one.groups.flatMap(({ coupling, set }) => {
      if (coupling === undefined || set !== undefined) return []
      const gap = typedGap(gaps.value, step.value, coupling)
      if (gap === undefined) return []
      return gapVerdict(train, steps, one.instruction.number - 1, coupling, gap) ?? []
    })
  })

  function valueOf(group: StopGroup, reading: StopReading): number | undefined {
    const { at } = reading
    if (at.kind === 'gap') return typedGap(gaps.value, step.value, group.coupling ?? '')
    return at.kind === 'stays'
      ? card.value &&
          machine.entryOf(card.value)?.stays?.find(({ where }) => where === at.where)?.shows
      : typedValue(again.value, step.value, group, reading)
  }

  /** Where a reading is kept, once it is typed. */
  function placesOf({ group, reading: { at } }: TypedReading): string[] {
    if (at.kind === 'stays') {
      const stays = card.value && machine.entryOf(card.value)?.stays
      const index = stays?.findIndex(({ where }) => where === at.where) ?? -1
      return card.value && index >= 0 ? machine.placesOf(card.value, 'stays', index, 'shows') : []
    }
    if (at.kind === 'gap') {
      const index = gaps.value.findIndex(
        (entry) => entry.step === step.value && entry.coupling === group.coupling,
      )
      return [placeOf(['record', 'gaps', index, 'gap'])]
    }
    const entry = typedSet(again.value, step.value, group)
    const path = ['record', 'again', entry ? again.value.indexOf(entry) : -1]
    if (at.kind === 'line') return [placeOf([...path, at.what, at.way])]
    const index = entry?.readings?.findIndex(([hour]) => hour === at.hour) ?? -1
    return [placeOf([...path, 'readings', index, 1])]
  }

  /** Keeps one reading in the document's unit, or takes it away. */
  async function type({ group, reading }: TypedReading, value: number | undefined): Promise<void> {
    const one = card.value
    if (!one) return
    const { at, key, name } = reading
    choose(key) // the first that is missing would be another as soon as this is typed
    if (at.kind === 'stays') {
      const rest = (machine.entryOf(one)?.stays ?? []).filter(({ where }) => where !== at.where)
      const stays = value === undefined ? rest : [...rest, { where: at.where, shows: value }]
      await machine.write(one, { stays }, 'read the dials at')
      return
    }
    if (at.kind === 'gap') {
      const next = withGap(gaps.value, step.value, group.coupling ?? '', value)
      await job.edit(
        `at the machine: measured ${group.name}`,
        ({ document }) => ({ document: withValue(document, ['record', 'gaps'], next) }),
        { key: `gap ${step.value} ${key}` },
      )
      return
    }
    await job.edit(
      `at the machine: read ${group.name}, ${name}`,
      ({ document }) => ({
        document: withValue(
          document,
          ['record', 'again'],
          withReading(again.value, one.instruction.step, group, reading, value),
        ),
      }),
      { key: `again ${step.value} ${key}` },
    )
  }

  return {
    ...{ readings, asked, asDone, at, hand, whole, verdicts, gapVerdicts },
    ...{ placesOf, choose, go, type },
  }
})
