import type { Train } from '../mechanics/train'

/** An hour of the clock as people say it: top, bottom, a side by its name, else the hour. */
export function hourName({ sides }: Pick<Train, 'sides'>, hour: number): string {
  const names: Record<number, string> = { 12: 'top', 3: sides.three, 6: 'bottom', 9: sides.nine }
  return names[hour] ?? `${hour} o'clock`
}
