/** Places of the sources, each with the names of the tests that judge it, without their ends. */
export const judges: readonly (readonly [place: string, tests: readonly string[]])[]
