import type { StreamName } from '../second/streams'

/** The generators of random trains, from the plain one to those that have something besides. */
export type Maker = 'train' | 'sure' | 'surveys' | 'shims' | 'intervals' | 'clutches' | 'rotors'

interface Reach {
  by: Maker
  /** What the stream draws: these places may come and go. */
  draws: readonly string[]
  /** What is worked out from that: these numbers may change, and none may come or go. */
  follows?: readonly string[]
}

const [pack, lift, hole] = ['feet.*.pack', 'feet.*.lift', 'feet.*.hole']
const limits = [pack, lift, hole, 'tilt', 'restraints']
const lines = ['couplings.*.found', 'couplings.*.axial']
const asked = ['couplings.*.tolerance', 'couplings.*.setting']
/** What hangs on how far machines have to move. */
const moved = [...limits, ...lines]
const geometry = ['machines', 'skids', 'couplings']
/** What is made wide enough for errors: by the narrowest check of all, so that few changes come as far as each of these. */
export const room: readonly string[] = ['couplings.*.tolerance', 'couplings.*.axial', 'plan.share']

/** How far each stream reaches into a document; "*" is any one place of a list. Bodies are machines and skids. */
export const reaches: Readonly<Record<StreamName, Reach>> = {
  units: { by: 'train', draws: ['units'], follows: ['machines', 'skids', 'couplings', 'plan'] },
  clock: { by: 'train', draws: ['clock'] },
  layout: { by: 'train', draws: geometry },
  machine: { by: 'train', draws: geometry },
  skids: { by: 'train', draws: geometry },
  skid: { by: 'train', draws: ['skids', 'base'], follows: moved },
  free: { by: 'train', draws: ['free'], follows: moved },
  // turned about a key a machine slopes as it did, and goes along as it did
  key: {
    by: 'train',
    draws: ['feet.*.free'],
    follows: [pack, lift, hole, 'restraints', 'couplings.*.found'],
  },
  anchored: { by: 'train', draws: ['anchored', 'held', 'feet'], follows: moved },
  held: { by: 'train', draws: ['held'], follows: moved },
  weight: { by: 'train', draws: ['weight'] },
  states: {
    by: 'train',
    draws: ['states', 'growth', 'couplings.*.aim'],
    follows: [...lines, ...asked],
  },
  factor: { by: 'train', draws: ['states.*.tolerance'] },
  growth: { by: 'train', draws: ['growth'], follows: [...lines, ...asked] },
  'unused growth': { by: 'train', draws: ['growth'] },
  between: { by: 'train', draws: ['states', 'growth.between'] },
  motion: { by: 'train', draws: [], follows: moved },
  circles: { by: 'train', draws: [hole, 'couplings.*.tolerance.shape'] },
  tight: { by: 'train', draws: [], follows: limits },
  pack: { by: 'train', draws: [pack] },
  lift: { by: 'train', draws: [lift] },
  hole: { by: 'train', draws: [hole] },
  tilt: { by: 'train', draws: ['tilt'] },
  restraint: { by: 'train', draws: ['restraints'] },
  share: { by: 'train', draws: ['plan.share'], follows: [...lines, 'couplings.*.tolerance'] },
  weights: { by: 'train', draws: ['plan.weights'] },
  reserve: { by: 'train', draws: ['plan.reserve'], follows: [hole] },
  aim: { by: 'train', draws: ['couplings.*.aim'], follows: ['couplings.*.found', ...asked] },
  tolerance: { by: 'train', draws: ['couplings.*.tolerance'], follows: ['couplings.*.found'] },
  shape: { by: 'train', draws: ['couplings.*.tolerance.shape'] },
  // one that is used stands in the place of what was aimed at
  setting: { by: 'train', draws: ['couplings.*.setting', 'couplings.*.aim'] },
  residue: { by: 'train', draws: [], follows: ['couplings.*.found'] },
  gap: { by: 'train', draws: ['couplings.*.axial'] },
  'dial step': { by: 'train', draws: [], follows: ['couplings.*.found'] },
  readings: { by: 'train', draws: ['couplings.*.found'] },
  sag: {
    by: 'train',
    draws: ['couplings.*.found.*.sag'],
    follows: ['couplings.*.found.*.readings'],
  },
  'reading u': { by: 'train', draws: ['couplings.*.found.*.u', 'couplings.*.found.*.uSlope'] },
  'known sets': {
    by: 'sure',
    draws: ['uAt', 'uDiameter', 'uSag', 'bracket'].map((field) => `couplings.*.found.*.${field}`),
    follows: room,
  },
  'added sets': { by: 'sure', draws: ['couplings.*.found'], follows: room },
  'known growth': { by: 'sure', draws: ['growth'], follows: room },
  'silent growth': { by: 'sure', draws: ['growth'], follows: room },
  'known holes': { by: 'sure', draws: ['feet.*.hole.u'] },
  'sure key': { by: 'sure', draws: ['feet.*.free'], follows: room },
  'known gap': { by: 'sure', draws: ['couplings.*.axial.u'], follows: room },
  sure: { by: 'sure', draws: ['plan.sure'], follows: room },
  room: { by: 'sure', draws: [], follows: room },
  surveys: { by: 'surveys', draws: ['surveys'] },
  survey: { by: 'surveys', draws: ['surveys'] },
  'survey u': { by: 'surveys', draws: ['surveys.*.u', 'surveys.*.points.*.u'] },
  shims: { by: 'shims', draws: ['plan.shims'], follows: [pack] },
  'packs on the step': { by: 'shims', draws: [], follows: [pack] },
  leave: { by: 'shims', draws: ['plan.leave'] },
  intervals: { by: 'intervals', draws: ['growth'] },
  clutch: { by: 'clutches', draws: ['couplings.*.disengaged'] },
  rotors: { by: 'rotors', draws: ['couplings.*.axial'] },
}
