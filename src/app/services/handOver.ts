/** Hands a file to whoever sits at the screen, by way of the browser's downloads. */
export function handOver(blob: Blob, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  // the download has begun when the next turn comes; a minute is room for slow disks
  setTimeout(() => {
    URL.revokeObjectURL(link.href)
  }, 60_000)
}

/** A file name from words: without what file systems do not take, and not too long for them. */
export function fileNameOf(words: string, ending: string): string {
  const plain = words.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '')
  return `${plain.slice(0, longest).toLowerCase() || 'train'}.${ending}`
}
const longest = 60
