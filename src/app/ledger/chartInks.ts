/** Colours of the theme, read when something is drawn. */
export interface Inks {
  ink: string
  soft: string
  hair: string
  plum: string
  paper: string
}

export const font = { family: "'Source Sans 3 Variable', 'Segoe UI', sans-serif", size: 12 }
export const css = (weight: number) => `${weight} ${font.size}px ${font.family}`

export function inks(): Inks {
  const style = getComputedStyle(document.documentElement)
  const of = (name: string) => style.getPropertyValue(name).trim()
  return {
    ink: of('--ink'),
    soft: of('--soft'),
    hair: of('--hair'),
    plum: of('--plum'),
    paper: of('--paper'),
  }
}
