import { Analyses } from './analysis'
import { ShareSweepPlanner } from './shareSweep'
import { studiedTrains } from './studiedTrains'

// Everything that is asked of a planner beside plans. It is fetched when it is first asked for: a plan can be read without it.
export { studiedTrains } from './studiedTrains'
export const alongPlanner = new ShareSweepPlanner()
export const analyses = new Analyses(studiedTrains)
