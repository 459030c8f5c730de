import { fileNameOf, handOver } from '../services/handOver'
import { bandPicture } from './bandPicture'

/** Pixels of a saved picture to one of the screen: sharp on paper too. */
const density = 2

/** Saves a band as a drawing or as a picture of pixels, under the train's name. */
export async function savePicture(
  band: HTMLElement,
  kind: 'svg' | 'png',
  name: string,
): Promise<void> {
  const drawing = await bandPicture(band)
  const svg = new Blob([drawing], { type: 'image/svg+xml' })
  handOver(kind === 'svg' ? svg : await pixels(drawing), fileNameOf(name, kind))
}

async function pixels(drawing: string): Promise<Blob> {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(drawing)}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = image.naturalWidth * density
  canvas.height = image.naturalHeight * density
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob) resolve(blob)
      else reject(new Error('the picture could not be made'))
    }, 'image/png')
  })
}
