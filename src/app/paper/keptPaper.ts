import { withStages } from '../../engine/fieldwork/answer'
import type { PaperSettings } from '../../paper/paperOf'
import type { Paper } from '../../paper/page'
import { useJob } from '../stores/job'
import { usePlan } from '../stores/plan'
import { useAnalysis } from '../stores/analysis'
import { useWork } from '../stores/work'

type Laying = Pick<typeof import('./laidPaper'), 'paperOf' | 'quickPaper'>

/** The work sheet from what the page has worked out already, for a print that cannot wait. */
export function useKeptPaper() {
  const job = useJob()
  const plan = usePlan()
  const work = useWork()
  const analysis = useAnalysis()

  /** The whole sheet, word for word what is laid out when it is asked for; undefined while anything of it is still worked out. */
  function whole({ paperOf }: Pick<Laying, 'paperOf'>, settings: PaperSettings): Paper | undefined {
    const { document, planned } = job
    const { drawing, working } = plan
    if (!document || document !== planned || job.stale || working || !drawing) return undefined
    if (work.old || work.failure !== '' || !work.work || analysis.stale) return undefined
    const { holds, reasons } = analysis
    const { sure } = work
    if (!sure?.whole) return undefined
    const { train, answer } = drawing
    if (!holds?.finished || (answer.status === 'impossible' && !reasons)) return undefined
    if (answer.status === 'stopped' || answer.status === 'unproven') return undefined
    if (answer.status === 'planned' && !answer.prices) return undefined
    return paperOf(
      {
        document,
        train,
        answer: withStages(answer, { ...work.work, reasons, sure: sure.stage }),
        holds: holds.list,
      },
      settings,
    )
  }

  /** The whole sheet, or what there is of it, marked on every page. */
  function atOnce(laying: Laying, settings: PaperSettings): Paper | undefined {
    const { document } = job
    const { drawing } = plan
    if (!document || !drawing) return undefined
    return whole(laying, settings) ?? laying.quickPaper(document, drawing, settings)
  }

  return { whole, atOnce }
}
