import { towardSide, type Sided } from './sides'

/** An hour of the clock as people say it: top, bottom, a side by its name, else the hour. */
export function hourName(sided: Sided, hour: number): string {
  switch (hour) {
    case 12:
      return 'top'
    case 6:
      return 'bottom'
    case 3:
      return towardSide(sided, 1)
    case 9:
      return towardSide(sided, -1)
    default:
      return `${hour} o'clock`
  }
}
