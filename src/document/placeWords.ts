import type { TrainDocument } from './schema'
import { fieldWords } from './fieldWords'
import { hourName } from '../language/hours'
import { pathFromPlace, valueAt, type Path } from './place'
import { couplingTitleOf } from './titles'

/**
 * A place of a document as people would say it: "Gearbox, foot 1, x". Things are called by their names,
 * fields as the sheet heads them; what is not known here keeps the name it has in the file.
 */
export function placeWords(document: TrainDocument, at: string): string {
  const path = pathFromPlace(at)
  if (path.length === 0) return 'the train'
  const words = path.map((key, depth) => {
    const here = path.slice(0, depth + 1)
    return typeof key === 'number'
      ? itemWords(document, here, key)
      : keyWords(document, here, path[depth + 1])
  })
  return words.filter((word) => word !== '').join(', ') || at
}

/** Two ends of a range: the list says what of, the item which end. */
const ranges = new Set<string | number>(['axial', 'side', 'rise', 'stretch', 'float'])

/** A list says nothing where one thing of it follows. */
function keyWords(document: TrainDocument, path: Path, next: string | number | undefined): string {
  const [key = '', above] = [path.at(-1), path.at(-2)]
  if (above === 'growth' || (above === 'aim' && path.at(-3) !== 'stator'))
    return stateName(document, String(key))
  return typeof next === 'number' && !ranges.has(key) ? '' : fieldWords(path)
}

const stateName = (document: TrainDocument, id: string): string =>
  document.states?.find((state) => state.id === id)?.name.trim() || id

const machineSaid = ({ machines }: TrainDocument, id: string): string =>
  machines.find((one) => one.id === id)?.name.trim() ?? ''

const couplingSaid = (document: TrainDocument, id: string): string => {
  const index = document.couplings.findIndex((one) => one.id === id)
  return index < 0 ? '' : couplingTitleOf(document, index)
}

/** Where something was done: "Gearbox, foot 1, as done". */
function workSaid({ machines, skids = [] }: TrainDocument, id: string, foot: string): string {
  const name = [...machines, ...skids].find((one) => one.id === id)?.name.trim() ?? ''
  return name && [name, ...(foot ? [`foot ${foot}`] : []), 'as done'].join(', ')
}

/** One thing of a list: by its name or id, its hour, else by its number. */
function itemWords(document: TrainDocument, path: Path, index: number): string {
  const list = path.at(-2) ?? ''
  const given = (field: string): string => {
    const value = valueAt(document, [...path, field])
    return typeof value === 'string' ? value.trim() : ''
  }
  const numbered = (thing: string, name = ''): string => name || `${thing} ${index + 1}`
  if (ranges.has(list)) return index === 0 ? 'low end' : 'high end'
  switch (list) {
    case 'machines':
      return numbered('machine', given('name'))
    case 'skids':
      return numbered('skid', given('name'))
    case 'couplings':
      return path.length > 2
        ? couplingSaid(document, given('coupling')) || numbered('coupling')
        : numbered('coupling', couplingTitleOf(document, index))
    case 'surveys':
      return numbered('survey', given('name'))
    case 'hotChecks':
      return numbered('hot check', given('name'))
    case 'outages':
      return numbered('outage', given('name') || given('when'))
    case 'again':
      return `${couplingSaid(document, given('coupling')) || numbered('reading')} read again`
    case 'work':
      return workSaid(document, given('body'), given('foot')) || numbered('work')
    case 'stays':
      return `dial at ${given('where') || index + 1}`
    case 'planes':
      return index === 0 ? 'left plane' : 'right plane'
    case 'times':
      return numbered('time')
    case 'moved':
      return machineSaid(document, given('machine')) || numbered('machine')
    case 'states':
      return numbered('state', given('name'))
    case 'feet':
      return `foot ${given('id') || index + 1}`
    case 'restraints':
      return `point ${given('id') || index + 1}`
    case 'pins':
      return `${given('kind') === 'key' ? 'key block' : 'dowel'} ${given('id') || index + 1}`
    case 'airGaps':
      return `air gap ${given('id') || index + 1}`
    case 'found':
      return numbered('set')
    case 'flanges':
      return numbered('flange', given('name'))
    case 'stock':
      return numbered('thickness')
    case 'gaps':
      return path[0] === 'record'
        ? couplingSaid(document, given('coupling')) || numbered('gap')
        : numbered('gap under corner')
    case 'carries':
      return numbered('machine')
    case 'readings': {
      const hour = valueAt(document, [...path, 0])
      return numbered('reading', typeof hour === 'number' ? hourName(document, hour) : '')
    }
    default:
      // a reading is its hour and what was read then
      return typeof list === 'number' ? (index === 0 ? 'hour' : '') : numbered('point')
  }
}
