import type { Left } from './records'

const prefix = 'holdfast-left '
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

  read(): Left[] {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(prefix))
    return keys.flatMap((key) => {
      try {
        return [JSON.parse(localStorage.getItem(key) ?? '') as Left]
      } catch {
        localStorage.removeItem(key)
        return []
      }
    })
  },

  drop(left: Pick<Left, 'page' | 'job'>): void {
    localStorage.removeItem(keyOf(left))
  },
}
