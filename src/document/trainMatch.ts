/**
 * What a train is known by, since its file carries no number of its own: its name, its site and the ids of its machines in
 * their order, as one text. Whatever is read, planned and done of it leaves this as it is.
 */
export const trainMatch = (name: string, site: string, ids: readonly string[]): string =>
  JSON.stringify([name.trim(), site.trim(), ...ids])
