import type { Conflict } from '../infeasible/conflict/answer'
import type { HoldsTried, Remedy } from '../infeasible/remedies/answer'
import type {
  ImpossibleAnswer,
  InToleranceAnswer,
  PlanFigures,
  PlannedAnswer,
  StoppedAnswer,
  UnprovenAnswer,
} from '../plan/answer'
import type { SureStage } from '../chance/answer'
import type { RoundedAnswer } from '../rounding/answer'
import type { ReadyAnswer } from './ready/answer'
import type { StepsAnswer } from './steps/answer'

/** Why an impossible train is impossible, and what would help. */
export interface ReasonsAnswer {
  /** Sets that cannot be had together; each is in the way when those before it have given. */
  conflicts: Conflict[]
  remedies: Remedy[]
  holdsTried: HoldsTried
  /** What was not worked out to its end, because the work allowed for it ran out; left out where all was. */
  unfinished?: UnfinishedReason[]
}

/** Why nothing works, or what would help. */
export type UnfinishedReason = 'conflict' | 'remedies'

interface ReadyStage {
  /** Whether it may be carried out: soft foot, pipe strain, signs, closures. */
  ready?: ReadyAnswer
}

interface WorkStages extends ReadyStage {
  /** The order of work. */
  steps?: StepsAnswer
}

interface RoundingStage {
  /** Rounded to the shims of the store, where the train names them. */
  rounded?: RoundedAnswer
}

interface ReasonsStage {
  reasons?: ReasonsAnswer
}

export type PlannedWithStages = PlannedAnswer & RoundingStage & WorkStages & SureStage

/** What planning a train answers. Stages that its status has are left out where nobody asked for them. */
export type PlanAnswer =
  | PlannedWithStages
  | (InToleranceAnswer & WorkStages & SureStage)
  | (ImpossibleAnswer & ReasonsStage & ReadyStage & SureStage)
  | ((UnprovenAnswer | StoppedAnswer) & ReadyStage)

/** What was worked out beside a plan; undefined: not asked for, or not to be had. */
export type Stages = Undefinable<RoundingStage & WorkStages & ReasonsStage & SureStage>

type Undefinable<Value> = { readonly [Key in keyof Value]: Value[Key] | undefined }

/** A plan with the stages that its status has. */
export function withStages(
  plan: PlanFigures,
  { rounded, ready, steps, reasons, sure }: Stages,
): PlanAnswer {
  const isReady = ready && { ready }
  const isSure = sure && { sure }
  switch (plan.status) {
    case 'planned':
      return {
        ...plan,
        ...(rounded && { rounded }),
        ...isReady,
        ...(steps && { steps }),
        ...isSure,
      }
    case 'in-tolerance':
      return { ...plan, ...isReady, ...(steps && { steps }), ...isSure }
    case 'impossible':
      return { ...plan, ...(reasons && { reasons }), ...isReady, ...isSure }
    case 'unproven':
    case 'stopped':
      return { ...plan, ...isReady }
  }
}
