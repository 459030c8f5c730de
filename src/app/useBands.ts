import { computed, shallowRef, useTemplateRef, type ComponentPublicInstance, type Ref } from 'vue'
import type { Chart, Extent } from '../engine/scene/chart'
import { couplingsScene } from '../engine/scene/couplingCards'
import { feetScene, type FeetScene } from '../engine/scene/footCards'
import { chartBand, trainScene, widthFor } from '../engine/scene/sheet'
import type { Train } from '../engine/train/model'
import type { Drawing } from '../worker/messages'
import { usePlan } from './stores/plan'
import { useView } from './stores/view'
import { useFollowing } from './useFollowing'

interface ChartProps {
  readonly train: Train
  readonly chart: Chart
  readonly zero: string
  readonly width: number
}

interface FeetProps {
  readonly train: Train
  readonly feet: FeetScene
  readonly width: number
  readonly planned: boolean
}

/**
 * What the bands show of a drawing, each on its own, so that one out of the window need not follow a hand.
 * Whoever uses it draws them with the refs "riseBand", "sideBand", "feetBand" and "couplingsBand".
 * @param room width of the drawn part of the bands (px)
 */
export function useBands(drawing: () => Drawing | undefined, room: Readonly<Ref<number>>) {
  const plan = usePlan()
  const view = useView()
  const { following, dragged } = useFollowing(drawing)

  const train = computed(() => drawing() && plan.train)
  /** The train on its x scale, which all bands share. */
  const drawn = computed(() =>
    train.value && room.value > 0
      ? trainScene(train.value, widthFor(train.value, room.value))
      : undefined,
  )
  const scene = computed(() => {
    const now = drawing()
    if (!now || !train.value || !drawn.value) return undefined
    const { answer, figures } = now
    const { width, scale, above } = drawn.value
    return { train: train.value, answer, figures, width, scale, above }
  })

  /** Scales of rise and side, kept while a hand carries a shaft: what it holds stays under it. */
  const kept = shallowRef<Partial<Record<'rise' | 'side', Extent | undefined>>>({})
  function gripped(held: boolean): void {
    kept.value = held ? { rise: rise.value?.chart.extent, side: side.value?.chart.extent } : {}
  }
  /** @param before as drawn last: while anything else is dragged a scale only grows, so that one sees what moves */
  function chartOf(way: 'rise' | 'side', before: ChartProps | undefined): ChartProps | undefined {
    if (!scene.value) return undefined
    const { train: of, figures, width, scale } = scene.value
    const chart = chartBand(of, figures, scale, {
      way,
      chosen: view.chosen,
      extent: kept.value[way],
      least: dragged.value ? before?.chart.extent : undefined,
    })
    return { train: of, chart, zero: figures.zero, width }
  }

  const place = (name: string) => useTemplateRef<ComponentPublicInstance>(`${name}Band`)
  const rise = following<ChartProps | undefined>(place('rise'), (before) => chartOf('rise', before))
  const side = following<ChartProps | undefined>(place('side'), (before) => chartOf('side', before))
  const feet = following<FeetProps | undefined>(place('feet'), (before) => {
    if (!scene.value) return undefined
    const { train: of, answer, width, scale, above } = scene.value
    const planned = answer.feet !== undefined
    const most = dragged.value ? before?.feet.scales : undefined
    return { train: of, feet: feetScene(of, answer, scale, above, most), width, planned }
  })
  const couplings = following(place('couplings'), () => {
    if (!scene.value) return undefined
    const { train: of, answer, figures, width, scale } = scene.value
    return { couplings: couplingsScene(of, answer, figures, scale), width, share: answer.share }
  })

  return { train, drawn, rise, side, feet, couplings, gripped }
}
