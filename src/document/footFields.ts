import type { FootField, FootPath } from './footField'

/** Every figure of a foot, in the order in which they are usually written down. */
const footFields: Readonly<Record<FootPath, FootField>> = {
  id: {
    heading: 'foot',
    words: 'name',
    column: { head: 'foot' },
    cell: { is: 'text', label: (foot) => `name of ${foot}` },
    work: 'nothing',
  },
  x: {
    heading: 'x',
    names: ['position', 'distance', 'along'],
    column: { head: 'x' },
    cell: { is: 'number', label: (foot) => `x of ${foot}`, needed: 'always' },
    work: 'nothing',
  },
  y: {
    heading: 'y',
    names: ['across', 'sideways'],
    column: { head: 'y' },
    cell: {
      is: 'number',
      label: (foot) => `y of ${foot}`,
      instead: '0',
      says: (v, { toward }) => (v === 0 ? 'in the middle, y = 0' : `${toward(v)} of y = 0`),
    },
    work: 'nothing',
  },
  'pack.now': {
    heading: 'pack now',
    names: ['pack', 'shim', 'shims', 'shims now'],
    column: { group: 'pack', head: 'now' },
    cell: {
      is: 'number',
      label: (foot) => `pack now, ${foot}`,
      needed: 'in its group',
      instead: 'not given',
      says: (v, { fine }, foot) => `pack now under ${foot}: ${fine(v)}`,
    },
    least: 0,
    alike: 'pack',
    work: { goesWith: 'shim', times: 1, least: 0 },
  },
  'pack.min': {
    heading: 'least pack',
    names: ['pack min', 'min pack', 'minimum pack', 'minimum shim', 'min shim'],
    column: { group: 'pack', head: 'least' },
    cell: {
      is: 'number',
      label: (foot) => `least pack, ${foot}`,
      instead: '0',
      says: (v, { fine }, foot) => `least pack under ${foot}: ${fine(v)}`,
    },
    least: 0,
    alike: 'pack',
    work: 'nothing',
  },
  'pack.max': {
    heading: 'most pack',
    names: ['pack max', 'max pack', 'maximum pack', 'maximum shim', 'max shim'],
    column: { group: 'pack', head: 'most' },
    cell: {
      is: 'number',
      label: (foot) => `most pack, ${foot}`,
      instead: 'no limit',
      says: (v, { fine }, foot) => `most pack under ${foot}: ${fine(v)}`,
    },
    least: 0,
    alike: 'pack',
    work: 'nothing',
  },
  'pack.plates': {
    heading: 'plates in it now',
    column: { group: 'pack', head: 'plates', more: true },
    cell: { is: 'plates', label: (foot) => `plates in the pack now, ${foot}` },
    alike: 'pack',
    work: 'lost with a shim',
  },
  lift: {
    heading: 'rise at most',
    names: ['lift', 'rise', 'max rise'],
    column: { head: 'rise at most' },
    cell: {
      is: 'number',
      label: (foot) => `most that ${foot} may rise`,
      instead: 'no limit',
      says: (v, { fine }, foot) => `${foot} may rise at most ${fine(v)} from now`,
    },
    alike: 'lift',
    work: { goesWith: 'shim', times: -1 },
  },
  'hole.clearance': {
    heading: 'clearance',
    names: ['play', 'hole clearance', 'bolt clearance'],
    column: { group: 'hole, from the bolt', head: 'hole minus bolt, diameter' },
    cell: {
      is: 'number',
      label: (foot) => `hole minus bolt, diameter, ${foot}`,
      needed: 'in its group',
      instead: 'not given',
      says: (v, { fine }) => `the bolt has ${fine(v)} of play in its hole, measured across`,
    },
    least: 0,
    alike: 'clearance',
    work: 'nothing',
  },
  'hole.x': {
    heading: 'hole x',
    names: ['hole centre x', 'centre x', 'center x'],
    words: 'hole centre along',
    column: { group: 'hole, from the bolt', head: 'centre x' },
    cell: {
      is: 'number',
      label: (foot) => `hole centre along, ${foot}`,
      instead: '0',
      says: (v, { fine }) =>
        v === 0
          ? 'the hole is centred on the bolt along the train'
          : `the centre of the hole lies ${fine(v)} to the ${v < 0 ? 'left' : 'right'} of the bolt`,
    },
    work: { goesWith: 'axial', times: 1, from: 0 },
  },
  'hole.y': {
    heading: 'hole y',
    names: ['hole centre y', 'centre y', 'center y'],
    words: 'hole centre sideways',
    column: { group: 'hole, from the bolt', head: 'centre y', then: 'picture' },
    cell: {
      is: 'number',
      label: (foot) => `hole centre sideways, ${foot}`,
      instead: '0',
      says: (v, { fine, toward }) =>
        v === 0
          ? 'the hole is centred on the bolt sideways'
          : `the centre of the hole lies ${fine(v)} ${toward(v)} of the bolt`,
    },
    work: { goesWith: 'side', times: 1, from: 0 },
  },
  'hole.u': {
    heading: 'bolt unsure by',
    words: 'place of the bolt in its hole, unsure by',
    column: { group: 'hole, from the bolt', head: 'unsure by', more: true },
    cell: {
      is: 'number',
      label: (foot) => `place of the bolt in its hole, unsure by, ${foot}`,
      instead: 'not given',
    },
    least: 0,
    work: 'nothing',
  },
  soleplate: {
    heading: 'soleplate',
    names: ['plate height', 'base height', 'pad height'],
    words: 'height of the soleplate',
    column: { group: 'gap, bolt loose', head: 'soleplate, + up', more: true },
    cell: {
      is: 'number',
      label: (foot) => `height of the soleplate under ${foot} against a level line`,
      instead: 'not read',
      says: (v, { fine }, foot) =>
        `the soleplate under ${foot} lies ${fine(v)} over the level line of its machine`,
    },
    work: 'nothing',
  },
  soft: {
    heading: 'soft foot',
    names: ['soft', 'gap'],
    column: { group: 'gap, bolt loose', head: 'soft foot' },
    cell: {
      is: 'number',
      label: (foot) => `soft foot: gap under ${foot} with its bolt loosened`,
      instead: 'not read',
      says: (v, { fine }, foot) => `${foot} stands off by ${fine(v)} with its bolt loosened`,
    },
    least: 0,
    work: 'read anew',
  },
  gaps: {
    heading: 'corner gaps',
    column: { group: 'gap, bolt loose', head: 'corners', more: true },
    cell: { is: 'corners' },
    work: 'read anew',
  },
  'torque.value': {
    heading: 'torque',
    column: { group: 'bolt', head: 'torque', more: true },
    cell: {
      is: 'number',
      label: (foot) => `torque of the bolt of ${foot}`,
      needed: 'in its group',
      instead: 'not given',
    },
    least: 0,
    work: 'nothing',
  },
  'torque.pattern': {
    heading: 'pattern of tightening',
    column: { group: 'bolt', head: 'pattern', more: true },
    cell: { is: 'note', label: (foot) => `pattern in which ${foot} is tightened` },
    work: 'nothing',
  },
  'free.shim': {
    heading: 'may be shimmed',
    names: ['shimmed'],
    column: { group: 'may', head: 'be shimmed' },
    cell: { is: 'tick', label: (foot) => `${foot} may be shimmed`, instead: true },
    alike: 'keys',
    work: 'nothing',
  },
  'free.side': {
    heading: 'may slide',
    names: ['slides', 'slide'],
    column: { group: 'may', head: 'slide' },
    cell: {
      is: 'tick',
      label: (foot) => `${foot} may slide sideways: no key, no dowel`,
      instead: true,
    },
    alike: 'keys',
    work: 'nothing',
  },
}

/** The fields with their paths within a foot, in order. */
export const footFieldList = Object.entries(footFields).map(([key, field]) => ({
  ...field,
  key,
  path: key.split('.'),
}))
