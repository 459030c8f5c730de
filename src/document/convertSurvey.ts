import type { Survey, SurveyPoint } from '../mechanics/survey'
import type { MachineDocument, SurveyDocument } from './schema'

/** Standard uncertainty of a surveyed place where the file gives none (um); common practice, no source. */
export const usualSurveyU = 25

/** A survey as the engine has it, from a document in engine units; machines are found by id. */
export function convertSurvey(
  survey: SurveyDocument,
  index: number,
  machines: readonly MachineDocument[],
): Survey {
  const { id, name, method, u, use = true, joins = false, points } = survey
  return {
    id,
    name: name ?? `survey ${index + 1}`,
    place: `surveys[${index}]`,
    ...(method !== undefined && { method }),
    used: use,
    joins: use && joins,
    points: points.map((point): SurveyPoint => ({
      machine: machines.findIndex((machine) => machine.id === point.machine),
      x: point.x,
      ...(point.axis !== undefined && { axis: point.axis }),
      ...(point.z !== undefined && { z: point.z }),
      ...(point.y !== undefined && { y: point.y }),
      u: point.u ?? u ?? usualSurveyU,
      uGiven: point.u !== undefined || u !== undefined,
    })),
  }
}
