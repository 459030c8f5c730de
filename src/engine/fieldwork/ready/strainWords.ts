import { fineText } from '../../../language/amounts'
import type { Coupling, Train } from '../../../mechanics/train'
import { showsNought, towardSide } from '../../../language/sides'
import { listed } from '../../../language/names'
import type { ReadyItem, StrainAnswer } from './answer'
import type { FlangeCheck, StrainCheck } from './pipeStrain'

/** Pipe strain, a sentence a flange. */
export function strainAnswer(train: Train, check: StrainCheck): StrainAnswer {
  return {
    coupling: check.coupling,
    verdict: check.verdict,
    limit: check.limit.value,
    source: check.limit.source,
    flanges: check.flanges.map((flange) => ({
      name: flange.name,
      ...(flange.y !== undefined && { y: flange.y }),
      ...(flange.z !== undefined && { z: flange.z }),
      verdict: flange.verdict,
      words: flangeWords(train, flange),
    })),
    total: { y: check.total.y, z: check.total.z },
  }
}

function flangeWords(train: Train, flange: FlangeCheck): string {
  const { name, y, z, verdict } = flange
  const lacks = [
    ...(z === undefined ? ['up and down'] : []),
    ...(y === undefined ? ['sideways'] : []),
  ]
  const moved =
    y === undefined && z === undefined
      ? []
      : [`${name} carries the shaft ${movedWords(train, y ?? 0, z ?? 0)}`]
  const open = lacks.length === 0 ? [] : [`${name} is not measured ${listed(lacks)}`]
  const past =
    verdict === 'passed' ? ', more than is allowed: the pipe is put right, not the machine' : ''
  return `${[...moved, ...open].join('; ')}${past}`
}

function movedWords(train: Train, y: number, z: number): string {
  const size = (value: number) => fineText(Math.abs(value), train.units)
  const parts = [
    ...(showsNought(z, train) ? [] : [`${size(z)} ${z > 0 ? 'up' : 'down'}`]),
    ...(showsNought(y, train) ? [] : [`${size(y)} ${towardSide(train, y)}`]),
  ]
  return parts.length === 0 ? 'nowhere' : listed(parts)
}

/** What pipe strain says of a coupling's readiness. */
export function strainItem(
  train: Train,
  coupling: Coupling,
  check: StrainCheck,
): Pick<ReadyItem, 'words'> & { readonly state: 'in' | 'missing' | 'bad' } {
  const allowed = `${fineText(check.limit.value, train.units)} is allowed each way: ${check.limit.source}`
  const { total, flanges } = check
  const all = movedWords(train, total.y, total.z)
  switch (check.verdict) {
    case 'none':
      return { state: 'missing', words: `pipe strain at ${coupling.name} is not measured` }
    case 'part':
      return {
        state: 'missing',
        words: `pipe strain at ${coupling.name}: ${flanges
          .filter(({ verdict }) => verdict === 'not measured')
          .map((flange) => flangeWords(train, flange))
          .join('; ')}`,
      }
    case 'within':
      return {
        state: 'in',
        words: `pipe strain at ${coupling.name}: all flanges together carry the shaft ${all} (${allowed})`,
      }
    case 'passed': {
      const past = flanges.filter(({ verdict }) => verdict === 'passed')
      const words =
        past.length === 0
          ? `all flanges together carry the shaft ${all}, each by itself within the limit`
          : [...past, ...flanges.filter(({ verdict }) => verdict === 'not measured')]
              .map((flange) => flangeWords(train, flange))
              .join('; ')
      return { state: 'bad', words: `pipe strain at ${coupling.name}: ${words} (${allowed})` }
    }
  }
}
