import { kept } from '../kept'
import type { Train } from '../train'
import { asFound, type AsFound } from './asFound'

/** Every coupling's line as its readings give it. */
export const foundOf = kept((train: Train): readonly AsFound[] => train.couplings.map(asFound))
