import { layPaper } from './layPaper'
import type { PaperRequest } from './paperMessages'

// away from the page, and ended when it has answered
self.addEventListener('message', ({ data }: MessageEvent<PaperRequest>) => {
  void layPaper(data).then((reply) => {
    self.postMessage(reply)
  })
})
