/**
 * Has something drawn after the next frame, once however often it was asked for until then: what is marked as old
 * meanwhile need not keep the frame waiting that shows a new plan.
 */
export function afterFrame(draw: () => void): {
  readonly ask: () => void
  readonly stop: () => void
} {
  let frame: number | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  return {
    ask: () => {
      frame ??= requestAnimationFrame(() => {
        timer = setTimeout(() => {
          frame = undefined
          draw()
        })
      })
    },
    stop: () => {
      if (frame !== undefined) cancelAnimationFrame(frame)
      clearTimeout(timer)
    },
  }
}
