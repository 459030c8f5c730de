import { tol } from '../../../mechanics/tolerances'
import { micrometresPer, type Micrometres } from '../../../mechanics/units'
import type { CouplingDocument } from '../../../document/schema'
import type { Coupling, Train } from '../../../mechanics/train'
import { pipeStrainOf } from '../../../document/work'
import { publishedLimit, type SourcedLimit } from '../../plan/publishedLimit'

/** How far the shaft moved at a coupling as flanges were made up, judged up and down and sideways apart. */
export interface StrainCheck {
  readonly coupling: string
  readonly limit: SourcedLimit
  readonly flanges: readonly FlangeCheck[]
  /** Where the shaft has gone when all measured flanges are made up. */
  readonly total: { readonly y: Micrometres; readonly z: Micrometres }
  /** "none": nothing was measured; "part": a flange lacks a direction; else within the limit or past it. */
  readonly verdict: 'none' | 'part' | 'within' | 'passed'
}

export interface FlangeCheck {
  readonly name: string
  readonly y?: Micrometres
  readonly z?: Micrometres
  readonly verdict: 'not measured' | 'within' | 'passed'
  readonly by?: string
  readonly when?: string
}

/**
 * Pipe strain as the train file holds it. Each flange and the sum of all are held to the limit, since
 * flanges that pull the same way add up. A limit that was entered stands with its basis; else API RP
 * 686, chapter 6.
 */
export function strainCheck(train: Train, document: CouplingDocument): StrainCheck {
  const strain = pipeStrainOf(document.strain)
  const um = (value: number) => value * micrometresPer[train.units.fine]
  const limit =
    strain?.limit === undefined
      ? publishedLimit(train, 'pipeStrain')
      : { value: um(strain.limit), source: strain.basis ?? 'as entered, without a basis' }
  const past = (value: number | undefined) =>
    value !== undefined && Math.abs(value) > limit.value + tol.onLimit
  const flanges = (strain?.flanges ?? []).map((flange): FlangeCheck => {
    const [y, z] = [flange.y, flange.z].map((value) => (value === undefined ? value : um(value)))
    return {
      name: flange.name,
      ...(y !== undefined && { y }),
      ...(z !== undefined && { z }),
      verdict:
        past(y) || past(z)
          ? 'passed'
          : y === undefined || z === undefined
            ? 'not measured'
            : 'within',
      ...(flange.by !== undefined && { by: flange.by }),
      ...(flange.when !== undefined && { when: flange.when }),
    }
  })
  const total = {
    y: flanges.reduce((sum, { y = 0 }) => sum + y, 0),
    z: flanges.reduce((sum, { z = 0 }) => sum + z, 0),
  }
  const verdict =
    flanges.some((flange) => flange.verdict === 'passed') || past(total.y) || past(total.z)
      ? 'passed'
      : flanges.every(({ y, z }) => y === undefined && z === undefined)
        ? 'none'
        : flanges.some((flange) => flange.verdict === 'not measured')
          ? 'part'
          : 'within'
  return { coupling: document.id, limit, flanges, total, verdict }
}

/** Roles that carry no process piping of their own. */
const withoutPipes = new Set(['motor', 'gearbox', 'generator', 'fluid-drive'])

/** Whether pipe strain is asked for at a coupling: one of its machines may be piped, or says that it is. */
export function mayBePiped(train: Train, coupling: Coupling): boolean {
  return [coupling.left, coupling.right].some((m) => {
    const machine = train.machines[m]
    return machine && (!withoutPipes.has(machine.role) || machine.restraints.length > 0)
  })
}
