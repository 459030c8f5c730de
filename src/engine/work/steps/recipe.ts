import { recipeText, shimText } from '../../../language/recipes'
import type { Train } from '../../../mechanics/train'
import { micrometresPer } from '../../../mechanics/units'
import type { PackAnswer } from '../../rounding/answer'

type PackChange = Pick<PackAnswer, 'change' | 'packAfter' | 'out' | 'use'>

/** The recipe of one pack of an answer, which stands in the document's fine unit. */
export function packRecipe(train: Train, { change, packAfter, out, use }: PackChange): string {
  const fine = micrometresPer[train.units.fine]
  return recipeText(train, {
    change: change * fine,
    ...(packAfter !== undefined && { packAfter: packAfter * fine }),
    out: out.map((plate) => plate * fine),
    use: use.map((plate) => plate * fine),
  })
}

/** The same beside the amount of the change: nothing where it would say that amount again. */
export function recipeBeside(train: Train, pack: PackChange): string | undefined {
  const recipe = packRecipe(train, pack)
  return recipe === shimText(train, pack.change * micrometresPer[train.units.fine])
    ? undefined
    : recipe
}
