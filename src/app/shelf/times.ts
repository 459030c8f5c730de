const two = (value: number): string => String(value).padStart(2, '0')
const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ')

/** Time of day to the second, "14:02:31", of a time in ms since 1970. */
export function clockOf(when: number): string {
  const date = new Date(when)
  return `${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`
}

/** Day and minute, "24 Nov 2026 14:02"; without the day when it is that of `now`: "today 14:02". */
export function dayOf(when: number, now?: number): string {
  const date = new Date(when)
  const time = `${two(date.getHours())}:${two(date.getMinutes())}`
  if (now !== undefined && new Date(now).toDateString() === date.toDateString())
    return `today ${time}`
  return `${date.getDate()} ${months[date.getMonth()] ?? ''} ${date.getFullYear()} ${time}`
}
