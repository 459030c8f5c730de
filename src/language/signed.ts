/**
 * Digits, or digits with their unit, with their sign in front, as dials and differences are written: a
 * true minus, a plus, and none where they show nothing.
 * @param text as numbers are written, with "-" in front where they are negative
 */
export function signed(text: string): string {
  const size = text.startsWith('-') ? text.slice(1) : text
  if (!/[1-9]/.test(size)) return size
  return `${size === text ? '+' : '\u2212'}${size}`
}
