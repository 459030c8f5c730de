import type { Body } from '../../mechanics/train'
import type { Mark } from './marks'
import { blower } from './blower'
import { compressor } from './compressor'
import { engine } from './engine'
import { expander } from './expander'
import { fan } from './fan'
import { fluidDrive } from './fluidDrive'
import type { DrawingFrame } from './frame'
import { gearbox } from './gearbox'
import { generator } from './generator'
import { motor } from './motor'
import { other } from './other'
import { pump } from './pump'
import { turbine } from './turbine'

/** One drawing a role; a role that is not listed here does not compile. */
const drawings: Record<Body['role'], (f: DrawingFrame) => Mark[]> = {
  motor,
  turbine,
  gearbox,
  compressor,
  pump,
  fan,
  generator,
  blower,
  'fluid-drive': fluidDrive,
  expander,
  engine,
  other,
  skid: other,
}

/** A machine's elevation in the style of a drafting sheet. */
export const machineMarks = (role: Body['role'], frame: DrawingFrame): Mark[] =>
  drawings[role](frame)
