import { footLimitList } from './footLimits'

/**
 * Every term of the file and output contracts that can change an answer. The second builder can
 * leave out any one of them by name; a comparison that does not notice would prove nothing.
 */
export const terms = [
  // units
  'length unit',
  'fine unit',
  // readings
  'rim sag',
  'face sag',
  'spool sag',
  'rim rides left',
  'rim position',
  'decimal hour',
  'back face',
  'face diameter',
  'gap sign',
  'spool left end',
  'spool right end',
  'line position',
  'reading weights',
  'default uncertainty',
  'own zero of each sweep',
  // growth
  'growth rise',
  'growth side',
  'growth axial',
  'growth heat',
  'growth of each axis',
  'growth line',
  'growth that does not count',
  'growth between states',
  // motion
  'axial motion',
  'roll',
  'roll lifts an axis off centre',
  'roll carries the axis sideways',
  'roll lifts the feet',
  'pitch carries the axis along',
  'yaw carries the axis along',
  'yaw carries the feet along',
  'one row of feet does not pitch',
  'skid carries its machines',
  'base height',
  // what may move
  'held',
  'anchored',
  'free shim',
  'free side',
  // limits
  ...footLimitList.map(({ term }) => term),
  'hole centre',
  'reserve',
  'tilt',
  'tilt of the skid part',
  'restraint axial',
  'restraint side',
  'restraint rise',
  'restraint of the skid part',
  'restraint off centre',
  'standing pack',
  'standing hole',
  // tolerances
  'flex',
  'offset',
  'angle',
  'axial gap',
  'round',
  'share',
  'state factor',
  'all states',
  'aim offset',
  'aim slope',
  'setting offset',
  'setting slope',
  'setting in place of growth',
  'setting that is not used',
  // cost
  'body weight',
  'shim weight',
  'side weight',
  'axial weight',
  'axial cost',
  'foot row counts once',
  // the order of choice
  'in tolerance first',
  'least worst share second',
] as const

/** The name of one term of the contract. */
export type Term = (typeof terms)[number]

/** Terms that only trains with rotors have; `tests/axial` leaves them out. */
export const rotorTerms = [
  'magnetic centre',
  'thrust float',
  'coupling stretch',
  'rotor float',
] as const

/** A term that only trains with clutches have. */
type ClutchTerm = 'open clutch'

/** The one term to leave out, or nothing: the whole contract. */
export type LeftOut = Term | (typeof rotorTerms)[number] | ClutchTerm | undefined
