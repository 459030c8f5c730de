import { shareAskedWords } from '../language/askedShare'
import {
  computed,
  ref,
  shallowRef,
  useTemplateRef,
  type ComponentPublicInstance,
  type Ref,
} from 'vue'
import { hasMoves } from '../engine/plan/moves'
import type { Chart, Extent } from '../scene/chart'
import { couplingsScene, tablesOf } from '../scene/couplingCards'
import { feetScene, type FeetScene } from '../scene/footCards'
import { unchanged } from '../scene/unchanged'
import { chartBand, trainScene, widthFor } from '../scene/sheet'
import type { Train } from '../mechanics/train'
import { useFollowing } from './stores/following'
import { useView } from './stores/view'

type Way = 'rise' | 'side'

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
 * What the bands show, each on its own, so that one out of the window need not follow a hand.
 * Whoever uses it draws them with the refs "riseBand", "sideBand", "feetBand" and "couplingsBand".
 * @param room width of the drawn part of the bands (px)
 */
export function useBands(room: Readonly<Ref<number>>) {
  const follow = useFollowing()
  const view = useView()
  const train = computed(() => follow.shown?.train)
  /** The train on its x scale, which all bands share. */
  const drawn = computed(() =>
    train.value && room.value > 0
      ? trainScene(train.value, widthFor(train.value, room.value))
      : undefined,
  )

  const tables = computed(() => train.value && tablesOf(train.value))

  /** Scales of rise and side, kept while a hand carries a shaft: what it holds stays under it. */
  const kept = shallowRef<Partial<Record<Way, Extent | undefined>>>({})
  /** The chart in which a hand holds a shaft. */
  const held = ref<Way>()
  function gripped(way: Way, holds: boolean): void {
    held.value = holds ? way : undefined
    kept.value = holds ? { rise: rise.value?.chart.extent, side: side.value?.chart.extent } : {}
  }
  const place = (name: string) => useTemplateRef<ComponentPublicInstance>(`${name}Band`)
  /** While anything else than a shaft is dragged a scale only grows, so that one sees what moves. */
  const chartOf = (way: Way) =>
    follow.following<ChartProps | undefined>(
      place(way),
      ({ train: of, drawing: { figures } }, before) => {
        if (!drawn.value) return undefined
        const { scale, width } = drawn.value
        const chart = chartBand(of, figures, scale, {
          way,
          chosen: view.chosen,
          extent: kept.value[way],
          least: follow.dragged ? before?.chart.extent : undefined,
        })
        return { train: of, chart, zero: figures.zero, width }
      },
      () => held.value === way,
    )
  const [rise, side] = [chartOf('rise'), chartOf('side')]
  const feetBand = place('feet')
  /** Cards of either side have their own turn. */
  const feetOf = () =>
    follow.following<FeetProps | undefined>(
      feetBand,
      ({ train: of, drawing: { answer } }, before) => {
        if (!drawn.value) return undefined
        const { scale, width, above } = drawn.value
        const most = follow.dragged ? before?.feet.scales : undefined
        const scene = feetScene(of, answer, scale, above, most)
        return { train: of, feet: scene, width, planned: hasMoves(answer) }
      },
    )
  const [far, near] = [feetOf(), feetOf()]
  const feet = computed<FeetProps | undefined>((before) =>
    far.value && near.value
      ? unchanged(before, { ...near.value, feet: { ...near.value.feet, far: far.value.feet.far } })
      : undefined,
  )
  const couplings = follow.following(
    place('couplings'),
    ({ train: of, drawing: { answer, figures } }) => {
      if (!drawn.value) return undefined
      const { scale, width } = drawn.value
      return {
        couplings: couplingsScene(
          of,
          answer,
          figures,
          scale,
          of === train.value ? tables.value : undefined,
        ),
        width,
        share: answer.share,
        asked: shareAskedWords(of.plan),
      }
    },
  )

  return { train, drawn, parts: { rise, side, feet, couplings }, gripped }
}
