/** A date and time of the record as people read it: "2026-03-02 14:05:09 UTC"; what is no time stays as it stands. */
export const whenText = (iso: string): string =>
  iso.replace(/^(\d{4}-\d\d-\d\d)T/, '$1 ').replace(/\.\d+Z$|Z$/, ' UTC')
