/** How far a point reaches in the direction in which it reaches farthest, with what is kept free there. */
interface Reach {
  by: number
  cos: number
  sin: number
}

const directions = 360

/** The most that n.(y, z) + reserve(n) is in any direction n; the length of (y, z) where nothing is kept free. */
export function farthest(
  y: number,
  z: number,
  reserve?: (cos: number, sin: number) => number,
): Reach {
  const length = Math.hypot(y, z)
  if (!reserve)
    return { by: length, cos: length > 0 ? y / length : 1, sin: length > 0 ? z / length : 0 }
  const at = (angle: number): Reach => {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    return { by: cos * y + sin * z + reserve(cos, sin), cos, sin }
  }
  const step = (2 * Math.PI) / directions
  let best = 0
  for (let k = 1; k < directions; k++) if (at(k * step).by > at(best * step).by) best = k
  // between two neighbours of the best there is one top: thirds close in on it
  let [low, high] = [(best - 1) * step, (best + 1) * step]
  while (high - low > 1e-9) {
    const third = (high - low) / 3
    if (at(low + third).by < at(high - third).by) low += third
    else high -= third
  }
  return at((low + high) / 2)
}
