/** Both tables of the page of mutants, by the name of their marks. */
export function tables(root: string): Readonly<Record<'mutants' | 'left', string>>
/** Reasons for mutants that are not left, as "file: what stands there". */
export function idleReasons(root: string): string[]
