import { handAnswer, type HandAnswer } from '../../engine/studies/hand/handAnswer'
import { handMotions, type HandPlan } from '../../engine/studies/hand/handPlan'
import { figuresAt, type Figures, type StandingFigures } from '../../scene/figures'
import type { Drawing } from '../../worker/messages'

/**
 * A hand plan as the sheet draws it, worked out as far as somebody looks: while a hand drags, its lines are
 * looked at in every frame and the rest less often.
 */
export class HandDrawing {
  readonly train: Drawing['train']
  private readonly hand: HandPlan
  private readonly best: Drawing
  private readonly standing: StandingFigures
  private answered: HandAnswer | undefined
  private drawn: Figures | undefined

  /**
   * @param best the plan it is compared with
   * @param standing of its train
   */
  constructor(hand: HandPlan, best: Drawing, standing: StandingFigures) {
    this.train = best.train
    this.hand = hand
    this.best = best
    this.standing = standing
  }

  get answer(): HandAnswer {
    return (this.answered ??= handAnswer(
      this.train,
      this.standing.found,
      this.hand,
      this.best.answer,
    ))
  }

  get sentence(): Drawing['sentence'] {
    return this.answer.sentence
  }

  get figures(): Figures {
    return (this.drawn ??= figuresAt(this.train, handMotions(this.train, this.hand), this.standing))
  }
}
