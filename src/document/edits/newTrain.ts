import type { TrainDocument } from '../schema'

/** An empty job. It writes the share of tolerance that leaves room for error; everything else is asked for. */
export const newTrain = (): TrainDocument => ({
  format: 'holdfast-train',
  version: 1,
  name: '',
  units: { length: 'mm', fine: 'mm' },
  clock: { seenFrom: 'left' },
  machines: [],
  couplings: [],
  plan: { share: 0.7 },
})
