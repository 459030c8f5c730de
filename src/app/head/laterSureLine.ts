import { laterComponent } from '../parts/laterComponent'

/** The line that says how sure the plan is, which is worked out after the plan. */
export const LaterSureLine = laterComponent('How sure the plan is', () => import('./SureLine.vue'))
