import { shown, type Refusal } from './refusal'
import type { TrainDocument } from './schema'
import { spoolRefusals } from './spoolRefusals'

/**
 * What a well-shaped outage may still get wrong. A coupling or a hot check that the file no longer has is history and no
 * fault.
 */
export const outageRefusals = ({ outages = [] }: TrainDocument): Refusal[] =>
  outages.flatMap(({ couplings }, i) =>
    couplings.flatMap(({ coupling, planes: [p, q], found, left }, c): Refusal[] => {
      const place = `outages[${i}].couplings[${c}]`
      const ends = { left: { plane: p }, right: { plane: q } }
      return [
        ...(couplings.findIndex((other) => other.coupling === coupling) < c
          ? [
              {
                at: `${place}.coupling`,
                why: `${shown(coupling)} is given already: put all its readings into one entry`,
              },
            ]
          : []),
        ...(q < p
          ? [
              {
                at: `${place}.planes`,
                why: `${shown([p, q])} is the wrong way round: give the left plane first, ${q} to ${p}`,
              },
            ]
          : []),
        ...(found === undefined && left === undefined
          ? [{ at: place, why: 'nothing was read: give found, or left, or leave the coupling out' }]
          : []),
        ...spoolRefusals(found ?? [], ends, place),
        ...spoolRefusals(left ?? [], ends, place).map(({ at, why }) => ({
          at: at.replace(`${place}.found`, `${place}.left`),
          why,
        })),
      ]
    }),
  )
