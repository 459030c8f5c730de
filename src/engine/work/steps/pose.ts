import { micrometresPer, toFine } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import type { BodyAnswer } from '../../plan/answer'
import { tidy } from '../../../language/tidy'
import type { MoveAnswer } from './answer'

/** A motion in the document's units: fine and mrad. */
export function moveAnswer(train: Train, { tx, ty, tz, sy, sz, roll }: Motion): MoveAnswer {
  const fine = (value: number) => tidy(toFine(value, train.units))
  return { tx: fine(tx), ty: fine(ty), tz: fine(tz), sy: tidy(sy), sz: tidy(sz), roll: tidy(roll) }
}

/** A motion in the document's units back in um and mrad. */
export function motionFrom(train: Train, { tx, ty, tz, sy, sz, roll }: MoveAnswer): Motion {
  const per = micrometresPer[train.units.fine]
  return { tx: tx * per, ty: ty * per, tz: tz * per, sy, sz, roll }
}

/** Motions of all bodies from an answer's rows. */
export function motionsFrom(
  train: Train,
  rows: readonly Pick<BodyAnswer, 'id' | 'move'>[],
): Motion[] {
  const byId = new Map(rows.map(({ id, move }) => [id, move]))
  return train.bodies.map(({ id }) => {
    const move = byId.get(id)
    return move ? motionFrom(train, move) : noMotion
  })
}
