const { port1, port2 } = new MessageChannel()
const waiting: (() => void)[] = []
port1.onmessage = () => {
  waiting.shift()?.()
}

/** Lets the messages in that came meanwhile. */
export const pause = (): Promise<void> =>
  new Promise((go) => {
    waiting.push(go)
    port2.postMessage(0)
  })
