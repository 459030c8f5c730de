import { path, rect, type Mark } from './drawings/marks'
import type { XScale } from './xScale'

/** A broken scale, shown the same in every band: paper over the drawing between two wavy edges. */
export function breakMarks(scale: XScale, height: number): Mark[] {
  return scale.breaks.flatMap(({ left, right }) => {
    const wave = (x: number) => {
      const steps = Math.ceil(height / 12)
      return `M${x} 0${Array.from({ length: steps }, (_, i) => `q${i % 2 === 0 ? 3 : -3} 6 0 12`).join('')}`
    }
    return [
      rect(left + 3, 0, right - left - 6, height, 'gap'),
      path(wave(left + 3), 'fine'),
      path(wave(right - 3), 'fine'),
    ]
  })
}
