/**
 * Outward unit vector at a clock hour: y toward 3 o'clock, z up (12 o'clock). The quarter hours are
 * exact, so that a set read at 12 and 6 alone says exactly nothing about the side.
 */
export function outward(hour: number): { y: number; z: number } {
  switch (hour) {
    case 12:
      return { y: 0, z: 1 }
    case 3:
      return { y: 1, z: 0 }
    case 6:
      return { y: 0, z: -1 }
    case 9:
      return { y: -1, z: 0 }
  }
  const angle = (hour * Math.PI) / 6
  return { y: Math.sin(angle), z: Math.cos(angle) }
}
