import { aimsTable } from './aimsTable'
import { airGapsTable } from './airGapsTable'
import { couplingsTable } from './couplingsTable'
import { feetTable } from './feetTable'
import { gapsTable } from './gapsTable'
import { growthTarget } from './growthTable'
import { hotReadingsTable } from './hotReadingsTable'
import { machinesTable } from './machinesTable'
import { movedTable } from './movedTable'
import type { PasteTarget } from './pasted'
import { pinsTable } from './pinsTable'
import { pointsTable } from './pointsTable'
import { readingsTarget } from './readingsTable'
import { settingsTable } from './settingsTable'
import { skidsTable } from './skidsTable'
import { statesTable } from './statesTable'
import { strainTable } from './strainTable'
import { surveysTable } from './surveysTable'

/** All that can be pasted, each after what its rows name. */
export const allTables: readonly PasteTarget[] = [
  machinesTable,
  skidsTable,
  pointsTable,
  pinsTable,
  airGapsTable,
  feetTable,
  statesTable,
  couplingsTable,
  readingsTarget,
  gapsTable,
  strainTable,
  aimsTable,
  settingsTable,
  growthTarget,
  hotReadingsTable,
  movedTable,
  surveysTable,
]
