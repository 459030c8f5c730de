/** What some browsers have to read codes in pictures with (the draft "Accelerated Shape Detection in Images"). */
interface Detector {
  detect(picture: ImageBitmap): Promise<readonly { readonly rawValue: string }[]>
}
interface DetectorMaker {
  new (options: { readonly formats: readonly string[] }): Detector
  getSupportedFormats(): Promise<readonly string[]>
}

const format = 'qr_code'

const maker = (): DetectorMaker | undefined =>
  (globalThis as { readonly BarcodeDetector?: DetectorMaker }).BarcodeDetector

/** Whether this browser reads QR codes; where it does not, nothing offers it. */
export async function readsCodes(): Promise<boolean> {
  const formats = await maker()
    ?.getSupportedFormats()
    .catch((): readonly string[] => [])
  return formats?.includes(format) ?? false
}

/** The texts of the codes in a picture, which goes no further than this page. */
export async function codesIn(picture: Blob): Promise<string[]> {
  const Made = maker()
  if (!Made) return []
  const bitmap = await createImageBitmap(picture)
  try {
    const found = await new Made({ formats: [format] }).detect(bitmap)
    return found.map(({ rawValue }) => rawValue)
  } finally {
    bitmap.close()
  }
}
