import type { PasteColumn } from './pasted'
import type { Path } from '../place'

/** A column of the table of feet. */
export interface FootColumn extends PasteColumn {
  /** Where it stands within a foot; empty for what names the foot. */
  readonly path: Path
  /** Whether it is no number below 0. */
  readonly least?: 0
}

/** What is known of a foot, in the order in which it is usually written down. */
export const feetColumns: readonly FootColumn[] = [
  {
    key: 'machine',
    heading: 'machine',
    names: ['body', 'skid', 'equipment'],
    kind: 'text',
    down: true,
    path: [],
  },
  {
    key: 'foot',
    heading: 'foot',
    names: ['foot id', 'id', 'foot no', 'support'],
    kind: 'text',
    path: [],
  },
  { key: 'x', heading: 'x', names: ['position', 'distance', 'along'], kind: 'length', path: ['x'] },
  { key: 'y', heading: 'y', names: ['across', 'sideways'], kind: 'length', path: ['y'] },
  {
    key: 'now',
    heading: 'pack now',
    names: ['pack', 'shim', 'shims', 'shims now'],
    kind: 'fine',
    path: ['pack', 'now'],
    least: 0,
  },
  {
    key: 'min',
    heading: 'least pack',
    names: ['pack min', 'min pack', 'minimum pack', 'minimum shim', 'min shim'],
    kind: 'fine',
    path: ['pack', 'min'],
    least: 0,
  },
  {
    key: 'max',
    heading: 'most pack',
    names: ['pack max', 'max pack', 'maximum pack', 'maximum shim', 'max shim'],
    kind: 'fine',
    path: ['pack', 'max'],
    least: 0,
  },
  {
    key: 'lift',
    heading: 'rise at most',
    names: ['lift', 'rise', 'max rise'],
    kind: 'fine',
    path: ['lift'],
  },
  {
    key: 'clearance',
    heading: 'clearance',
    names: ['play', 'hole clearance', 'bolt clearance'],
    kind: 'fine',
    path: ['hole', 'clearance'],
    least: 0,
  },
  {
    key: 'holeX',
    heading: 'hole x',
    names: ['hole centre x', 'centre x', 'center x'],
    kind: 'fine',
    path: ['hole', 'x'],
  },
  {
    key: 'holeY',
    heading: 'hole y',
    names: ['hole centre y', 'centre y', 'center y'],
    kind: 'fine',
    path: ['hole', 'y'],
  },
  {
    key: 'soft',
    heading: 'soft foot',
    names: ['soft', 'gap'],
    kind: 'fine',
    path: ['soft'],
    least: 0,
  },
  {
    key: 'shim',
    heading: 'may be shimmed',
    names: ['shimmed'],
    kind: 'yes',
    path: ['free', 'shim'],
  },
  {
    key: 'side',
    heading: 'may slide',
    names: ['slides', 'slide'],
    kind: 'yes',
    path: ['free', 'side'],
  },
]
