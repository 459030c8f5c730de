import type { Train } from '../train/model'

/** Where somebody stands, facing the train. */
export type Stand = 'three' | 'nine' | 'left' | 'right'

/** The way somebody faces who stands there: along the train and aside. */
const facing: Record<Stand, readonly [x: number, y: number]> = {
  three: [0, -1],
  nine: [0, 1],
  left: [1, 0],
  right: [-1, 0],
}

/**
 * A direction as somebody at the machine would point. Clock faces are seen from one end of the
 * train: from its left end, looking along +x, 3 o'clock (+y) is at the right hand; from its right
 * end, looking along -x, it is at the right hand too, so the train is mirrored.
 * @param x along the train, + to the right end; @param y + toward 3 o'clock; one of them is 0
 */
export function pointed(train: Train, x: number, y: number, stand: Stand): string {
  const [fx, fy] = facing[stand]
  const ahead = x * fx + y * fy
  const mirror = train.seenFrom === 'left' ? 1 : -1
  const right = mirror * (x * -fy + y * fx)
  if (Math.abs(ahead) >= Math.abs(right)) return ahead > 0 ? 'away from you' : 'toward you'
  return right > 0 ? 'to your right' : 'to your left'
}
