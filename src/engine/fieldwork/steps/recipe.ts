import { recipeText, shimText } from '../../../language/recipes'
import type { Train } from '../../../mechanics/train'
import { tidy } from '../../../language/tidy'
import type { PackAnswer } from '../../rounding/answer'

type PackChange = Pick<PackAnswer, 'change' | 'packAfter' | 'out' | 'use'>

/** The recipe of one pack of an answer. */
export function packRecipe(train: Train, { change, packAfter, out, use }: PackChange): string {
  return recipeText(train, {
    change: tidy(change),
    ...(packAfter !== undefined && { packAfter: tidy(packAfter) }),
    out: out.map(tidy),
    use,
  })
}

/** The same beside the amount of the change: nothing where it would say that amount again. */
export function recipeBeside(train: Train, pack: PackChange): string | undefined {
  const recipe = packRecipe(train, pack)
  return recipe === shimText(train, tidy(pack.change)) ? undefined : recipe
}
