import { fineText } from '../../language/amounts'
import { engagedSaid } from '../../language/engagedWords'
import { inSentence } from '../../language/names'
import type { Coupling, Train } from '../../mechanics/train'
import type { Finding } from './answer'
import { aimInWords } from './settingWords'

/** In which states a clutch is engaged, what is wanted of couplings with a reason, and how far their halves run out: what goes with the bolts of a rigid one. */
export function coupledSaid(train: Train, coupling: Coupling): string[] {
  const engaged = engagedSaid(train, coupling)
  return [
    ...(engaged === '' ? [] : [`${coupling.name}: ${engaged}`]),
    ...aimsSaid(train, coupling),
    ...runOutSaid(train, coupling),
  ]
}

/** Aims that were given a reason, each line once with the states in which it is wanted. */
function aimsSaid(train: Train, coupling: Coupling): string[] {
  const said = new Map<string, string[]>()
  for (const { id, name } of train.states) {
    const aim = coupling.aim.get(id)
    if (aim?.why === undefined || aim.why.trim() === '') continue
    const words = `${aimInWords(train, coupling, aim)} (${aim.why})`
    said.set(words, [...(said.get(words) ?? []), name])
  }
  return [...said].map(
    ([words, states]) =>
      `${coupling.name}: wanted ${states.length === train.states.length ? 'in every state' : `in ${states.join(', ')}`}, ${words}`,
  )
}

/** Rim and face of each half that was measured. */
function measured(train: Train, { runOut, left, right }: Coupling) {
  return (['left', 'right'] as const).flatMap((end) =>
    (['rim', 'face'] as const).flatMap((what) => {
      const value = runOut?.[end][what]
      const name = inSentence(train.machines[end === 'left' ? left : right]?.name ?? '')
      return value === undefined ? [] : [{ what, value, half: `the half of ${name}` }]
    }),
  )
}

function runOutSaid(train: Train, coupling: Coupling): string[] {
  const all = measured(train, coupling)
  if (all.length === 0) return []
  const { limit, basis } = coupling.runOut ?? {}
  const text = (value: number) => fineText(value, train.units)
  const against =
    limit === undefined
      ? 'no limit entered'
      : `at most ${text(limit)}${basis === undefined ? '' : ` (${basis})`}`
  return [
    `${coupling.name}: run-out over a full turn ${all
      .map(({ what, value, half }) => `${text(value)} at the ${what} of ${half}`)
      .join(', ')}; ${against}`,
  ]
}

/** Halves that run out by more than is allowed. */
export const runOutFindings = (train: Train, coupling: Coupling): Finding[] => {
  const limit = coupling.runOut?.limit
  if (limit === undefined) return []
  return measured(train, coupling).flatMap(({ what, value, half }) =>
    value <= limit
      ? []
      : [
          {
            where: `${coupling.place}.runOut`,
            what: `${coupling.name}: ${half} runs out by ${fineText(value, train.units)} at its ${what}, over ${fineText(limit, train.units)}: put it right before the coupling is judged; readings with that half alone turned, and a rigid coupling bolted up, have it in them`,
          },
        ],
  )
}
