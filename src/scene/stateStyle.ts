/** Dashes of the thin lines, one a state; from the seventh on they repeat, and choosing one tells. */
const dashes = ['', '9 3', '2 3', '9 3 2 3', '5 2', '9 3 2 3 2 3']

export const stateDash = (state: number): string => dashes[state % dashes.length] ?? ''
