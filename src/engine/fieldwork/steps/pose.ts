import { tidy } from '../../../language/tidy'
import { micrometresPer, toFine } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import type { BodyAnswer } from '../../plan/answer'

/**
 * Motions of all bodies from an answer's rows, with the digits that are told of them: the steps then add up
 * to what people and programs read of the plan.
 */
export function motionsFrom(
  train: Train,
  rows: readonly Pick<BodyAnswer, 'id' | 'move'>[],
): Motion[] {
  const byId = new Map(rows.map(({ id, move }) => [id, move]))
  return train.bodies.map(({ id }) => {
    const move = byId.get(id)
    return move ? toldMotion(train, move) : noMotion
  })
}

function toldMotion({ units }: Train, { tx, ty, tz, sy, sz, roll }: Motion): Motion {
  const fine = (value: number) => tidy(toFine(value, units)) * micrometresPer[units.fine]
  return { tx: fine(tx), ty: fine(ty), tz: fine(tz), sy: tidy(sy), sz: tidy(sz), roll: tidy(roll) }
}
