/** Longest side of a kept photograph (px): plates and dials can be read, a hundred of them fit. */
const longest = 1600

/** A photograph as small as it may be; one that the browser cannot draw is kept as it came. */
export async function smaller(file: Blob): Promise<Blob> {
  const image = await createImageBitmap(file).catch(() => undefined)
  if (!image) return file
  const scale = Math.min(1, longest / Math.max(image.width, image.height))
  const canvas = new OffscreenCanvas(
    Math.round(image.width * scale),
    Math.round(image.height * scale),
  )
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  image.close()
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 })
}
