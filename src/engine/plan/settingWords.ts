import { shareText } from '../../language/amounts'
import type { Aim, Coupling, Train } from '../../mechanics/train'
import { settingBeside } from '../../mechanics/misalignment/settingBeside'
import { lineInWords } from '../../language/readingSets'
import { listed } from '../../language/names'

/** A maker's cold setting and the growth figures, told apart in words. */
export interface SettingWords {
  /** What the maker asks for, cold. */
  readonly maker: string
  /** What the growth figures ask for, a sentence a state in which anything grows. */
  readonly growth: readonly string[]
  /** Whether the two differ in the digits that people read. */
  readonly differ: boolean
  readonly sentence: string
}

/** Differences of slope under this show as nothing (mrad). */
const noSlope = 0.005

/** A cold setting beside growth, in words; undefined where the coupling has none. */
export function settingWords(train: Train, coupling: Coupling): SettingWords | undefined {
  const beside = settingBeside(train, coupling)
  const { setting } = coupling
  if (!beside || !setting) return undefined
  const line = (aim: Aim) => aimInWords(train, coupling, aim)
  const grown = beside.growthAsks.filter((entry) => entry.grown)
  const stateName = (id: string) => train.states.find((state) => state.id === id)?.name ?? id
  const from = setting.from === undefined ? '' : ` (${setting.from})`
  const maker = `${coupling.name}: the maker's cold setting${from} asks for ${line(beside.maker)}, cold`
  const growth = grown.map(
    ({ state, asks, share }) =>
      `for "${stateName(state)}" growth asks for ${line(asks)}, cold; the difference alone is ${shareText(share)} of the tolerance there`,
  )
  const differ = grown.some(({ by }) => line({ ...by, sy: 0, sz: 0 }) !== line(level) || tilted(by))
  const compared =
    growth.length === 0 ? 'no growth is entered to compare it with' : growth.join('; ')
  const choice = setting.used
    ? `The setting is used (${setting.why ?? ''}): growth and aims are not applied at this coupling, in any state`
    : 'The growth figures are used; the setting is not'
  return { maker, growth, differ, sentence: `${maker}; ${compared}. ${choice}.` }
}

/**
 * What lines of states mean where a maker's cold setting is used: they are drawn by the growth figures,
 * which count for nothing there. Undefined where none is used.
 */
export function settingInLines(train: Train): string | undefined {
  const used = train.couplings.filter(({ setting }) => setting?.used === true)
  return used.length === 0
    ? undefined
    : `At ${listed(used.map(({ name }) => name))} the maker's cold setting decides, and the limits at the coupling are drawn by it; lines of states show the growth figures, which do not count there.`
}

const level: Aim = { y: 0, z: 0, sy: 0, sz: 0 }
const tilted = ({ sy, sz }: Aim) => Math.max(Math.abs(sy), Math.abs(sz)) >= noSlope

/** A line in engine units as "the pump 0.30 mm low, rising 0.20 mrad to the right". */
export function aimInWords(train: Train, coupling: Coupling, { y, z, sy, sz }: Aim): string {
  return lineInWords(train, coupling, { y, z }, { y: sy, z: sz })
}
