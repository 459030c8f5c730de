import { shareText } from './amounts'
import type { PlanSettings } from '../mechanics/planSettings'

type Asked = Pick<PlanSettings, 'share' | 'asked'>

/** "asked for", or where it comes from when a chance is asked for and a smaller share reaches it. */
export const shareAskedWords = ({ share, asked = share }: Asked): string =>
  share < asked ? 'taken for the chance asked for' : 'asked for'

/** The share of tolerance that a plan keeps to: "70 % was asked for". */
export const shareAsked = (plan: Asked): string =>
  `${shareText(plan.share)} was ${shareAskedWords(plan)}`
