import { damageOf, type Damaged } from './damaged'
import { labelOfText } from './label'
import { called, type Left } from './records'
import { clockOf } from './times'

const prefix = 'holdfast-left '
/** Where an entry goes that is damaged: it is no longer in the way, and not lost. */
const aside = 'holdfast-damaged '
const keyOf = ({ page, job }: Pick<Left, 'page' | 'job'>): string => `${prefix}${page} ${job}`

/**
 * Sheets that a page wrote down while it was being closed. A page that goes may not live to see a
 * writing to its database end, so these go where a page can write in one go. That is not on the disk
 * before some seconds have passed: nothing counts as kept by it.
 */
export const leftSheets = {
  write(left: Left): void {
    try {
      localStorage.setItem(keyOf(left), JSON.stringify(left))
    } catch {
      // no room there either: what could not be kept was called so
    }
  },

  /** All of them, oldest first; those that are damaged are set aside. */
  read(): { readonly sound: readonly Left[]; readonly damaged: readonly Damaged[] } {
    const sound: Left[] = []
    const damaged: Damaged[] = []
    for (const key of Object.keys(localStorage).filter((one) => one.startsWith(prefix))) {
      const text = localStorage.getItem(key) ?? ''
      const read = leftOf(text)
      if ('why' in read) {
        setAside(key, text)
        damaged.push({ ...read, text })
      } else sound.push(read)
    }
    return { sound: sound.sort((a, b) => a.when - b.when), damaged }
  },

  drop(left: Pick<Left, 'page' | 'job'>): void {
    localStorage.removeItem(keyOf(left))
  },
}

/** What was written down in an entry, or what is wrong with it. */
function leftOf(text: string): Left | Omit<Damaged, 'text'> {
  let left: Partial<Left> | null = null
  try {
    left = Object(JSON.parse(text)) as Partial<Left>
  } catch {
    // no JSON: nothing of it can be told
  }
  const { job, page, base, when, entries, what, text: sheet } = left ?? {}
  const name = `a sheet written down while its page was closed${
    typeof when === 'number' ? `, at ${clockOf(when)}` : ''
  }`
  if (
    ![job, page, what].every((one) => typeof one === 'string') ||
    ![base, when].every((one) => typeof one === 'number') ||
    typeof entries !== 'object'
  )
    return { name, why: 'it is cut off or was written by something else' }
  const why = damageOf(sheet)
  return why === undefined ? (left as Left) : { name: `${name} (${nameOf(sheet)})`, why }
}

const nameOf = (sheet: unknown): string =>
  called({ name: typeof sheet === 'string' ? labelOfText(sheet).name : '', mark: '' })

function setAside(key: string, text: string): void {
  // first out of the way: where there is no room, two of it would not fit
  localStorage.removeItem(key)
  localStorage.setItem(`${aside}${key.slice(prefix.length)}`, text)
}
