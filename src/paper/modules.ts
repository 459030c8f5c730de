import { encode } from 'uqr'

/**
 * The squares of a QR code (ISO/IEC 18004), row by row, true where one is dark, without its quiet zone. Correction M: up to
 * 15 % of it may be smeared.
 */
export const modulesOf = (text: string): readonly (readonly boolean[])[] =>
  encode(text, { ecc: 'M', border: 0 }).data
