import { couplingsTable } from './couplingsTable'
import { feetTable } from './feetTable'
import { growthTarget } from './growthTable'
import { machinesTable } from './machinesTable'
import type { PasteTarget } from './pasted'
import { pointsTable } from './pointsTable'
import { readingsTarget } from './readingsTable'
import { statesTable } from './statesTable'
import { surveysTable } from './surveysTable'

/** All that can be pasted, each after what its rows name. */
export const allTables: readonly PasteTarget[] = [
  machinesTable,
  pointsTable,
  feetTable,
  couplingsTable,
  readingsTarget,
  statesTable,
  growthTarget,
  surveysTable,
]
